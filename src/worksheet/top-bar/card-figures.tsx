import { isWhole } from "../../../shared/completeness.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { formatLength, type UnitSystem } from "../../../shared/units.ts";
import { bagsWords } from "../../../shared/words/counted.ts";
import { levelDoubtShort } from "../../../shared/words/level-doubt.ts";
import { mustFixWords } from "../../../shared/words/must-fix.ts";
import { elapsedWords } from "../../../shared/words/time.ts";

interface CardFiguresProps {
  readonly line: SizedLine;
  readonly mustFix: number;
  readonly system: UnitSystem;
}

/** What must be fixed on a line first; then bags, greatest height and hours, or for how much of it they are. */
export function CardFigures({ line, mustFix, system }: CardFiguresProps) {
  const { totals, levelDoubt } = line;
  const whole = isWhole(line);
  return (
    <span class="alternative-row">
      {mustFix > 0 && <strong class="alternative-fix">{mustFixWords(mustFix)}</strong>}
      <span class="alternative-figures" data-complete={whole}>
        {levelDoubt?.countsUnknown
          ? levelDoubtShort(levelDoubt)
          : whole
            ? wholeFigures(line, system)
            : bagsWords(totals, system)}
      </span>
    </span>
  );
}

function wholeFigures({ totals, levelDoubt, time }: SizedLine, system: UnitSystem): string {
  const height = formatLength(totals.greatestHeightM, system);
  const parts = [bagsWords(totals, system), height, elapsedWords(time)];
  return [...parts, ...(levelDoubt ? [levelDoubtShort(levelDoubt)] : [])].join("\u2009·\u2009");
}

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

/** Bags, greatest height and length, or for how much of the line they are; below them the verdict. */
export function CardFigures({ line, mustFix, system }: CardFiguresProps) {
  const { levelDoubt, time } = line;
  return (
    <>
      <span class="alternative-figures" data-complete={isWhole(line)}>
        {figuresOf(line, system).map((figure, index) => (
          <span key={figure}>
            {index > 0 && " "}
            {figure}
          </span>
        ))}
      </span>
      <span class="alternative-verdict">
        <span>
          {mustFix > 0 && <strong class="alternative-fix">{mustFixWords(mustFix)}</strong>}
          {mustFix > 0 && !levelDoubt?.countsUnknown && ", "}
          {!levelDoubt?.countsUnknown && elapsedWords(time)}
        </span>
      </span>
    </>
  );
}

function figuresOf(line: SizedLine, system: UnitSystem): readonly string[] {
  const { totals, levelDoubt } = line;
  if (levelDoubt?.countsUnknown) return [levelDoubtShort(levelDoubt)];
  const bags = bagsWords(totals, system);
  if (!isWhole(line)) return [bags];
  return [
    bags,
    formatLength(totals.greatestHeightM, system),
    formatLength(totals.lengthM, system, 0),
    ...(levelDoubt ? [levelDoubtShort(levelDoubt)] : []),
  ];
}

import { isWhole } from "../../../shared/completeness.ts";
import type { SizedLine } from "../../../shared/sizing-types.ts";
import { formatLength, type UnitSystem } from "../../../shared/units.ts";
import type { OverallVerdict } from "../../../shared/verdict.ts";
import { BAGS_NOT_KNOWN, bagsWords } from "../../../shared/words/counted.ts";
import { overallVerdictWords } from "../../../shared/words/verdict.ts";

interface CardFiguresProps {
  readonly line: SizedLine;
  readonly verdict: OverallVerdict;
  readonly system: UnitSystem;
}

/** Bags, greatest height and length, or for how much of the line they are; below them the verdict, which says why bags are not known. */
export function CardFigures({ line, verdict, system }: CardFiguresProps) {
  return (
    <>
      <span class="alternative-figures" data-complete={isWhole(line)}>
        {figuresOf(line, verdict, system).map((figure, index) => (
          <span key={figure}>
            {index > 0 && " "}
            {figure}
          </span>
        ))}
      </span>
      <span class="alternative-verdict" data-must-fix={verdict.mustFix}>
        <span>{overallVerdictWords(verdict, system)}</span>
      </span>
    </>
  );
}

function figuresOf(
  line: SizedLine,
  { notKnown }: OverallVerdict,
  system: UnitSystem,
): readonly string[] {
  if (notKnown) return [BAGS_NOT_KNOWN];
  const { totals } = line;
  const bags = bagsWords(totals, system);
  if (!isWhole(line)) return [bags];
  return [
    bags,
    formatLength(totals.greatestHeightM, system),
    formatLength(totals.lengthM, system, 0),
  ];
}

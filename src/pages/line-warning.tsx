import { isComplete } from "../../shared/completeness.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { bagsWords } from "../../shared/words/counted.ts";
import { mustFixWords } from "../../shared/words/must-fix.ts";
import { mustFixOn } from "../live/water-now.ts";

/** On every page: what must be fixed on the line, and for how much of it the totals are; nothing where all is well. */
export function LineWarning({ line, system }: { line: SizedLine; system: UnitSystem }) {
  const mustFix = mustFixOn(line);
  const isPart = !isComplete(line.totals);
  if (mustFix === 0 && !isPart) return null;
  return (
    <p class="sheet-warning">
      {mustFix > 0 && <strong>{mustFixWords(mustFix)}, see Checks. </strong>}
      {isPart && `The totals are not complete: ${bagsWords(line.totals, system)}.`}
    </p>
  );
}

import { hasAnyData, isComplete } from "../completeness.ts";
import type { SizedLine } from "../sizing-types.ts";
import type { UnitSystem } from "../units.ts";
import { bagsWords } from "./counted.ts";

/** What the totals leave out for want of elevation data, a sentence for each line that it touches. */
export function leftOut(
  lines: readonly Pick<SizedLine, "name" | "totals">[],
  system: UnitSystem,
): string[] {
  return lines
    .filter(({ totals }) => !isComplete(totals))
    .map(({ name, totals }) => {
      const what = hasAnyData(totals) ? "the totals are not complete: " : "its bags are ";
      return `"${name}": ${what}${bagsWords(totals, system)}.`;
    });
}

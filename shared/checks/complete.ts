import { hasAnyData, isComplete } from "../completeness.ts";
import { formatCount } from "../units.ts";
import { countedInBoth } from "../words/counted.ts";
import { ofWholePlan, type Rule } from "./rule.ts";
import { distanceWords } from "./words.ts";

/** Totals that are for a part of the line only. */
export const incompleteTotals: Rule = {
  id: "incomplete-totals",
  rule: "Bags, sand, people and hours are for the whole length of the line.",
  source: "judgement",
  find: ({ totals }) => {
    if (isComplete(totals)) return [];
    const message = hasAnyData(totals)
      ? `The totals are not complete: ${formatCount(totals.bags)} bags for ${countedInBoth(totals)}.`
      : `Nothing is counted: no elevation data under any of the ${distanceWords(totals.lengthM)}.`;
    return ofWholePlan(
      "stop",
      message,
      "Do not order by these totals. Open elevation data for the whole line, or lead the line where there is some.",
    );
  },
};

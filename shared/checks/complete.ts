import { type Extent, isComplete } from "../completeness.ts";
import { ofWholePlan, type Rule } from "./rule.ts";

/** Bags counted, and for how much of the line. */
export interface CompleteFinding extends Extent {
  readonly kind: "incomplete-totals";
  readonly bags: number;
}

/** Totals that are for a part of the line only. */
export const incompleteTotals: Rule = {
  id: "incomplete-totals",
  find: ({ totals }) => {
    if (isComplete(totals)) return [];
    const { bags, lengthM, lengthNoDataM } = totals;
    return ofWholePlan("stop", { kind: "incomplete-totals", bags, lengthM, lengthNoDataM });
  },
};

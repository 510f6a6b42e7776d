import { ofWholePlan, type Rule } from "./rule.ts";

/** Smaller differences are a rounding of the unit, metres. */
const SAME_M = 0.001;

/** The setback a line was made with, and the plan's now. Metres. */
export interface KeptSetbackFinding {
  readonly kind: "kept-setback";
  readonly madeWithM: number;
  readonly planM: number;
}

/** A line that was made with another setback than the plan has now. */
export const keptSetback: Rule = {
  id: "kept-setback",
  find: ({ plan, setbackM }) => {
    const { practice, structures } = plan;
    const lessM = practice.setbackM - setbackM;
    if (structures.length === 0 || Math.abs(lessM) < SAME_M) return [];
    return ofWholePlan(lessM > 0 ? "caution" : "note", {
      kind: "kept-setback",
      ...{ madeWithM: setbackM, planM: practice.setbackM },
    });
  },
};

import { ofWholePlan, type Rule } from "./rule.ts";
import { lengthWords } from "./words.ts";

/** Smaller differences are a rounding of the unit, metres. */
const SAME_M = 0.001;

/** A line that was made with another setback than the plan has now. */
export const keptSetback: Rule = {
  id: "kept-setback",
  rule: "A line that was found, improved or offset is judged by the setback it was made with.",
  source: "judgement",
  find: ({ plan, setbackM }) => {
    const { practice, structures } = plan;
    const lessM = practice.setbackM - setbackM;
    if (structures.length === 0 || Math.abs(lessM) < SAME_M) return [];
    return ofWholePlan(
      lessM > 0 ? "caution" : "note",
      `This line was made with a setback of ${lengthWords(setbackM)} from buildings and is checked against that; the plan's setback is now ${lengthWords(practice.setbackM)}.`,
      "To go by the plan's setback, take it for this line in Line, or find or make the line again.",
    );
  },
};

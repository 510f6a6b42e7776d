import { levelDoubtRemedy, levelDoubtWords } from "../words/level-doubt.ts";
import { ofWholePlan, type Rule } from "./rule.ts";
import { elevationWords, lengthWords } from "./words.ts";

/** Water and ground that do not belong together. */
export const waterLevel: Rule = {
  id: "water-level",
  rule: "Some ground on the line is below the sized-for water, by a height that can be built against.",
  source: "judgement",
  find: ({ levelDoubt }) => {
    if (!levelDoubt) return [];
    const words = { elevation: elevationWords, length: lengthWords };
    return ofWholePlan(
      levelDoubt.countsUnknown ? "stop" : "caution",
      levelDoubtWords(levelDoubt, words),
      levelDoubtRemedy(levelDoubt),
    );
  },
};

import { Refusal } from "../../shared/failure.ts";
import { letterOf } from "../../shared/line-letter.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";

/**
 * The line that is named by letter, name or id; without a word the chosen one, else the only one.
 * @throws Refusal `plan/no-line`, `plan/no-such-line`, `plan/which-line`
 */
export function lineAsked({ alignments, chosenId }: Plan, word: string | undefined): Alignment {
  const named = alignments.map(({ name }, i) => `${letterOf(i)} "${name}"`).join(", ");
  if (alignments.length === 0) {
    throw new Refusal(
      "plan/no-line",
      "Expected a ring or line; the plan has none.",
      'Draw one, or add a feature with "role": "alignment" (a Polygon is a ring, a LineString a line).',
    );
  }
  const found =
    word === undefined
      ? (alignments.find(({ id }) => id === chosenId) ?? onlyOne(alignments))
      : (alignments.find((_, i) => letterOf(i) === word.toUpperCase()) ??
        alignments.find(({ id, name }) => name === word || id === word));
  if (found) return found;
  throw word === undefined
    ? new Refusal(
        "plan/which-line",
        `Expected --line, because the plan has several lines and none is chosen. It has ${named}.`,
        "Name one by its letter, for example --line A.",
      )
    : new Refusal(
        "plan/no-such-line",
        `Expected the letter, name or id of a line in the plan; came "${word}". It has ${named}.`,
        "Write the letter, or the name as the plan has it, in quotes when it holds a space.",
      );
}

function onlyOne(alignments: readonly Alignment[]): Alignment | null {
  return alignments.length === 1 ? alignments[0]! : null;
}

import { refusal } from "../../shared/failure.ts";
import { letterOf } from "../../shared/line-letter.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";

/**
 * The line that is named by letter, name or id; without a word the chosen one, else the only one.
 * @throws Refusal `plan/no-line`, `plan/no-line-named`, `plan/which-line`
 */
export function lineAsked({ alignments, chosenId }: Plan, word: string | undefined): Alignment {
  if (alignments.length === 0) throw refusal("plan/no-line", { toSize: false });
  const found =
    word === undefined
      ? (alignments.find(({ id }) => id === chosenId) ?? onlyOne(alignments))
      : (alignments.find((_, i) => letterOf(i) === word.toUpperCase()) ??
        alignments.find(({ id, name }) => name === word || id === word));
  if (found) return found;
  const has = alignments.map(({ name }, i) => ({ letter: letterOf(i), name }));
  throw word === undefined
    ? refusal("plan/which-line", { has })
    : refusal("plan/no-line-named", { came: word, has });
}

function onlyOne(alignments: readonly Alignment[]): Alignment | null {
  return alignments.length === 1 ? alignments[0]! : null;
}

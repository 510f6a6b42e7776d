import type { FoundChoice } from "./choice-types.ts";

/** What several choices have in common: those for the low, likely and high forecast. */
export interface SameInAll {
  /** Ids of the lines chosen in all. */
  readonly lines: readonly string[];
  /** Ids of the buildings ringed in all, be it by different lines. */
  readonly buildings: readonly string[];
}

export function sameInAll(
  choices: readonly Pick<FoundChoice, "chosen" | "buildings">[],
): SameInAll {
  const common = (lists: readonly (readonly string[])[]) =>
    (lists[0] ?? []).filter((id) => lists.every((list) => list.includes(id)));
  return {
    lines: common(choices.map(({ chosen }) => chosen)),
    buildings: common(choices.map(({ buildings }) => buildings)),
  };
}

import { sectionById } from "../sections.ts";
import type { Reach } from "../sizing-types.ts";

/** Length of line that stands by its bracing, which no factor of safety here speaks of, metres. */
export function lengthBracedM({ reaches }: { readonly reaches: readonly Reach[] }): number {
  return reaches.reduce((sum, { section, totals }) => {
    const kind = sectionById(section);
    return kind.ok && kind.value.carriedBy === "bracing" ? sum + totals.builtLengthM : sum;
  }, 0);
}

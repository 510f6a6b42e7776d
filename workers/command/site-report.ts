import type { Alignment, Carried, Plan } from "../../shared/plan.ts";
import type { FoundLine } from "../../shared/search-types.ts";
import type { Totals } from "../../shared/sizing-types.ts";
import { rounded } from "./json.ts";

/** A plan with found alternatives, each with its figures among the properties of its feature. */
export function withFound(
  plan: Plan,
  added: readonly Alignment[],
  properties: readonly { readonly [name: string]: unknown }[],
): Plan {
  const none: Carried = { features: [], byFeature: {}, members: {}, settings: {} };
  const before = plan.carried ?? none;
  const byFeature = { ...before.byFeature };
  for (const [k, { id }] of added.entries()) {
    byFeature[`alignment:${id}`] = { properties: properties[k]!, members: {} };
  }
  const alignments = [...plan.alignments, ...added];
  return { ...plan, alignments, carried: { ...before, byFeature } };
}

/** What a found line's feature says of it: its totals under the names of `size`, and how it was found. */
export function figuresOf(
  totals: Totals,
  line: FoundLine,
  window: { readonly windowM: number; readonly maxCorners: number },
): { readonly [name: string]: unknown } {
  const { enclosedM2, encloses, pieces, free, howGood } = line;
  const where = { pieces, free: free.map((path) => ({ path })) };
  return rounded({ ...totals, ...window, enclosedM2, encloses, ...where, howGood }) as {
    readonly [name: string]: unknown;
  };
}

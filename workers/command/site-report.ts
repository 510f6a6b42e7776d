import type { Alignment, Carried, Plan } from "../../shared/plan.ts";
import type { FoundLine } from "../../shared/search-types.ts";
import type { SizedLine, Totals } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { bagsForWords } from "../../shared/words/counted.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { against, faultsOf } from "./against.ts";
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

/** What was found, in sentences for the person at the terminal. */
export function sentences(
  found: readonly SizedLine[],
  drawn: readonly SizedLine[],
  system: UnitSystem,
): string[] {
  const { length, distance } = unitsOf(system);
  const each = found.map((line) => {
    const { name, totals } = line;
    const over =
      totals.lengthOverLimitM > 0.05
        ? `; ${distance(totals.lengthOverLimitM)} of it over the height limit`
        : "";
    return `${name}: ${bagsForWords(totals, system)}, ${distance(totals.builtLengthM)} to build, at most ${length(totals.greatestHeightM)} high${over}.${faultsOf(line, system)}`;
  });
  return [...each, ...against(found, drawn, system)];
}

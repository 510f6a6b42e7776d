import { computed, type ReadonlySignal } from "@preact/signals";
import type { Plan } from "../../shared/plan.ts";
import { plan } from "../document/store.ts";
import { ground } from "./ground.ts";
import { type Parts, partsOf, type Reads, sameParts } from "./parts.ts";

/** What is asked of the engine, for a plan without the foreign parts of its file. */
export type Question<More> = More & { readonly plan: Plan };

/**
 * What is asked now: the same object for as long as nothing that its answer follows from changes, which is the open
 * ground, the parts of the plan in `reads`, and every value of `more`. Null while nothing is asked.
 * @param more what is asked beside the plan; null = nothing is asked
 * @param of the plan that is asked for; the plan as it stands when left out
 */
export function questionOf<More extends object>(
  reads: Reads,
  more: () => More | null,
  of: ReadonlySignal<Plan> = plan,
): ReadonlySignal<Question<More> | null> {
  let last: Question<More> | null = null;
  let lastParts: Parts = [];
  return computed(() => {
    const beside = more();
    if (beside === null) {
      last = null;
      return null;
    }
    const parts = [ground.value, ...partsOf(of.value, reads), ...Object.values(beside)];
    if (!last || !sameParts(parts, lastParts)) last = { ...beside, plan: withoutCarried(of.value) };
    lastParts = parts;
    return last;
  });
}

/** The plan without the foreign parts of its file, which the engine has no use for. */
export function withoutCarried({ carried: _, ...rest }: Plan): Plan {
  return rest;
}

import type { Culvert, Drain, LonLat, PossibleCulvert } from "../plan.ts";
import { freeNumbered } from "../plan-names.ts";

/** A culvert as drawn: open, nothing about it known but its ends. */
export function drawnCulvert(path: readonly LonLat[], others: readonly Culvert[]): Culvert {
  return {
    ...named("Culvert ", "culvert-", others),
    ...{ path, invertsM: [null, null], sizeM: null, gate: null, plugged: false },
  };
}

/** A drain as marked: not plugged, and not known where it leads. */
export function drawnDrain(at: LonLat, others: readonly Drain[]): Drain {
  return {
    ...named("Drain ", "drain-", others),
    ...{ at, kind: "floor-drain", joinsOutside: null, plugged: false },
  };
}

/** A candidate that was answered, but not with a culvert. */
export function answeredCandidate(
  path: readonly LonLat[],
  answer: PossibleCulvert["answer"],
  others: readonly PossibleCulvert[],
): PossibleCulvert {
  return { ...named("Possible culvert ", "possible-culvert-", others), path, answer };
}

function named(
  nameStem: string,
  idStem: string,
  others: readonly { readonly id: string; readonly name: string }[],
) {
  return {
    id: freeNumbered(new Set(others.map(({ id }) => id)), idStem),
    name: freeNumbered(new Set(others.map(({ name }) => name)), nameStem),
  };
}

import type { Culvert, Drain, LonLat, PossibleCulvert } from "../plan.ts";
import { freeNames } from "../plan-names.ts";

/** A culvert as drawn: open, nothing about it known but its ends. */
export function drawnCulvert(path: readonly LonLat[], others: readonly Culvert[]): Culvert {
  return {
    ...freeNames("Culvert ", "culvert-", others),
    ...{ path, invertsM: [null, null], sizeM: null, gate: null, plugged: false },
  };
}

/** A drain as marked: not plugged, and not known where it leads. */
export function drawnDrain(at: LonLat, others: readonly Drain[]): Drain {
  return {
    ...freeNames("Drain ", "drain-", others),
    ...{ at, kind: "floor-drain", joinsOutside: null, plugged: false },
  };
}

/** A candidate that was answered, but not with a culvert. */
export function answeredCandidate(
  path: readonly LonLat[],
  answer: PossibleCulvert["answer"],
  others: readonly PossibleCulvert[],
): PossibleCulvert {
  return { ...freeNames("Possible culvert ", "possible-culvert-", others), path, answer };
}

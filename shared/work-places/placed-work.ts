import type { LonLat, WorkPlace } from "../plan.ts";
import { freeNames } from "../plan-names.ts";

const STEMS: Readonly<Record<WorkPlace["kind"], string>> = {
  pile: "Bag pile ",
  pumps: "Pumps ",
  "truck-way": "Truck way ",
};

/** A work place as drawn, with a free name. */
export function placedWork(
  kind: WorkPlace["kind"],
  path: readonly LonLat[],
  others: readonly WorkPlace[],
): WorkPlace {
  return { ...freeNames(STEMS[kind], "work-place-", others), kind, path };
}

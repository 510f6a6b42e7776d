import type { LonLat, WorkPlace } from "../plan.ts";
import { freeNumbered } from "../plan-names.ts";

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
  return {
    id: freeNumbered(new Set(others.map(({ id }) => id)), "work-place-"),
    name: freeNumbered(new Set(others.map(({ name }) => name)), STEMS[kind]),
    kind,
    path,
  };
}

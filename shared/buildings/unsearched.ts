import type { BuildingWater } from "./check-types.ts";
import type { Building, CheckedBuilding } from "./types.ts";

/** What a trace alone says of a building: all there is to say of one that is dry or without data. */
export function unsearched(building: Building, water: BuildingWater): CheckedBuilding {
  const { id, name, floorM, weight, priority } = building;
  const { state, depthM, sillM, lowM, firstWetAtS, at } = water;
  return {
    ...{ id, name, floorM, weight, priority },
    state: state === "flooded" ? "no-data" : state,
    ...{ depthM, sillM, lowM, firstWetAtS, at },
    ...{ latestStartAtS: null, closedByAtS: null, line: null, byStage: [], failed: null },
  };
}

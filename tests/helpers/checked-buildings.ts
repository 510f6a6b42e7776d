import type { CheckedBuilding, CheckedGroup } from "../../shared/buildings/types.ts";

type Line = NonNullable<CheckedBuilding["line"]>;

/** A ring of so many bags; its other figures follow at round rates. */
export function lineOf(bags: number, more: Partial<Line> = {}): Line {
  return {
    kind: "ring",
    coordinates: [
      [-93, 45],
      [-92.999, 45],
      [-92.999, 45.001],
    ],
    bags,
    leveeBags: bags - 100,
    sandM3: bags / 100,
    sheetM2: bags / 10,
    personHours: bags / 20,
    greatestHeightM: 0.6,
    lengthM: 60,
    lengthOverLimitM: 0,
    mustFix: [],
    ...more,
  };
}

/** A checked building that can be ringed, but for what is said otherwise. */
export function checkedBuilding(id: string, more: Partial<CheckedBuilding> = {}): CheckedBuilding {
  return {
    id,
    name: id,
    floorM: null,
    weight: 1,
    priority: "",
    state: "can-be-ringed",
    depthM: 0.3,
    sillM: 1,
    firstWetAtS: null,
    latestStartAtS: null,
    closedByAtS: null,
    line: lineOf(1000),
    byStage: [],
    at: null,
    failed: null,
    ...more,
  };
}

/** A group whose ring can be built, but for what is said otherwise. */
export function checkedGroup(
  id: string,
  members: readonly string[],
  more: Partial<CheckedGroup> = {},
): CheckedGroup {
  return {
    id,
    members,
    line: lineOf(2000),
    state: "can-be-ringed",
    firstWetAtS: null,
    latestStartAtS: null,
    closedByAtS: null,
    byStage: [],
    ...more,
  };
}

import type { LonLat, Plan } from "../plan.ts";
import type { Building, CheckedBuilding, CheckedGroup } from "./types.ts";

/** What a check of many buildings is asked. */
export interface BuildingsQuestion {
  /** Its water, section, practice, forecast, no-go areas and sources count; its lines do not. */
  readonly plan: Plan;
  readonly buildings: readonly Building[];
  /** Water at the gauge for which each line is sized again, meters on the raster's datum; left out = none. */
  readonly levelsM?: readonly number[];
  /** Most people who can work on one line at a time; {@link MOST_ON_ONE_LINE} when left out. */
  readonly mostOnOneLine?: number;
}

/** Source: judgement. */
export const MOST_ON_ONE_LINE = 60;

/** What a check of many buildings found, buildings in the order asked, groups by their ids. */
export interface BuildingsCheck {
  readonly buildings: readonly CheckedBuilding[];
  readonly groups: readonly CheckedGroup[];
  readonly groupsTried: GroupsTried;
  readonly trace: TracedBuildings["trace"];
}

/** Groups of neighbors for which one ring was looked for. */
export interface GroupsTried {
  readonly tried: number;
  /** Those that may take fewer bags and for which none was looked for, because so many were, or could not be. */
  readonly left: number;
}

/** Ways to follow a check of many buildings. */
export interface BuildingsOptions {
  /** Told of each building as soon as it is checked, in any order. */
  readonly onChecked?: (checked: CheckedBuilding) => void;
  /** Told of each group that is worth it, once all its members are checked. */
  readonly onGroup?: (group: CheckedGroup) => void;
  /** Share done, 0..1, and what is being done. */
  readonly onProgress?: (share: number, doing: string) => void;
  readonly signal?: AbortSignal;
  /** Answers of an earlier check of the same question on the same ground: these buildings are not searched again. */
  readonly known?: readonly CheckedBuilding[];
}

export interface TraceBuildingsRequest {
  readonly plan: Plan;
  readonly buildings: readonly Building[];
  readonly levelsM: readonly number[];
}

/** Connected water at one building, and what else follows from the water around it. */
export interface BuildingWater {
  readonly id: string;
  /** `no-data` also where only a hole in the data lets the water in. */
  readonly state: "no-data" | "dry" | "flooded";
  readonly depthM: number | null;
  /** As in {@link CheckedBuilding}. */
  readonly sillM: number | null;
  readonly lowM: number | null;
  readonly firstWetAtS: number | null;
  /** Water at the gauge above which connected water comes to the surroundings in which a line is looked for. */
  readonly aroundM: number | null;
  /** A place without data; null elsewhere. */
  readonly at: LonLat | null;
  /** Outlines of the river as surveyed near it; no line in them, and none round them. */
  readonly river: readonly (readonly LonLat[])[];
}

/** Connected water at all buildings, traced at once. */
export interface TracedBuildings {
  /** One for each building, in their order. */
  readonly waters: readonly BuildingWater[];
  readonly trace: {
    /** Shorter side of a cell of the trace, meters. */
    readonly cellM: number;
    /** False where the ground has too many cells for all of them to be traced. */
    readonly everyCell: boolean;
  };
}

/** What the search for one line needs of a question, so that it can be done anywhere in any order. */
export interface LineTask {
  /** Without lines; its buildings are only obstacles. */
  readonly plan: Plan;
  /** Outlines of other buildings nearby, which the line keeps off. */
  readonly near: readonly (readonly LonLat[])[];
  readonly levelsM: readonly number[];
  readonly mostOnOneLine: number;
}

export interface CheckBuildingRequest extends LineTask {
  readonly building: Building;
  readonly water: BuildingWater;
}

export interface CheckGroupRequest extends LineTask {
  readonly members: readonly Building[];
  /** One for each member, in their order. */
  readonly waters: readonly BuildingWater[];
  /** A ring of so many bags or more, or over the height limit, is of no use; null where any may be. */
  readonly mostBags: number | null;
}

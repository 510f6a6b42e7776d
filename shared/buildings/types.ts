import type { CheckFinding, RuleId } from "../checks/findings.ts";
import type { LonLat } from "../plan.ts";

/**
 * What a building can be at the sized-for stage, in the order in which the first that applies is given; the order
 * of `can-be-ringed` is last because it needs that none of the others applies.
 */
const BUILDING_STATES = [
  "no-data",
  "dry",
  "over-limit",
  "no-room",
  "too-late",
  "can-be-ringed",
] as const;

/** One of {@link BUILDING_STATES}. `dry` says only that no connected water touches its walls at that stage. */
export type BuildingState = (typeof BUILDING_STATES)[number];

/** `first`: ringed before all others where it can be; `never`: not ringed. */
export type Priority = "first" | "" | "never";

/** A building as a person brought it. */
export interface Building {
  /** The person's own id where the file has one, else one made from its place in the file; no two the same. */
  readonly id: string;
  readonly name: string;
  /** Outer corners, longitude and latitude, first not repeated; one list for each part of a building in parts. */
  readonly parts: readonly (readonly LonLat[])[];
  /** Elevation of the lowest floor on the raster's vertical datum, meters; null where nobody gave it. */
  readonly floorM: number | null;
  /** What it counts in the choice; 1 where nobody gave it. */
  readonly weight: number;
  readonly priority: Priority;
}

/** What a line takes, as the ordinary sizing counts it. */
export interface RingFigures {
  /** Bags to order, which stock must have: placed, spares, and those on the poly sheeting. */
  readonly bags: number;
  /** Bags of the levee: placed and spares, as a line's card has them. Those on the poly sheeting are not among them. */
  readonly leveeBags: number;
  readonly sandM3: number;
  readonly sheetM2: number;
  readonly personHours: number;
  readonly greatestHeightM: number;
  readonly lengthM: number;
  /** Length over the height limit, meters. */
  readonly lengthOverLimitM: number;
}

/** A found line as the plan can hold it. */
export interface FoundShape {
  readonly kind: "ring" | "line";
  readonly coordinates: readonly LonLat[];
}

/** What the check of a line in a plan of its own finds that must be fixed. */
export interface MustFix {
  readonly id: RuleId;
  /** Stretch of the line, meters; both 0 where it speaks of the whole plan. */
  readonly fromM: number;
  readonly toM: number;
  readonly finding: CheckFinding;
}

/** A line that was found, sized and checked as in a plan of its own. */
export interface CheckedLine extends FoundShape, RingFigures {
  /** Each once; traced water has not been looked at. */
  readonly mustFix: readonly MustFix[];
}

/** The same line sized for another water surface. */
export interface AtStage extends RingFigures {
  /** That water at the gauge, meters on the raster's vertical datum. */
  readonly atGaugeM: number;
  /** Water surface at the building, meters on the raster's vertical datum. */
  readonly waterM: number;
}

/** What a check of one building found. Times are seconds since 1970 UTC. */
export interface CheckedBuilding
  extends Pick<Building, "id" | "name" | "floorM" | "weight" | "priority"> {
  readonly state: BuildingState;
  /** Greatest depth of connected water at a wall, meters; null where it is not known, 0 where none touches it. */
  readonly depthM: number | null;
  /**
   * Water at the gauge above which connected water touches a wall, meters: it is flooded at every stage above that.
   * Null where it is not known or no water comes.
   */
  readonly sillM: number | null;
  /**
   * Water at the gauge as high as its lowest known ground, meters: with more than that, higher ground alone keeps the
   * water from it. Null where it is not known; left out in an answer of an earlier version.
   */
  readonly lowM?: number | null;
  /** When connected water first touches a wall; null where the forecast does not say. */
  readonly firstWetAtS: number | null;
  /** Latest start that still finishes ahead of the water with the margin; null where hours or water are not known. */
  readonly latestStartAtS: number | null;
  /** When its line must be closed, ahead of the water by the margin; null without a line or where the forecast does not say. */
  readonly closedByAtS: number | null;
  /** The best line; null where none is needed or none was found. */
  readonly line: CheckedLine | null;
  /** The line over the stages that were to be counted and flood it, lowest first. */
  readonly byStage: readonly AtStage[];
  /** A place where it is over the limit, in doubt, or without data; null elsewhere. */
  readonly at: LonLat | null;
  /** Why it could not be checked, as the code of a refusal; null where it was. */
  readonly failed: string | null;
}

/** Neighbors for which one line takes less than their own. */
export interface CheckedGroup {
  /** Made from the ids of its members, so that the same members give the same. */
  readonly id: string;
  /** Ids of two to four buildings. */
  readonly members: readonly string[];
  readonly line: CheckedLine;
  readonly state: "over-limit" | "too-late" | "can-be-ringed";
  readonly firstWetAtS: number | null;
  readonly latestStartAtS: number | null;
  /** When its line must be closed, ahead of the water by the margin; null without a line or where the forecast does not say. */
  readonly closedByAtS: number | null;
  readonly byStage: readonly AtStage[];
}

/** What there is to build with; null is not limited, because nobody said. */
export interface Stock {
  readonly bags: number | null;
  readonly sandM3: number | null;
  readonly sheetM2: number | null;
  readonly people: number | null;
  /** Ids of buildings that must be ringed, and that must not. */
  readonly mustDo: readonly string[];
  readonly mustNot: readonly string[];
}

/** A line that can be chosen: round one building, or round a group. */
export interface Candidate extends Omit<RingFigures, "leveeBags"> {
  readonly id: string;
  readonly members: readonly string[];
  readonly weight: number;
  /** Hours from the start by which it must be closed; null where that is not known or not limited. */
  readonly closedByH: number | null;
}

/** How many hours of work there are: `people` of whom `atWorkShare` work at a time, after `setUpH`, until an hour. */
export interface WorkForce {
  readonly people: number;
  readonly atWorkShare: number;
  readonly setUpH: number;
  /** Person-hours of walking and moving for each line after a crew's first. */
  readonly moveHours: number;
  /** Most people who can work on one line at a time. */
  readonly mostOnOneLine: number;
  /** Hours from the start by which all must be closed; null where that is not known. */
  readonly untilH: number | null;
}

/** What can run out. */
export type RunsOut = "bags" | "sand" | "sheet" | "people" | "time" | "nothing";

/** Which lines to build. */
export interface Choice {
  /** Ids of the chosen candidates. */
  readonly chosen: readonly string[];
  /** Sum of the weights of the buildings inside. */
  readonly weight: number;
  readonly bags: number;
  readonly sandM3: number;
  readonly sheetM2: number;
  readonly personHours: number;
  /** No choice can have more weight than this. */
  readonly bestPossible: number;
  /** True where the solver closed its gap: `weight` is `bestPossible`. */
  readonly isProved: boolean;
  readonly runsOutFirst: RunsOut;
  /** Ids that must be ringed and for which there is not enough, or no line; a Must fix. */
  readonly mustDoLeft: readonly string[];
}

import type { CheckFinding, RuleId } from "./checks/findings.ts";
import type { Where } from "./checks/where.ts";
import type { GroundAccuracy } from "./ground-accuracy.ts";
import type { GroundSimulation } from "./ground-uncertainty/types.ts";
import type { Holding } from "./holding/types.ts";
import type { LevelDoubt } from "./level-doubt.ts";
import type { LonLat } from "./plan.ts";
import type { SectionPart } from "./sections/types.ts";
import type { SurveyedGround } from "./survey/surveyed-ground.ts";
import type { LineTime } from "./time/types.ts";

/**
 * Why a station is where it is; `gap` is the first or last place of a stretch without ground data, `over` the first
 * or last of one over its height limit, `highest` where the line or such a stretch is highest, `reading` where the
 * ground was read in the field.
 */
export type StationReason =
  | ("start" | "end" | "interval" | "corner" | "turn" | "reach" | "gap")
  | ("highest" | "over" | "reading");

export interface Station {
  readonly chainageM: number;
  readonly lon: number;
  readonly lat: number;
  readonly reason: StationReason;
  /** Ground at the centre line, metres; null where there is no data. */
  readonly groundM: number | null;
  /** Set where that ground was read in the field, here or on both sides of here; left out = elevation data. */
  readonly groundFrom?: "reading" | "between";
  /** Lowest ground under the base; null where any needed ground is missing. */
  readonly lowestGroundM: number | null;
  readonly waterM: number;
  readonly crestM: number;
  /** max(0, crest - ground at the centre line); null where there is no data. */
  readonly heightM: number | null;
  /** crest - lowest ground under the base, at least 0; null where there is no data. */
  readonly greatestHeightM: number | null;
  /** Width between the toes, metres. */
  readonly baseM: number | null;
  /** Half widths: from the centre line to the toe on the water's side and on the other, metres. */
  readonly toeWatersideM: number | null;
  readonly toeLandsideM: number | null;
  /** True where it is higher than what is built there may be, and at both ends of such a stretch. */
  readonly isOverLimit: boolean | null;
  /** What is built and counted here; of a levee that is raised, what is added. */
  readonly sectionAreaM2: number | null;
  /** Courses from the ground at the centre line to the crest; null, as the counts below, where it is not of bags. */
  readonly courses: number | null;
  /** Courses from the lowest ground under the base to the crest: what a crew counts at the low toe. */
  readonly coursesAtLowToe: number | null;
  readonly bagsAcrossBase: number | null;
  /** Bags per metre of line here; 0 where it is not of bags. */
  readonly bagsPerM: number | null;
  /** Height this base could later carry (raise reserve), metres, never past the limit; null for what is no pyramid. */
  readonly raiseToM: number | null;
}

/**
 * The fine walk along the line (no coarser than half a cell), from which quantities are integrated and
 * pictures drawn. All arrays have the same length n; NaN where there is no data. Every corner is there twice,
 * at the same chainage, with the normal of the leg that ends and of the leg that starts.
 */
export interface Walk {
  readonly chainageM: Float64Array;
  /** n longitudes and latitudes, interleaved: 2 n values. */
  readonly lonLat: Float64Array;
  readonly groundM: Float64Array;
  readonly lowestGroundM: Float64Array;
  readonly waterM: Float64Array;
  readonly crestM: Float64Array;
  readonly heightM: Float64Array;
  readonly greatestHeightM: Float64Array;
  readonly areaM2: Float64Array;
  /** Distance from the centre line to the toe, on the left of the direction of chainage, metres >= 0. */
  readonly toeLeftM: Float64Array;
  readonly toeRightM: Float64Array;
  /** Unit normal pointing left, interleaved east, north: 2 n values (at corners the bisector's side is not taken: each leg has its own). */
  readonly leftNormal: Float64Array;
  /** Index of the leg each sample lies on. */
  readonly leg: Uint16Array;
}

export interface Totals {
  readonly lengthM: number;
  /** Length where height is above zero. */
  readonly builtLengthM: number;
  /** By average end areas over the walk: what is ordered. */
  readonly volumeM3: number;
  /** By the prismoidal rule over the same walk, for comparison. */
  readonly prismoidalVolumeM3: number;
  /** Bags placed. */
  readonly bagsPlaced: number;
  /** Bags of the levee: placed plus spares. All that are ordered: `bagOrder`. */
  readonly bags: number;
  /** Bags that hold the sheet (their sand is in `sandM3`): beside `bags`, not in it. */
  readonly sheetBags: number;
  /** Sand ordered, waste and the bags that hold the sheet included, m3. */
  readonly sandM3: number;
  readonly sandDryKg: number;
  readonly sandWetKg: number;
  /** Sheet laid along the built length, m2; laps come on top and are in the rolls. */
  readonly sheetM2: number;
  readonly sheetRolls: number;
  /** Widest sheet needed anywhere along the line, metres. */
  readonly sheetWidthM: number;
  readonly greatestHeightM: number;
  readonly greatestHeightAtM: number;
  /** Length higher than what is built there may be: its section's limit, or the plan's. */
  readonly lengthOverLimitM: number;
  /** How far the greatest height stays below its limit where it comes nearest; below 0 where it is passed, metres. */
  readonly underLimitM: number;
  readonly lengthOver3FtM: number;
  /** Length without ground data: its quantities are not in the totals. */
  readonly lengthNoDataM: number;
  readonly trucks: number;
  /** What reaches of other sections take beside bags; all 0 for the sandbag pyramid. */
  readonly materials: Materials;
  /** Person-hours for the whole job, and for one task (filling or placing) as a spread. */
  readonly jobPersonHours: number;
  readonly taskPersonHoursLow: number;
  readonly taskPersonHoursHigh: number;
  /**
   * Length by height class: to 1, 2, 3, 4 ft (quarters of the plan's limit), and over the limit of its own
   * section; what a section carries beyond the plan's limit is in the class before.
   */
  readonly lengthByClassM: readonly number[];
}

/** Materials of emergency sections other than bags, as ordered (waste of sand and earth included). */
export interface Materials {
  /** Sand filled loose, m3; it is in `sandM3` too. */
  readonly looseSandM3: number;
  /** Earth as measured in place, tamped, m3. */
  readonly earthM3: number;
  /** Plywood faces, m2, and whole sheets of 4 x 8 ft for them. */
  readonly plywoodM2: number;
  readonly plywoodSheets: number;
  /** Lumber of 2 x 4 in, metres, and whole pieces of 10 ft for it. */
  readonly lumberM: number;
  readonly lumberPieces: number;
  /** Boards of 1 x 12 in, metres, and whole pieces of 12 ft for them. */
  readonly boardsM: number;
  readonly boardPieces: number;
  /** Stakes and posts, number. */
  readonly stakes: number;
}

/** Totals of one stretch between breaks; a line without breaks has one reach. Counts ordered whole add up to the line's. */
export interface Reach {
  readonly fromM: number;
  readonly toM: number;
  readonly totals: Totals;
  /** Identifier and name of the section it is built as. */
  readonly section: string;
  readonly sectionName: string;
  /** Greatest height it may be built to, metres: its section's limit, or the plan's. */
  readonly limitM: number;
}

export type Severity = "stop" | "caution" | "note";

export interface Check {
  /** The rule that found it, e.g. `over-limit`. */
  readonly id: RuleId;
  readonly severity: Severity;
  /**
   * Stretch it speaks of, always within 0 and the length; both 0 when it speaks of the whole plan. A stretch
   * that runs over a ring's closing point comes as two checks, the second one `continued`.
   */
  readonly fromM: number;
  readonly toM: number;
  /** Left out = false. */
  readonly continued?: true;
  /** Place of a mark on the map; null when it has none. */
  readonly at: LonLat | null;
  /** Where along the line; null when it speaks of the whole plan. */
  readonly where: Where | null;
  /** What was found, with its figures in SI; `checkWords` makes sentences of it. */
  readonly finding: CheckFinding;
}

/** A published table's answer for the same heights, as if the ground were flat across. */
export interface PublishedCount {
  readonly key: "NDSU-11" | "NDSU-97" | "EMI-L4";
  readonly name: string;
  /** Bags for the heights the table covers; null when it covers none of them. */
  readonly bags: number | null;
  /** Length built that its bags are for, metres. */
  readonly coveredM: number;
  /** Length of line whose height lies beyond the table, metres. */
  readonly beyondM: number;
  readonly why: string;
}

export interface SizedLine {
  readonly id: string;
  readonly name: string;
  readonly kind: "ring" | "line";
  /** Plan area enclosed by a ring, m2; null for a line. */
  readonly enclosedM2: number | null;
  /** Chainage of each corner, metres. */
  readonly cornersM: readonly number[];
  readonly stations: readonly Station[];
  readonly walk: Walk;
  readonly totals: Totals;
  /** How good its ground is taken to be: as stated, or typical of the cell size. */
  readonly groundAccuracy: GroundAccuracy;
  /** Which of its ground was read in the field; null, or left out, where the plan has no readings. */
  readonly surveyed?: SurveyedGround | null;
  /** Totals with the ground one RMSE lower (more bags) and higher (fewer bags); null while live. */
  readonly totalsGroundLow: Totals | null;
  readonly totalsGroundHigh: Totals | null;
  /** Sized on many grounds; left out until that is asked for, null where it failed. */
  readonly simulatedGround?: GroundSimulation | null;
  readonly reaches: readonly Reach[];
  readonly published: readonly PublishedCount[];
  readonly checks: readonly Check[];
  /** Why nothing can be concluded from its water and ground; null where they belong together. */
  readonly levelDoubt: LevelDoubt | null;
  /** Whether it stands, seeps and is pumped dry; null while live. */
  readonly holding?: Holding | null;
  /** Whether there is time; null while live. */
  readonly time?: LineTime | null;
  /** Step of the walk, metres. */
  readonly stepM: number;
}

/** The levee cut across at one chainage, for the drawing. Offsets are metres, positive to the left of chainage. */
export interface CrossSection {
  readonly chainageM: number;
  readonly at: LonLat;
  /** Which side the water stands on: left (+1) or right (-1) of chainage. A ring's water side is its outside. */
  readonly waterSide: 1 | -1;
  readonly offsetM: Float64Array;
  /** NaN where there is no data. */
  readonly groundM: Float64Array;
  readonly waterM: number;
  readonly crestM: number;
  readonly heightM: number | null;
  readonly greatestHeightM: number | null;
  readonly baseM: number | null;
  readonly toeLeftM: number;
  readonly toeRightM: number;
  readonly crownM: number;
  /** Horizontal run of the sides per metre of height; the mean of both where they differ. */
  readonly sideSlope: number;
  readonly runWater: number;
  readonly runLand: number;
  /** What is built and counted; of a levee that is raised, what is added. */
  readonly areaM2: number | null;
  /** The whole body above the ground. */
  readonly bodyM2: number | null;
  /** Null where it is not of bags, too. */
  readonly courses: number | null;
  readonly bagsPerM: number | null;
  /** The section of the reach it lies in. */
  readonly section: string;
  readonly sectionName: string;
  readonly limitM: number;
  /** What the body is made of, ready to draw; empty where nothing is built or ground is missing. */
  readonly parts: readonly SectionPart[];
}

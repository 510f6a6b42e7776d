/**
 * The plan document: what the person decided, and nothing that can be computed from it.
 * Immutable plain JSON; SI units; coordinates are [longitude, latitude] in degrees (RFC 7946, WGS 84).
 */

import type { MarkAnswer } from "./ground-marks.ts";

export type LonLat = readonly [number, number];

export interface Structure {
  readonly id: string;
  readonly name: string;
  /** Outline, not closed (first corner is not repeated), at least three corners. */
  readonly outline: readonly LonLat[];
  /** Lowest floor or opening, metres in the terrain's datum; null when not known. */
  readonly floorM: number | null;
  /**
   * True: every line is to protect it. False: left outside on purpose. Left out: a ring is for it when it lies
   * inside, or when none does; an open line always.
   */
  readonly protect?: boolean | undefined;
}

export interface Alignment {
  readonly id: string;
  readonly name: string;
  /** `ring` closes on itself round the structure; `line` ties in to high ground at both ends. */
  readonly kind: "ring" | "line";
  /** Corners in order; a ring does not repeat its first corner. */
  readonly corners: readonly LonLat[];
  /** Chainages (m) that divide the line into reaches for subtotals; sorted, strictly inside (0, length). */
  readonly reachBreaksM: readonly number[];
  /**
   * Corners that must stay where they are when the line is improved, by index; rising. A leg between two
   * pinned neighbours stays too. An index past the last corner counts for nothing; left out = none.
   */
  readonly pinned?: readonly number[];
  /**
   * What each reach is built as, from the start of the line; a reach past the end of the list, or all of them
   * when it is left out, is the sandbag pyramid of the plan's `section`.
   */
  readonly reachSections?: readonly ReachSection[];
  /**
   * Clear distance from buildings to the landside toe that it was found, improved or offset with, metres: it is
   * checked against that. Left out = the plan's `practice.setbackM`.
   */
  readonly setbackM?: number;
  /** Stretches left open for vehicles until they are closed, in order along the line; left out = none. */
  readonly closures?: readonly Closure[];
}

/** A stretch left open for vehicles, and closed by the people kept beside it. */
export interface Closure {
  readonly fromM: number;
  readonly toM: number;
  /** Stage at the gauge (m) or hour (`2026-04-08T11:00-05:00`) at which closing begins, the earlier; null = not set. */
  readonly closeBy: { readonly stageM: number | null; readonly at: string | null };
  /** People kept beside it; null until someone has entered it. */
  readonly people: number | null;
}

/** What one reach is built as. */
export interface ReachSection {
  /** Identifier of an emergency section, as in `shared/sections.ts`. */
  readonly section: string;
  /** Its own figures where they differ from their defaults, SI. */
  readonly figures: { readonly [key: string]: number };
}

export interface NoGo {
  readonly id: string;
  readonly name: string;
  readonly outline: readonly LonLat[];
  /** An imported footprint that is no building of the plan: a request has it beside the plan's own, a file never. */
  readonly isImported?: true;
}

/** A place where the river's water is: where flood water comes from when it is traced. */
export interface WaterSource {
  readonly id: string;
  readonly name: string;
  readonly at: LonLat;
}

/** A pipe through a bank, from one end to the other. Plugged = a plug is in, or its gate is shut. */
export interface Culvert {
  readonly id: string;
  readonly name: string;
  /** At least two points. */
  readonly path: readonly LonLat[];
  /** Bottom of the pipe at its first and its last point, metres in the terrain's datum; null = the ground there. */
  readonly invertsM: readonly [number | null, number | null];
  /** Inside diameter, or height, metres; null when not known. */
  readonly sizeM: number | null;
  /** What could shut it; null when not known. */
  readonly gate: "none" | "flap" | "gate" | null;
  readonly plugged: boolean;
}

/** A place where the ground looks as it does at a culvert, and what a person said of it. It is no pipe of the plan. */
export interface PossibleCulvert {
  readonly id: string;
  readonly name: string;
  /** In the sag in front of the bank, and in the channel behind it. */
  readonly path: readonly LonLat[];
  /** No pipe there, or one is still to be looked for in the field. */
  readonly answer: "no" | "look";
}

/** An opening to a pipe in the ground: water may come up out of it. */
export interface Drain {
  readonly id: string;
  readonly name: string;
  readonly at: LonLat;
  readonly kind: "floor-drain" | "storm-inlet" | "sewer";
  /** Whether its pipe leads to where the flood stands; null when not known. */
  readonly joinsOutside: boolean | null;
  readonly plugged: boolean;
}

/** A way out by road. */
export interface ExitRoad {
  readonly id: string;
  readonly name: string;
  /** At least two points. */
  readonly path: readonly LonLat[];
}

/** What the work needs a place for beside the levee: sand and bags, pumps, trucks on their way in. */
export interface WorkPlace {
  readonly id: string;
  readonly name: string;
  readonly kind: "pile" | "pumps" | "truck-way";
  /** One point; of a way at least two, its last where trucks unload. */
  readonly path: readonly LonLat[];
}

export interface Gauge {
  readonly name: string;
  /** Null where it is off the map. */
  readonly at: LonLat | null;
}

/** Direction of the river's fall, drawn as an arrow from upstream to downstream. */
export interface Flow {
  readonly from: LonLat;
  readonly to: LonLat;
}

export interface Water {
  /** False until a person has given a stage or an elevation: nothing is counted; left out = given. */
  readonly given?: boolean | undefined;
  /** Which of the two inputs rules. */
  readonly by: "stage" | "elevation";
  readonly stageM: number;
  readonly gaugeZeroM: number;
  /** Vertical datum that the gauge's zero is in, free text; left out = not stated. */
  readonly gaugeDatum?: string | undefined;
  /** Added to the gauge's elevation to reach the terrain's datum; null = taken as the same datum. */
  readonly datumOffsetM: number | null;
  /** Where the offset came from. */
  readonly datumNote: string;
  readonly elevationM: number;
  /** Fall of the water surface along the flow, metres per metre, >= 0. */
  readonly fallPerM: number;
  readonly freeboardM: number;
}

export interface GroundSettings {
  /** Root mean square error of the raster's heights, metres; null = typical of its cell size. */
  readonly rmseM: number | null;
  /** Added to every height of the elevation data, metres: how much higher the ground was found in the field. */
  readonly correctionM: number;
  /** Shares of the variance of the error: the same everywhere, and alike within `rangeM`; the rest is each cell's own. */
  readonly biasShare: number;
  readonly correlatedShare: number;
  /** Distance at which errors of the second kind are hardly alike any more, metres. */
  readonly rangeM: number;
  /** Set by the person when the file does not state its vertical unit; null = as the file states. */
  readonly verticalUnit: VerticalUnit | null;
  /** Vertical datum as the person states it, free text. */
  readonly datumNote: string;
  /** What the person says of heights that stand apart, for the files in which they were met. */
  readonly marks?: readonly MarkAnswer[] | undefined;
}

export type VerticalUnit = "metre" | "foot" | "us-survey-foot";

export interface Bag {
  /** Volume of one bag as placed, m3. */
  readonly placedVolumeM3: number;
  /** Mass of one filled bag, kg. */
  readonly filledMassKg: number;
  /** Width across the line of one bag as placed, metres. */
  readonly placedWidthM: number;
  /** Thickness of one course as placed, metres. */
  readonly courseM: number;
}

export interface Sheet {
  readonly toeExtensionM: number;
  readonly tailM: number;
  readonly rollWidthM: number;
  readonly rollLengthM: number;
  readonly lapM: number;
}

export interface Section {
  /** Base width over height. */
  readonly baseRatio: number;
  /** Least base ratio a later raise may come down to. */
  readonly leastBaseRatio: number;
  readonly crownM: number;
  readonly bag: Bag;
  readonly sheet: Sheet;
}

export interface Practice {
  /** Height limit, metres. */
  readonly limitM: number;
  /** Clear distance from structure to the landside toe, metres. */
  readonly setbackM: number;
  readonly stationIntervalM: number;
  /** Spare bags as a share of the bags placed. */
  readonly spareShare: number;
  /** Sand lost as a share of the sand in bags. */
  readonly wasteShare: number;
  /** Extra sand for the bags that hold the sheet, m3 per metre of line. */
  readonly sheetAnchorM3PerM: number;
  readonly sandDryKgPerM3: number;
  readonly sandWetKgPerM3: number;
  /** Allowed fall of the ground across the base as a share of the height. */
  readonly crossFallShare: number;
  /** Bags filled or placed per person-hour, low and high of the published spread. */
  readonly taskRateLow: number;
  readonly taskRateHigh: number;
  /** Whole job, bags per person-hour. */
  readonly jobRate: number;
  /** People at work at the same time; null until someone has entered it. */
  readonly people: number | null;
  /** Sand one truck carries, m3. */
  readonly truckM3: number;
  /** How much higher than the forecast stage the river may yet be asked to go, metres (raise reserve check). */
  readonly raiseM: number;
}

/** How much water presses up under the base: not at all, falling to nothing at a drained inner toe, or in full. */
export type Uplift = "none" | "triangular" | "full";

/** The ground under the levee, in the words of the creep tables. */
export type Soil =
  | "unknown"
  | "fine-silt"
  | "fine-sand"
  | "medium-sand"
  | "coarse-sand"
  | "fine-gravel"
  | "coarse-gravel"
  | "soft-clay"
  | "medium-clay"
  | "hard-clay";

/** What standing up, seeping and pumping are judged by. Low and high are the ends of a range. */
export interface HoldingSettings {
  /** Friction of the base on the ground. */
  readonly frictionLow: number;
  readonly frictionHigh: number;
  /** Mass of the levee as built, kg/m3. */
  readonly leveeKgPerM3: number;
  readonly uplift: Uplift;
  /** Factors of safety asked for. */
  readonly slidingFactor: number;
  readonly overturningFactor: number;
  /** Hydraulic conductivity of the bag fill, m/s. */
  readonly fillLowMPerS: number;
  readonly fillHighMPerS: number;
  /** True when the sheet is laid on the waterside. */
  readonly sheetLaid: boolean;
  /** Share of the seepage through the levee that the sheet takes off. */
  readonly sheetCutLow: number;
  readonly sheetCutHigh: number;
  readonly soil: Soil;
  /** Depth of pervious ground under the levee, metres; 0 = seepage under it is not counted. */
  readonly underDepthM: number;
  /** Hydraulic conductivity of that ground, m/s. */
  readonly underLowMPerS: number;
  readonly underHighMPerS: number;
  /** Depth to which the base is set into the ground (bond trench), metres. */
  readonly trenchLowM: number;
  readonly trenchHighM: number;
  /** Rain to pump against, m/s. */
  readonly rainMPerS: number;
  /** Runoff coefficient inside. */
  readonly runoffLow: number;
  readonly runoffHigh: number;
  /** Pump capacity over the greatest demand. */
  readonly pumpMargin: number;
  readonly pumpSpares: number;
}

/** One row of a forecast. */
export interface ForecastRow {
  /** `2026-04-03T14:00-05:00`, or without an offset where the forecast states none. */
  readonly at: string;
  /** Stage at the gauge, or elevation, as the forecast's `levels` says; metres. */
  readonly levelM: number;
  readonly lowM: number | null;
  readonly highM: number | null;
}

export interface Forecast {
  readonly levels: "stage" | "elevation";
  /** Rising in time; the zone offset of each row is kept. */
  readonly rows: readonly ForecastRow[];
  /** Who gave it and when, free text. */
  readonly note: string;
}

/** A forecast that a newer one took the place of, and when that was, seconds since 1970. */
export interface PastForecast extends Forecast {
  readonly replacedAtS: number;
}

/** When people work, and what the river is forecast to do meanwhile. */
export interface TimeSettings {
  readonly forecast: Forecast | null;
  /** Those before it, the oldest first; left out = none. */
  readonly pastForecasts?: readonly PastForecast[] | undefined;
  /** Start of work, as in a forecast row; null until someone has entered it. */
  readonly startAt: string | null;
  /** Crest kept above the water at every hour, metres. */
  readonly marginM: number;
  /** Hours before the first bag is placed: clearing, trench, sand and bags on site. */
  readonly setUpH: number;
  /** Share of the people who fill; the rest carry and lay. */
  readonly fillShare: number;
  /** Crews that lay side by side, each on its own stretch. */
  readonly crews: number;
  /** Shifts in 24 hours; null until someone has entered it. */
  readonly shifts: number | null;
  readonly shiftH: number;
  /** True when work goes on at night under lights. */
  readonly lit: boolean;
  /** Hours of the day between which an unlit crew works, within the daylight; null = from sunrise, to sunset. */
  readonly dayFromH: number | null;
  readonly dayToH: number | null;
  /** Height raised all along before the next is begun, metres. */
  readonly liftM: number;
}

/** When people leave: set by the exit road and the time they need, never by what the levee can take. */
export interface LeaveLevel {
  /** What `levelM` is: a stage at the gauge, or an elevation there. */
  readonly by: "stage" | "elevation";
  /** Metres; null where only the hour is set. */
  readonly levelM: number | null;
  /** `2026-04-08T11:00-05:00`; null where only the level is set. */
  readonly at: string | null;
  /** What sets it, free text. */
  readonly note: string;
}

/** A point of known elevation that the level is set from. */
export interface Benchmark {
  /** As crews know it, e.g. "BM 1, brass cap, well pad". */
  readonly name: string;
  /** Metres in the terrain's datum. */
  readonly elevationM: number;
  /** Null where it was not placed. */
  readonly at: LonLat | null;
}

/** Ground read in the field at one place. */
export interface GroundReading {
  readonly at: LonLat;
  /** Metres in the terrain's datum. */
  readonly groundM: number;
}

/** What was leveled in the field, and what from. */
export interface Survey {
  readonly benchmark: Benchmark | null;
  /** Rod reading on the benchmark, metres; null until the level is set up. */
  readonly backsightM: number | null;
  readonly readings: readonly GroundReading[];
}

export interface TerrainRef {
  readonly name: string;
  readonly bytes: number;
  /** Web address it was read from; left out for a file. Nothing is asked there before the person says so. */
  readonly address?: string | undefined;
}

/** How far a stretch is built, each after the one before. */
export type BuildState = "not-begun" | "begun" | "to-height" | "poly-on" | "checked";

/** How far one stretch is built, as marked by those who build it. */
export interface ProgressMark {
  readonly lineId: string;
  /** From a stake to the next, metres of chainage. */
  readonly fromM: number;
  readonly toM: number;
  readonly state: BuildState;
  /** When it was marked, seconds since 1970-01-01 00:00 UTC. */
  readonly atS: number;
  /** Number of the plan that it was built by. */
  readonly planNumber: string;
  /** Who marked it; empty where nobody is named. */
  readonly by: string;
  /** Who said that a Must fix there is cleared; empty where there was none. */
  readonly clearedBy: string;
  readonly note: string;
  /** Identifier of its photo on the device that took it; empty without one. */
  readonly photoId: string;
}

export interface Plan {
  readonly title: string;
  readonly structures: readonly Structure[];
  readonly alignments: readonly Alignment[];
  readonly noGo: readonly NoGo[];
  /** Where water comes from, as marked; when left out, from every low edge of the ground. */
  readonly sources?: readonly WaterSource[];
  /** Pipes and drains, as drawn; left out when none is. */
  readonly culverts?: readonly Culvert[];
  readonly drains?: readonly Drain[];
  /** Places of which someone said that no culvert is there, or that it is to be looked for; left out = none. */
  readonly possibleCulverts?: readonly PossibleCulvert[];
  /** Ways out; left out when none is drawn. */
  readonly roads?: readonly ExitRoad[];
  /** Left out when none is placed. */
  readonly workPlaces?: readonly WorkPlace[];
  readonly gauge: Gauge | null;
  readonly flow: Flow | null;
  readonly water: Water;
  readonly ground: GroundSettings;
  readonly section: Section;
  readonly practice: Practice;
  /** Left out in plans made before these were asked for: read with `holdingOf` and `timeOf`. */
  readonly holding?: HoldingSettings;
  readonly time?: TimeSettings;
  /** When people leave; null, or left out in older plans, until someone has set it. */
  readonly leave?: LeaveLevel | null;
  /** Benchmark, backsight and ground read in the field; null, or left out in older plans, until someone types any. */
  readonly survey?: Survey | null;
  /** What is built so far, at most one mark a stretch; left out until something is marked. */
  readonly progress?: readonly ProgressMark[];
  /** Files the heights come from, so that a reopened plan can say which terrain it wants. */
  readonly terrain: readonly TerrainRef[];
  /** The alternative the totals and differences refer to; null when there is none. */
  readonly chosenId: string | null;
  /** What an opened plan file held that is not ours; written back with the plan, used for nothing. */
  readonly carried?: Carried;
}

/** Parts of a plan file that nothing here reads, kept so that opening and saving loses none of them. */
export interface Carried {
  /** Whole GeoJSON features of other roles. */
  readonly features: readonly unknown[];
  /** Other properties and members of our own features, by `role:id`. */
  readonly byFeature: {
    readonly [key: string]: {
      readonly properties: { readonly [name: string]: unknown };
      readonly members: { readonly [name: string]: unknown };
    };
  };
  /** Other members of the collection. */
  readonly members: { readonly [name: string]: unknown };
  /** Settings whose names are not known, in their nesting. */
  readonly settings: { readonly [name: string]: unknown };
}

import type { CrewInput } from "./crew-inputs.ts";
import type { Band } from "./hydrograph.ts";

/** How fast people are taken to work: the low end of the published rates, or the high end. */
export type Pace = "slow" | "fast";

export interface Crew {
  readonly people: number;
  readonly fillers: number;
  readonly layers: number;
  /** Crews, each with a part of the line. */
  readonly crews: number;
  /** Bags filled and laid in an hour, all people together. */
  readonly slowBagsPerH: number;
  readonly fastBagsPerH: number;
}

/** A stretch on which the same steps are laid. Hours are counted from the start of work, at the slow pace. */
export interface WorkStretch {
  readonly fromM: number;
  readonly toM: number;
  /** Crew in whose part it lies, from 1. */
  readonly crew: number;
  /** Numbers of that crew's steps laid on it, in order; empty on HOLD. */
  readonly steps: readonly number[];
  /** True where it is over the height limit: nothing is built before an engineer decides. */
  readonly isOnHold: boolean;
  /** Lowest ground under the base, metres. */
  readonly lowestM: number;
  readonly crestM: number;
  readonly bags: number;
  /** Null on HOLD, where it is not finished within a year, or where the crew is not known. */
  readonly startH: number | null;
  readonly finishH: number | null;
  /** When the likely forecast wets its lowest ground; null without forecast or when it stays dry. */
  readonly wetH: number | null;
  /** Least height of its crest above the water while it is built, metres, likely forecast; null without, and on HOLD. */
  readonly leastAheadM: number | null;
  /** Least of what it has beyond what is asked, metres, below 0 when it is behind; likely forecast; null as above. */
  readonly leastSpareM: number | null;
}

/** What a crew lays in one go: a stretch of its part, up to one level. Hours as of {@link WorkStretch}. */
export interface BuildStep {
  /** In the order of the crew's work, from 1. */
  readonly number: number;
  /** Chainages; on a ring the first is the greater where it runs over the closing point. */
  readonly fromM: number;
  readonly toM: number;
  /** How far below the mark on the stake it stops; 0 at the mark. */
  readonly belowM: number;
  /** Whole bags, spares among them. */
  readonly bags: number;
  /** Fewest and most courses laid; null where it is not of bags alone. */
  readonly courses: readonly [fewest: number, most: number] | null;
  readonly startH: number | null;
  readonly finishSlowH: number | null;
  readonly finishFastH: number | null;
  /** Water at the gauge, metres, at which it must be done: what is built before it is then not the margin above it. */
  readonly neededM: number;
  /** When the likely forecast passes that; null without one, and where it does not. */
  readonly neededH: number | null;
  /** Done before it is needed by so many hours at the slow pace; below 0 it is late; null where either is not known. */
  readonly earlyH: number | null;
}

/** A stretch over the height limit. Its bags are ordered; they are in no step and in no hours. */
export interface HoldStretch {
  readonly fromM: number;
  readonly toM: number;
  readonly bags: number;
  /** Water at the gauge, metres, that comes to its lowest ground, and when: an engineer must decide before. */
  readonly decideM: number;
  readonly decideH: number | null;
}

/** A way left open, and whether it can still be closed. Hours are counted from the start of work. */
export interface ClosureTime {
  readonly fromM: number;
  readonly toM: number;
  /** Whole bags, spares among them: set beside it, in no crew's steps. */
  readonly bags: number;
  readonly people: number | null;
  /** At what closing begins, as the plan has it. */
  readonly stageM: number | null;
  readonly at: string | null;
  /** When that is, by the likely forecast; null where not known, and where the forecast never gets there. */
  readonly closeH: number | null;
  /** Hours of laying by its people; null while nobody is kept for it. */
  readonly takesSlowH: number | null;
  readonly takesFastH: number | null;
  /** Water at the gauge, metres, at which it must be closed; null where nothing is built there. */
  readonly neededM: number | null;
  readonly neededH: number | null;
  /** Closed before it is needed by so many hours at the slow pace; below 0 it is late; null where not known. */
  readonly earlyH: number | null;
  /** By the likely forecast at the slow pace; null where it is not known. */
  readonly inTime: boolean | null;
}

/** Where a crew's part lies from the middle of the line. */
export type Toward = "N" | "NE" | "E" | "SE" | "S" | "SW" | "W" | "NW";

/** One crew's continuous part of the line, with its steps in the order of its work. */
export interface CrewPart {
  /** From 1, in order of chainage. */
  readonly crew: number;
  /** Null where crews cannot be told apart by it. */
  readonly toward: Toward | null;
  /** Chainages; on a ring the first may be the greater. */
  readonly fromM: number;
  readonly toM: number;
  /** In its steps. */
  readonly bags: number;
  readonly steps: readonly BuildStep[];
  readonly holds: readonly HoldStretch[];
}

/** Whether the crest stays ahead of the water by the margin at every moment of the forecast. */
export interface AheadVerdict {
  readonly band: Band;
  readonly pace: Pace;
  readonly ahead: boolean;
  /** Least of what the crest has beyond what is asked; below 0 it is behind. Metres. */
  readonly leastSpareM: number;
  /** When it is first behind, hours from the start; null when it never is. */
  readonly behindFromH: number | null;
  /** Chainage of the stretch that is behind first or by most; null when none is. */
  readonly behindAtM: number | null;
}

/** What would make it possible. Less freeboard is never among it. */
export interface WaysOut {
  /** Least number of people with whom the build sequence is in time at the slow pace; null when no number does. */
  readonly people: number | null;
  /** The same with what is on HOLD built, too, should an engineer let it be; null where nothing is on HOLD or no number does. */
  readonly peopleWithHold: number | null;
  /** No fewer are enough, however they are divided: the bags due by each hour over the hours worked until then. */
  readonly peopleAtLeast: number | null;
  /** Most bags, on ground like this, that the people stated could keep ahead with; null when none. */
  readonly bagsAtMost: number | null;
  /** Fewest people, working day and night under lights; null when no number does. */
  readonly peopleDayAndNight: number | null;
}

/** State of the work and the river at one whole hour from the start, slow pace and likely forecast. */
export interface HourRow {
  readonly hour: number;
  /** Water at the gauge, metres; null after the forecast's last row. */
  readonly waterM: number | null;
  readonly bagsLaid: number;
  /** Least height of the crest above the water anywhere, metres; null after the forecast. */
  readonly leastAheadM: number | null;
}

export interface CurvePoint {
  /** Above the water the plan is sized for, metres. */
  readonly riseM: number;
  readonly waterM: number;
  /** Null when the water is not given by stage. */
  readonly stageM: number | null;
  readonly bags: number;
  readonly greatestHeightM: number;
  readonly lengthOverLimitM: number;
}

/** What one more foot of water costs. */
export interface NextFoot {
  readonly bags: number;
  /** Length it puts over the height limit, metres. */
  readonly overLimitM: number;
  readonly earthM3: number;
  readonly looseSandM3: number;
  /** True where part of the line has no elevation data and is not in these figures. */
  readonly hasGaps: boolean;
}

/** Bags against stage. */
export interface StageCurve {
  readonly points: readonly CurvePoint[];
  /** Rise at which the greatest height reaches the limit; null where that is outside the curve. */
  readonly limitRiseM: number | null;
  /** What one more foot of water costs; null where the line is far beyond any sandbag levee. */
  readonly nextFoot: NextFoot | null;
}

/** What the line would be if the forecast's crest came true. */
export interface BandCrest extends CurvePoint {
  readonly band: Band;
  /** `2026-04-03T14:00-05:00`. */
  readonly at: string;
}

/** Whether there is time for a sized line. */
export interface LineTime {
  /** Hour 0, `2026-04-03T14:00-05:00`: the start of work, while that is missing the forecast's first row; null without either. */
  readonly startAt: string | null;
  /** What nobody has entered yet; with anything in it no hour of work is known and no verdict is given. */
  readonly missing: readonly CrewInput[];
  /** Null while something is missing. */
  readonly crew: Crew | null;
  /** Sunrise and sunset of the first day of work, hours of its clock; null where work is lit or not known. */
  readonly daylight: { readonly fromH: number; readonly toH: number } | null;
  /** Bags in the build sequence, spares among them; those on HOLD are not. */
  readonly bags: number;
  /** Bags of the stretches over the height limit: ordered, in no step and in no hours. */
  readonly bagsOnHold: number;
  /** Hours from the start to the last bag, breaks and nights included; null when it takes over a year, is not known, or all is on HOLD. */
  readonly finishSlowH: number | null;
  readonly finishFastH: number | null;
  readonly marginM: number;
  /** True where the forecast is by stage and at what elevation that is, is not known: nothing of it counts. */
  readonly lacksGaugeZero: boolean;
  /** Hours from the start to the forecast's last row, beyond which nothing is known; null without one. */
  readonly forecastEndH: number | null;
  /** Hours from the start to the first wet ground under the line, likely forecast; null when it stays dry. */
  readonly firstWetH: number | null;
  /** In order of chainage. */
  readonly stretches: readonly WorkStretch[];
  /** The build sequence by crew. */
  readonly parts: readonly CrewPart[];
  /** Empty without a forecast, with one that ends before the work starts, while something is missing, and where all is on HOLD. */
  readonly verdicts: readonly AheadVerdict[];
  /** Ways left open; their bags are in no step and in no hours. */
  readonly closures: readonly ClosureTime[];
  /** Slow pace, likely forecast; null where there are no verdicts, and where it is ahead but part of it is not counted or on HOLD, or a way left open may not be closed in time. */
  readonly inTime: boolean | null;
  /** Null when it is in time or there is no forecast. */
  readonly waysOut: WaysOut | null;
  /** Empty while something is missing. */
  readonly hours: readonly HourRow[];
  readonly crests: readonly BandCrest[];
  readonly curve: StageCurve;
  /** When each sample of the walk gets wet, hours from the start, likely forecast; NaN when dry or unknown. */
  readonly wetH: Float32Array;
}

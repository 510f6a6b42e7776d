import type { LonLat, Soil, Uplift } from "../plan.ts";

/** Both ends of what may be; never one number where the inputs are a range. */
export interface Spread {
  readonly low: number;
  readonly high: number;
}

/** At or above what is required over the whole range of friction, at its high end alone, or at neither. */
export type Verdict = "meets-required" | "doubtful" | "below-required";

/** One way to give way, where the line is weakest against it. */
export interface Weakest {
  readonly verdict: Verdict;
  readonly chainageM: number;
  /** Depth of water against the levee there, metres. */
  readonly waterDepthM: number;
  /** Factor of safety there; the same at both ends for overturning. */
  readonly factor: Spread;
  readonly required: number;
  /** Length of line on which the lower factor is below what is required, metres. */
  readonly lengthShortM: number;
}

export interface Standing {
  readonly uplift: Uplift;
  readonly sliding: Weakest;
  readonly overturning: Weakest;
}

/** A total along the line, m3/s, at both ends of the conductivity's range. */
export interface Seepage {
  readonly throughBareM3PerS: Spread;
  /** With the sheet on the waterside. */
  readonly throughSheetM3PerS: Spread;
  readonly underM3PerS: Spread;
  /** What is to be pumped: through, with the sheet if it is laid, and under. */
  readonly totalM3PerS: Spread;
  /** Where most comes through and under a metre of line. */
  readonly worstM: number | null;
  readonly worstM2PerS: Spread;
  /** Length without ground data, which is not in the totals, metres. */
  readonly lengthNoDataM: number;
}

/** Classes of what was seen at gradients. Source: NIX-11 (TM 3-424). */
export type GradientClass = "light" | "medium" | "heavy" | "boils" | "new-boils";

export interface ExitGradient {
  readonly atM: number;
  readonly gradient: Spread;
  /** Every class the higher gradient lies in, the gravest last. */
  readonly classes: readonly GradientClass[];
  /** Gradient at which sand floats. */
  readonly critical: Spread;
}

export interface Creep {
  readonly soil: Soil;
  readonly atM: number;
  readonly lane: number;
  readonly bligh: number;
  /** What the tables ask for this soil; null where they say nothing. */
  readonly laneRequired: number | null;
  readonly blighRequired: number | null;
}

/** How much more the line could carry on its base. */
export interface Raise {
  /** Least raise anywhere that is built, metres; 0 or below where there is no reserve. */
  readonly leastM: number;
  readonly atM: number;
  /** Water-surface elevation at the gauge that the raised line would stand for, with its freeboard, metres. */
  readonly standsForM: number;
  /** The same as stage; null when the water is not given by stage. */
  readonly standsForStageM: number | null;
}

/** Ground inside the landside toes of a ring, without the structures. */
export interface Inside {
  readonly lowestM: number;
  /** Where the sump belongs. */
  readonly lowestAt: LonLat;
  readonly areaM2: number;
  /** Share of the area without ground data, 0..1; it stores nothing here. */
  readonly holeShare: number;
  /** Water stored below levels, from the lowest place up to the water outside. */
  readonly storage: readonly { readonly levelM: number; readonly volumeM3: number }[];
  /** Level at which a structure gets wet: its lowest floor, or the lowest ground at its walls. */
  readonly structureM: number | null;
  readonly structureBy: "floor" | "ground" | null;
}

/** Level inside some hours after the highest water outside; null where it stands as high as the water outside, above which it never is. */
export interface FillingHour {
  readonly hours: number;
  /** Lowest water surface outside then, metres. */
  readonly outsideM: number;
  readonly lowM: number | null;
  readonly highM: number | null;
}

/** Pumps as they are sold. */
export type PumpKind = "sump" | "diaphragm" | "centrifugal" | "trash";

export interface PumpOption {
  readonly kind: PumpKind;
  /** Capacity one pump is counted with, m3/s: the lower end of its class. */
  readonly eachM3PerS: number;
  readonly working: number;
  readonly spare: number;
}

export interface Pumping {
  /** Rain running off inside, m3/s; null for a line, whose catchment is not known. */
  readonly rainM3PerS: Spread | null;
  readonly demandM3PerS: Spread;
  /** What pumps are to carry: the higher demand and the margin. */
  readonly capacityM3PerS: number;
  readonly options: readonly PumpOption[];
  /** The option proposed; null when nothing is to be pumped. */
  readonly proposed: PumpOption | null;
  readonly withoutPumps: readonly FillingHour[];
  /** Hours without pumps until a structure gets wet; null when unknown, or when the water outside is lower by then. */
  readonly hoursToStructure: { readonly soonest: number | null; readonly latest: number | null };
  /** What happens when one of the proposed pumps fails and the spare is not started. */
  readonly oneFails: {
    /** What comes in beyond the pumps left, at the higher demand, m3/s. */
    readonly excessM3PerS: number;
    readonly hoursToStructure: number | null;
    readonly levels: readonly FillingHour[];
  } | null;
}

/** One value for each sample of the walk; NaN where there is no ground data. */
export interface HoldingProfile {
  readonly waterDepthM: Float32Array;
  /** Infinity where no water stands. */
  readonly slidingLow: Float32Array;
  readonly slidingHigh: Float32Array;
  readonly overturning: Float32Array;
  /** Through (with the sheet if laid) and under, m3/s per metre. */
  readonly seepageLowM2PerS: Float32Array;
  readonly seepageHighM2PerS: Float32Array;
  readonly gradientHigh: Float32Array;
  /** How much more the base could carry, metres. */
  readonly raiseM: Float32Array;
}

/** Whether a sized line stands, what seeps through it and what is to be pumped. */
export interface Holding {
  /** Null where no water stands against the line, or there is no ground. */
  readonly standing: Standing | null;
  readonly seepage: Seepage;
  readonly exit: ExitGradient | null;
  readonly creep: Creep | null;
  /** Null where nothing is built, and where a part has no published reserve. */
  readonly raise: Raise | null;
  /** Null for a line, and for a ring without ground inside. */
  readonly inside: Inside | null;
  readonly pumping: Pumping;
  readonly profile: HoldingProfile;
}

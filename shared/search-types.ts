import type { Alignment, LonLat, Plan } from "./plan.ts";
import type { Totals } from "./sizing-types.ts";

/** Where a found line may run: within a reach of the structures' bounding box, or inside an outline. */
export type FindWindow = { readonly reachM: number } | { readonly outline: readonly LonLat[] };

/** The widths of window that are offered, metres. */
export const WINDOW_REACHES_M = [30, 60, 120, 240] as const;

/** What a search is asked, beside the plan. */
export interface RingOptions {
  /** Structures to go round; all of the plan's when left out. */
  readonly structureIds?: readonly string[] | undefined;
  readonly window: FindWindow;
  /** Most corners of a ring; 24 when left out. */
  readonly maxCorners?: number | undefined;
  /** Length of line carried on into high ground where it ties in, metres; 5 ft when left out. */
  readonly keyInM?: number;
}

/** Source: common practice, no source. */
export const DEFAULT_KEY_IN_M = 1.524;
export const DEFAULT_MAX_CORNERS = 24;

export interface FindRingRequest extends RingOptions {
  readonly plan: Plan;
  /** One ring round all of the structures: other groupings are not compared. */
  readonly together?: boolean;
  /** The search stops after this long and gives the best so far, milliseconds; 2 s for each structure when left out. */
  readonly timeCapMs?: number | undefined;
  /** Also say how far the line may be from the best there is. */
  readonly judge?: "estimate" | "proof" | undefined;
  /** Also the best ring round all of the structures within each of these reaches, metres, rising. */
  readonly reachesM?: readonly number[];
}

/** Where a line ties in to ground at the crest. */
export interface FoundTieIn<At = LonLat> {
  readonly at: At;
  readonly elevationM: number;
  /** Length carried on beyond it; shorter than asked where the high ground is short, metres. */
  readonly keyInM: number;
}

/** A stretch that must be built, from tie-in to tie-in. */
export interface FoundPiece {
  readonly corners: readonly LonLat[];
  readonly tieIns: readonly FoundTieIn[];
  readonly lengthM: number;
  readonly volumeM3: number;
}

/** A note on the result of a search. Metres. */
export type SearchNote =
  | {
      readonly kind:
        | ("cut-short" | "improve-cut-short" | "over-limit" | "not-judged" | "nothing-to-build")
        | "part-on-high-ground";
    }
  | { readonly kind: "groups-not-compared"; readonly most: number }
  | { readonly kind: "toe-too-close"; readonly byM: number }
  | { readonly kind: "no-data"; readonly lengthM: number }
  | { readonly kind: "separate-rings"; readonly count: number }
  | { readonly kind: "rules-broken"; readonly wasBrokenBefore: boolean };

/** How far a found line may be from the best in its window. */
export interface HowGood {
  /** `estimate`: a finer search, no bound. `proof`: no line in the window can be cheaper. */
  readonly kind: "estimate" | "proof";
  /** (found - best possible) / best possible, at least 0, in what is minimised. */
  readonly gapShare: number;
}

/**
 * A found line as the plan can hold it. Where ground above the crest leaves one stretch to be built it is a
 * line tied in at both ends, key-in lengths included. Where it leaves several, they are one ring that runs on
 * over the free ground between them at height 0: pieces of one line stay one alternative.
 */
export interface FoundLine {
  readonly kind: Alignment["kind"];
  /** To nine decimals of a degree, as a plan file keeps them. */
  readonly corners: readonly LonLat[];
  /** Ids of the structures inside. */
  readonly encloses: readonly string[];
  /** Area inside, free ground's side included, m2. */
  readonly enclosedM2: number;
  /** By the ordinary sizing. */
  readonly totals: Totals;
  /** As the search counted it, m3. */
  readonly volumeM3: number;
  /** Stretches to be built; empty when all of the ring must be. */
  readonly pieces: readonly FoundPiece[];
  /** Stretches over ground above the crest, where nothing is built. */
  readonly free: readonly (readonly LonLat[])[];
  readonly howGood: HowGood | null;
  /** Setback it was found with, metres. */
  readonly setbackM: number;
}

/** The best ring round all structures within a reach. */
export interface FoundCordon {
  readonly reachM: number;
  /** Null when none fits. */
  readonly line: FoundLine | null;
  /** True when a smaller reach already gave this line. */
  readonly sameAsBefore: boolean;
  readonly cutShort: boolean;
}

export interface FindRingResponse {
  /** One line, or several where that takes less. */
  readonly lines: readonly FoundLine[];
  /** Empty unless asked for. */
  readonly cordons: readonly FoundCordon[];
  /** True when the search stopped before it had looked at everything. */
  readonly cutShort: boolean;
  readonly notes: readonly SearchNote[];
}

export interface ImproveLineRequest {
  readonly plan: Plan;
  /** The alternative to improve; its pinned corners, and legs between two pinned neighbours, stay. */
  readonly id: string;
  readonly maxCorners?: number | undefined;
}

export interface ImproveLineResponse {
  readonly corners: readonly LonLat[];
  /** Indices of the corners that were pinned, in the new corners. */
  readonly pinned: readonly number[];
  /** Setback it was improved with: the line's own, or the plan's; metres. */
  readonly setbackM: number;
  /** By the ordinary sizing. */
  readonly before: Totals;
  readonly after: Totals;
  readonly cutShort: boolean;
  readonly notes: readonly SearchNote[];
}

export interface SidewaysCostRequest {
  readonly plan: Plan;
  readonly id: string;
}

/**
 * What moving a line sideways would cost, station by station: bags placed per metre of line and metre of
 * move, below 0 where moving saves; NaN where the move is not allowed or its ground is not known. Arrays
 * have the same length n.
 */
export interface SidewaysCostResponse {
  readonly chainageM: Float64Array;
  /** n longitudes and latitudes, interleaved. */
  readonly lonLat: Float64Array;
  /** Unit vector square to the line, pointing to the water side; interleaved east, north. */
  readonly toWater: Float64Array;
  /** Moved toward the water. */
  readonly waterBagsPerM2: Float64Array;
  /** Moved toward the land. */
  readonly landBagsPerM2: Float64Array;
  /** How far the line was moved to find out, metres. */
  readonly moveM: number;
}

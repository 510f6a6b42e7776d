import type { ErrorModel } from "./error-model.ts";

/** Bags of a line: those of the levee with spares, and all that are ordered, poly sheeting included. */
export interface BagCounts {
  readonly bags: number;
  readonly order: number;
}

/** What may be at a station, as shares of the grounds that were tried, 0 to 1. */
export interface StationChance {
  readonly chainageM: number;
  /** Somewhere in its stretch, half way to the stations beside it, the levee is over its height limit. */
  readonly overLimit: number;
  /** Its stretch takes more fill than is counted for it with spares. */
  readonly short: number;
  /** One or the other. */
  readonly either: number;
}

/** A station where surveying the ground tells most. */
export interface SurveyFirst {
  readonly chainageM: number;
  /** Whether the levee is over its limit there is open; or it tells most about the bags of the line. */
  readonly because: "limit" | "bags";
  /** Share of the grounds in which it is over the limit there. */
  readonly overLimit: number;
}

/** A line sized on many grounds, each the elevation data and an error they may have. Plain data. */
export interface GroundSimulation {
  readonly lineId: string;
  readonly model: ErrorModel;
  /** Grounds tried. */
  readonly fields: number;
  /** Readings of the ground that all of them pass through. */
  readonly readings: number;
  /** On the ground as it is used for heights and quantities. */
  readonly used: BagCounts;
  /** Mean of all grounds, rounded. */
  readonly expected: BagCounts;
  /** Enough on half of the grounds. */
  readonly oneInTwo: BagCounts;
  /** Enough on nine of ten. */
  readonly nineInTen: BagCounts;
  /**
   * Enough on nine of ten once the ground is surveyed at every station and is there as it is now estimated; null where
   * there is nothing to survey.
   */
  readonly nineInTenSurveyed: BagCounts | null;
  /** Share of the grounds on which some place is over its height limit. */
  readonly overLimit: number;
  /** Share of the grounds on which the order as used is too small. */
  readonly short: number;
  readonly stations: readonly StationChance[];
  /** Best first; empty where surveying would tell little. */
  readonly surveyFirst: readonly SurveyFirst[];
}

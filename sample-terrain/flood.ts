import { FOOT_M } from "../shared/constants.ts";
import { DEFAULT_TIME } from "../shared/defaults.ts";
import type { ForecastRow, LeaveLevel, TimeSettings } from "../shared/plan.ts";

/** Likely stage, feet, every six hours: an invented spring flood that crests at 31.0 ft after three days. */
const LIKELY_FT = [
  22.6, 22.9, 23.5, 24.4, 25.5, 26.7, 27.8, 28.8, 29.6, 30.2, 30.6, 30.9, 31.0, 30.9, 30.6, 30.1,
  29.5,
] as const;
const STEP_H = 6;
const FIRST_AT = Date.UTC(2026, 3, 6, 7);
const OFFSET = "-05:00";
/** How far low and high stand from the likely stage at its crest, feet; in proportion to the rise before. */
const LOW_FT = 0.8;
const HIGH_FT = 0.7;

/**
 * Time and people of the demo: one shift of eight hours by daylight from the second morning on. With it the
 * drawn ring is late by the likely forecast, and the two cheaper lines are in time.
 */
export const DEMO_TIME: TimeSettings = {
  ...DEFAULT_TIME,
  forecast: {
    levels: "stage",
    rows: LIKELY_FT.map(rowOf),
    note: "Invented for the demo.",
  },
  startAt: clockAt(24),
  shifts: 1,
};

/** When people leave: the likely river then stands at the stage given. */
export const DEMO_LEAVE: LeaveLevel = {
  ...{ by: "stage", levelM: metres(30), at: clockAt(52) },
  note: "Kiln Road goes under next; an hour to clear the farm. Invented.",
};

function rowOf(likelyFt: number, index: number): ForecastRow {
  const [leastFt, mostFt] = [Math.min(...LIKELY_FT), Math.max(...LIKELY_FT)];
  const share = (likelyFt - leastFt) / (mostFt - leastFt);
  return {
    at: clockAt(STEP_H * index),
    levelM: metres(likelyFt),
    lowM: metres(likelyFt - LOW_FT * share),
    highM: metres(likelyFt + HIGH_FT * share),
  };
}

function clockAt(hours: number): string {
  return new Date(FIRST_AT + hours * 3_600_000).toISOString().slice(0, 16) + OFFSET;
}

function metres(feet: number): number {
  return Math.round(feet * FOOT_M * 1e4) / 1e4;
}

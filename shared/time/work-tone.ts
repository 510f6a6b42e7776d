import { FOOT_M } from "../constants.ts";
import type { LineTime, WorkStretch } from "./types.ts";

/** How a stretch of work comes out against the likely forecast; `plain` without one. */
export type WorkTone = "before" | "tight" | "behind" | "plain";

/** Finished less than this before its ground gets wet is tight, hours. Judgement. */
const TIGHT_H = 2;
const SLACK_M = 1e-6;
/** Water nearer to the top than this is at it, meters: 0.01 ft. */
const AT_TOP_M = 0.01 * FOOT_M;

/** `behind` is what the check of time counts: less crest above the water than is asked, at some hour. */
export function workTone({ finishH, wetH, leastSpareM }: WorkStretch): WorkTone {
  if (leastSpareM === null) return "plain";
  if (leastSpareM < -SLACK_M) return "behind";
  if (wetH === null) return "before";
  return finishH === null || finishH > wetH - TIGHT_H ? "tight" : "before";
}

/** True where water comes to the top of what is built of a stretch before it is done. */
export function isOvertopped({ leastAheadM }: WorkStretch): boolean {
  return leastAheadM !== null && leastAheadM < AT_TOP_M;
}

/** The stretch of work at a chainage; null where nothing is built, and while nothing is calculated. */
export function workAt(time: LineTime | null, chainageM: number): WorkStretch | null {
  return (
    time?.stretches.find(({ fromM, toM }) => chainageM >= fromM && chainageM <= toM + 1e-6) ?? null
  );
}

/** How much of a stretch is done at an hour after the start, 0..1, as if its crew worked on it evenly. */
export function doneShare({ startH, finishH }: WorkStretch, hour: number): number {
  if (startH === null || hour <= startH) return 0;
  if (finishH === null) return 0;
  return finishH > startH ? Math.min(1, (hour - startH) / (finishH - startH)) : 1;
}

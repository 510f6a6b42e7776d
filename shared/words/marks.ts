import type { LoneValue, MarkChoice, MarkMeaning } from "../ground-marks.ts";
import type { VerticalUnit } from "../plan.ts";
import { formatCount, formatShare } from "../units.ts";

/** A height as the raster has it: `-99 ft`. */
export function rasterValue(value: number, unit: VerticalUnit): string {
  return `${value} ${{ metre: "m", foot: "ft", "us-survey-foot": "ft (US survey)" }[unit]}`;
}

/** What an answer makes of the cells that hold a value. */
export function markChoiceWords({ value, unit, side }: LoneValue, is: MarkMeaning): string {
  if (is === "hole") return "a gap in the data: no height is counted there";
  const end = side === "below" ? "lowest" : "highest";
  return `the ${end} ground is then ${rasterValue(value, unit)}`;
}

/** What the person said of a value. */
export function saidWords({ value, is }: MarkChoice, unit: VerticalUnit): string {
  const what = is === "hole" ? "missing data" : "ground";
  return `Cells with exactly ${rasterValue(value, unit)} are ${what}, as you said.`;
}

/** `437 cells (4.4 %) have`. */
export function cellWords({ cells, share, looked }: LoneValue): string {
  const part = share < 0.001 ? "less than 0.1 %" : formatShare(share);
  if (looked === "sample") return `about ${part} of the cells have`;
  const counted = cells === 1 ? "1 cell" : `${formatCount(cells)} cells`;
  const where = looked === "plan" ? " around the plan" : ` (${part})`;
  return `${counted}${where} ${cells === 1 ? "has" : "have"}`;
}

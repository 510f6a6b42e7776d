import type { Failure } from "../failure.ts";
import type { LoneValue, MarkChoice, MarkMeaning } from "../ground-marks.ts";
import type { VerticalUnit } from "../plan.ts";
import { formatCount, formatLength, formatShare, type UnitSystem } from "../units.ts";

/** A height as the raster has it: `-99 ft`. */
function rasterValue(value: number, unit: VerticalUnit): string {
  return `${value} ${{ metre: "m", foot: "ft", "us-survey-foot": "ft (US survey)" }[unit]}`;
}

/** The unit system that a raster's own unit belongs to. */
export function systemOf(unit: VerticalUnit): UnitSystem {
  return unit === "metre" ? "metric" : "us";
}

/** That a value may be missing data, with its figures, and that nothing is counted before someone says so. */
export function loneValueWords(lone: LoneValue, system: UnitSystem): Failure & { mark: LoneValue } {
  const { file, value, unit, side, gapM } = lone;
  return {
    code: "ground/mark-unknown",
    message: `"${file.name}": ${cellWords(lone)} exactly ${rasterValue(value, unit)}, ${formatLength(gapM, system)} ${side} all other heights.`,
    remedy: "Say whether it marks missing data or is ground. Nothing is counted before that.",
    mark: lone,
  };
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

function cellWords({ cells, share, looked }: LoneValue): string {
  const part = share < 0.001 ? "less than 0.1 %" : formatShare(share);
  if (looked === "sample") return `about ${part} of the cells have`;
  const counted = cells === 1 ? "1 cell" : `${formatCount(cells)} cells`;
  const where = looked === "plan" ? " around the plan" : ` (${part})`;
  return `${counted}${where} ${cells === 1 ? "has" : "have"}`;
}

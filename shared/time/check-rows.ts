import { DAY_S, HOUR_S } from "../constants.ts";
import { type Failure, failureOf } from "../failure.ts";
import type { ForecastPlace } from "../forecasts/types.ts";
import type { ForecastRow } from "../plan.ts";
import { SETTINGS } from "../settings.ts";
import { momentOf } from "./forecast-time.ts";

/** What is wrong with a forecast's rows, and in which row, counted from 0. */
export interface RowsComplaint {
  readonly index: number;
  readonly failure: Failure;
}

export const MOST_ROWS = 2000;
const LEAST_ROWS = 2;
/** Rows further apart than this, and than this many times the usual step, have a gap between them. */
const GAP_OVER_S = 12 * HOUR_S;
const GAP_OVER_STEPS = 2.5;
/** A day is the longest step that is drawn straight, whatever the others are. Source: judgement. */
const LONGEST_STEP_S = DAY_S;

/** Where a row stands, or its time or its level. */
export type RowPlace = (index: number, part: "time" | "level") => ForecastPlace;

/**
 * The first thing wrong with rows of a forecast; null when they can be used: 2 to 2,000 rows, real moments
 * that rise, all with an offset or all without, no gap (more than a day, or than the usual step by far), levels within reason, low <= likely <= high.
 */
export function rowsComplaint(
  rows: readonly ForecastRow[],
  levels: "stage" | "elevation",
  place: RowPlace,
): RowsComplaint | null {
  const steps: number[] = [];
  for (let index = 0; index < rows.length; index++) {
    const failure =
      momentComplaint(rows, index, place) ??
      levelComplaint(rows[index]!, levels, place(index, "level"));
    if (failure) return { index, failure };
    if (index > 0) steps.push(stepS(rows, index));
  }
  return countComplaint(rows) ?? gapComplaint(rows, steps, place);
}

function countComplaint(rows: readonly ForecastRow[]): RowsComplaint | null {
  const { length } = rows;
  if (length >= LEAST_ROWS && length <= MOST_ROWS) return null;
  const failure = failureOf("forecast/rows", { rows: length, least: LEAST_ROWS, most: MOST_ROWS });
  return { index: Math.max(0, length - 1), failure };
}

function momentComplaint(
  rows: readonly ForecastRow[],
  index: number,
  placeOf: RowPlace,
): Failure | null {
  const place = placeOf(index, "time");
  const moment = momentOf(rows[index]!.at);
  if (!moment) return failureOf("forecast/time", { place, how: "row", came: rows[index]!.at });
  const before = index > 0 ? momentOf(rows[index - 1]!.at) : null;
  if (!before) return null;
  if ((before.offsetMin === null) !== (moment.offsetMin === null)) {
    return failureOf("forecast/zone", { place, in: "row" });
  }
  if (moment.atS > before.atS) return null;
  const code = moment.atS === before.atS ? "forecast/duplicate" : "forecast/disorder";
  return failureOf(code, { place, before: placeOf(index - 1, "time") });
}

function levelComplaint(
  { levelM, lowM, highM }: ForecastRow,
  levels: "stage" | "elevation",
  place: ForecastPlace,
): Failure | null {
  const { lowSI: leastM, highSI: mostM } =
    SETTINGS[levels === "stage" ? "water.stageM" : "water.elevationM"];
  const cameM = [levelM, lowM ?? levelM, highM ?? levelM].find((m) => !(m >= leastM && m <= mostM));
  if (cameM !== undefined) {
    const range = { levels, leastM, mostM, mayBeElevation: mayBeElevation(levels, cameM) };
    return failureOf("forecast/level", { place, how: "outside", cameM, ...range });
  }
  if ((lowM ?? levelM) <= levelM && levelM <= (highM ?? levelM)) return null;
  return failureOf("forecast/band", { place, lowM, levelM, highM });
}

/** Whether a level too high for a stage may be an elevation: agencies send those as stages too. */
function mayBeElevation(levels: "stage" | "elevation", levelM: number): boolean {
  return levels === "stage" && levelM > 0 && levelM <= SETTINGS["water.elevationM"].highSI;
}

function gapComplaint(
  rows: readonly ForecastRow[],
  steps: readonly number[],
  place: RowPlace,
): RowsComplaint | null {
  const usualS = [...steps].sort((a, b) => a - b)[Math.floor((steps.length - 1) / 2)] ?? 0;
  const isLong = (step: number) =>
    step > LONGEST_STEP_S || (step > GAP_OVER_S && step > GAP_OVER_STEPS * usualS);
  const late = steps.findIndex(isLong);
  if (late < 0) return null;
  const index = late + 1;
  const failure = failureOf("forecast/gap", {
    ...{ place: place(index, "time"), before: place(late, "time") },
    ...{ gapS: steps[late]!, usualS, from: rows[late]!.at, to: rows[index]!.at },
  });
  return { index, failure };
}

function stepS(rows: readonly ForecastRow[], index: number): number {
  return momentOf(rows[index]!.at)!.atS - momentOf(rows[index - 1]!.at)!.atS;
}

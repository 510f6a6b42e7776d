import { DAY_S, HOUR_S } from "../constants.ts";
import type { Figure } from "../failure.ts";
import type { ForecastRow } from "../plan.ts";
import { SETTINGS } from "../settings.ts";
import { momentOf } from "./forecast-time.ts";

/** What is wrong with a forecast's rows, and in which row, counted from 0. */
export interface RowsComplaint {
  readonly index: number;
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
  /** As in a {@link Failure}. */
  readonly figures?: readonly Figure[];
}

export const MOST_ROWS = 2000;
const LEAST_ROWS = 2;
/** Rows further apart than this, and than this many times the usual step, have a gap between them. */
const GAP_OVER_S = 12 * HOUR_S;
const GAP_OVER_STEPS = 2.5;
/** A day is the longest step that is drawn straight, whatever the others are. Source: judgement. */
const LONGEST_STEP_S = DAY_S;

type Complaint = Omit<RowsComplaint, "index">;

/** Names a row in messages, or its time or its level: `line 7`, `line 7, column 18`. */
export type RowPlace = (index: number, part: "time" | "level") => string;

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
    const found =
      momentComplaint(rows, index, place) ??
      levelComplaint(rows[index]!, levels, place(index, "level"));
    if (found) return { index, ...found };
    if (index > 0) steps.push(stepS(rows, index));
  }
  return countComplaint(rows) ?? gapComplaint(rows, steps, place);
}

function countComplaint(rows: readonly ForecastRow[]): RowsComplaint | null {
  if (rows.length >= LEAST_ROWS && rows.length <= MOST_ROWS) return null;
  return {
    index: Math.max(0, rows.length - 1),
    code: "forecast/rows",
    message: `Expected ${LEAST_ROWS} to ${MOST_ROWS} rows of time and stage; came ${rows.length}.`,
    remedy: "Give the forecast from now to after its crest, one row for each time.",
  };
}

function momentComplaint(
  rows: readonly ForecastRow[],
  index: number,
  place: RowPlace,
): Complaint | null {
  const moment = momentOf(rows[index]!.at);
  if (!moment) {
    return {
      code: "forecast/time",
      message: `${capital(place(index, "time"))}: expected a time such as 2026-04-03 14:00 -05:00 or 2026-04-03T14:00-05:00; came "${rows[index]!.at.slice(0, 40)}".`,
      remedy: "Write year, month and day, the hour, and the offset from UTC.",
    };
  }
  const before = index > 0 ? momentOf(rows[index - 1]!.at) : null;
  if (!before) return null;
  if ((before.offsetMin === null) !== (moment.offsetMin === null)) {
    return {
      code: "forecast/zone",
      message: `${capital(place(index, "time"))}: expected every time with an offset from UTC, or none; this one and the row before it differ.`,
      remedy: "Write the offset on every row, such as -05:00.",
    };
  }
  if (moment.atS === before.atS) {
    return {
      code: "forecast/duplicate",
      message: `${capital(place(index, "time"))}: expected each time once; it has the same time as ${place(index - 1, "time")}.`,
      remedy: "Keep the newer of the two rows.",
    };
  }
  if (moment.atS > before.atS) return null;
  return {
    code: "forecast/disorder",
    message: `${capital(place(index, "time"))}: expected rows that go forward in time; it is earlier than ${place(index - 1, "time")}.`,
    remedy: "Put the rows in order, or take out the older forecast among them.",
  };
}

function levelComplaint(
  { levelM, lowM, highM }: ForecastRow,
  levels: "stage" | "elevation",
  place: string,
): Complaint | null {
  const { lowSI, highSI } = SETTINGS[levels === "stage" ? "water.stageM" : "water.elevationM"];
  const outside = [levelM, lowM ?? levelM, highM ?? levelM].find(
    (m) => !(m >= lowSI && m <= highSI),
  );
  if (outside !== undefined) {
    return {
      code: "forecast/level",
      message: `${capital(place)}: expected ${levels === "stage" ? "a stage" : "an elevation"} from {0} to {1}; came {2}.`,
      figures: [lowSI, highSI, outside].map(asLength),
      remedy: `${mayBeElevation(levels, outside) ? "If these are elevations, choose Elevation instead of Stage at the gauge. Otherwise check" : "Check"} the figure and its unit. A mark for a missing value is not a level.`,
    };
  }
  if ((lowM ?? levelM) <= levelM && levelM <= (highM ?? levelM)) return null;
  return {
    code: "forecast/band",
    message: `${capital(place)}: expected low, likely and high in rising order; came ${lowM === null ? "none" : "{0}"}, {1} and ${highM === null ? "none" : "{2}"}.`,
    figures: [lowM ?? levelM, levelM, highM ?? levelM].map(asLength),
    remedy: "Check which column is which: time, likely, low, high, or name them in a first line.",
  };
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
  const hours = (seconds: number) => Number((seconds / HOUR_S).toFixed(1));
  return {
    index: late + 1,
    code: "forecast/gap",
    message: `${capital(place(late + 1, "time"))}: ${hours(steps[late]!)} hours after ${place(late, "time")}, where ${usualS < steps[late]! ? `rows are usually ${hours(usualS)} hours apart` : "a day is the most between two rows"}. Nothing is made up for a gap.`,
    remedy: `Put in the missing rows between "${rows[late]!.at}" and "${rows[late + 1]!.at}".`,
  };
}

function asLength(m: number): Figure {
  return { as: "length", m };
}

function stepS(rows: readonly ForecastRow[], index: number): number {
  return momentOf(rows[index]!.at)!.atS - momentOf(rows[index - 1]!.at)!.atS;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

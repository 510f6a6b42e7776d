import { Refusal } from "../failure.ts";
import type { Forecast } from "../plan.ts";
import { MAX_NOTE } from "../plan-text.ts";
import { type RowsComplaint, rowsComplaint } from "../time/check-rows.ts";
import { momentText } from "../time/forecast-time.ts";
import type { ForecastNote, UnderstoodForecast } from "./types.ts";

/** A text as it was read, before its rows are looked at together. */
export type Unchecked = UnderstoodForecast;

/** Too few rows, and a gap, keep a forecast out of a plan; what was understood can be shown all the same. */
const ONLY_FOR_A_PLAN = new Set(["forecast/rows", "forecast/gap"]);
const MANY = 2000;

/**
 * Rows that are real and rise; that there are too few of them for a plan, or a gap in them, is a note.
 * @throws Refusal as of `rowsComplaint`, naming line and column
 */
export function checkedForecast(unchecked: Unchecked): UnderstoodForecast {
  const read = withClockChange(unchecked);
  const wrong = complaintOf(read);
  if (!wrong) return read;
  const { code } = wrong.failure;
  if (!ONLY_FOR_A_PLAN.has(code) || read.rows.length > MANY) throw new Refusal(wrong.failure);
  const note: ForecastNote =
    code === "forecast/gap"
      ? { kind: "gap", line: read.rows[wrong.index]!.place.line }
      : { kind: "too-few", rows: read.rows.length };
  return { ...read, notes: [...read.notes, note] };
}

function withClockChange(read: Unchecked): Unchecked {
  const offsets = new Set(read.rows.map(({ moment }) => moment.offsetMin));
  if (offsets.size < 2) return read;
  return { ...read, notes: [...read.notes, { kind: "clock-change" }] };
}

/** The forecast for a plan. @throws Refusal where its rows cannot be used */
export function planForecast(read: UnderstoodForecast, note: string): Forecast {
  const wrong = complaintOf(read);
  if (wrong) throw new Refusal(wrong.failure);
  return { levels: read.levels, rows: rowsOf(read), note: note.slice(0, MAX_NOTE) };
}

function complaintOf(read: UnderstoodForecast): RowsComplaint | null {
  return rowsComplaint(rowsOf(read), read.levels, (index, part) => {
    const { place, timePlace } = read.rows[index]!;
    return part === "time" ? (timePlace ?? place) : place;
  });
}

function rowsOf({ rows }: UnderstoodForecast): Forecast["rows"] {
  return rows.map(({ moment, levelM, lowM, highM }) => ({
    ...{ at: momentText(moment), levelM, lowM, highM },
  }));
}

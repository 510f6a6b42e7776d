import * as v from "valibot";
import { MOST_PAST } from "../forecasts/history.ts";
import type { Forecast, PastForecast } from "../plan.ts";
import { fields, oneOf, quantity, text } from "../plan-makers.ts";
import { MAX_NOTE, shown } from "../plan-text.ts";
import { failureWords } from "../words/failure.ts";
import { MOST_ROWS, rowsComplaint } from "./check-rows.ts";
import { momentOf } from "./forecast-time.ts";

const level = (words: string) =>
  v.custom<number>(
    (value) => typeof value === "number" && Number.isFinite(value),
    (issue) => `Expected ${words} in meters; came ${shown(issue.input)}.`,
  );

const row = fields("a row of the forecast (time.forecast.rows)", {
  at: text("the time of a row (time.forecast)", 1, 40),
  levelM: level("the level of a row (time.forecast)"),
  lowM: v.nullable(level("the low level of a row (time.forecast)")),
  highM: v.nullable(level("the high level of a row (time.forecast)")),
});

const rowOf = (index: number) => ({ row: index + 1 });

const entries = {
  levels: oneOf("the forecast's levels (time.forecast.levels)", ["stage", "elevation"]),
  rows: v.pipe(
    v.array(row, (issue) => `Expected time.forecast.rows as a list; came ${shown(issue.input)}.`),
    v.check(
      (rows) => rows.length <= MOST_ROWS,
      (issue) => `Expected at most ${MOST_ROWS} rows in time.forecast; came ${issue.input.length}.`,
    ),
  ),
  note: text("the note of the forecast (time.forecast.note)", 0, MAX_NOTE),
};

/** Rows that can be used together, for a forecast with whatever stands beside its rows; what is wrong is said in meters, as of all in a plan file. */
function usable<T extends Forecast>() {
  return v.check<T, (issue: v.CheckIssue<T>) => string>(
    ({ rows, levels }) => rowsComplaint(rows, levels, rowOf) === null,
    ({ input: { rows, levels } }) =>
      failureWords(rowsComplaint(rows, levels, rowOf)!.failure, "metric").message,
  );
}

export const FORECAST = v.nullable(
  v.pipe(fields("the forecast (time.forecast)", entries), usable()),
) as v.GenericSchema<unknown, Forecast | null>;

export const PAST_FORECASTS = v.optional(
  v.pipe(
    v.array(
      v.pipe(
        fields("an earlier forecast (time.pastForecasts)", {
          ...entries,
          replacedAtS: quantity("when it was replaced (replacedAtS)", 0, 1e11, "seconds"),
        }),
        usable(),
      ),
      (issue) => `Expected time.pastForecasts as a list; came ${shown(issue.input)}.`,
    ),
    v.check(
      (past) => past.length <= MOST_PAST,
      (issue) => `Expected at most ${MOST_PAST} time.pastForecasts; came ${issue.input.length}.`,
    ),
  ),
) as v.GenericSchema<unknown, readonly PastForecast[] | undefined>;

export const START_AT = v.nullable(
  v.custom<string>(
    (value) => typeof value === "string" && momentOf(value) !== null,
    (issue) =>
      `Expected the start of work (time.startAt) as a time such as 2026-04-03T14:00-05:00; came ${shown(issue.input)}.`,
  ),
);

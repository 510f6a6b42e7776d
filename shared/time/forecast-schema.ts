import * as v from "valibot";
import { MOST_PAST } from "../forecasts/history.ts";
import type { Forecast, PastForecast } from "../plan.ts";
import { fields, oneOf, quantity, text } from "../plan-makers.ts";
import { MAX_NOTE } from "../plan-text.ts";
import { failureWords } from "../words/failure.ts";
import {
  inMetersWords,
  momentWanted,
  noListWords,
  tooManyWords,
} from "../words/refusals/plan-values.ts";
import { MOST_ROWS, rowsComplaint } from "./check-rows.ts";
import { momentOf } from "./forecast-time.ts";

const level = (words: string) =>
  v.custom<number>(
    (value) => typeof value === "number" && Number.isFinite(value),
    ({ input }) => inMetersWords(words, input),
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
    v.array(row, ({ input }) => noListWords("time.forecast.rows", input)),
    v.check(
      (rows) => rows.length <= MOST_ROWS,
      ({ input }) => tooManyWords(MOST_ROWS, "rows in time.forecast", input.length),
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
      ({ input }) => noListWords("time.pastForecasts", input),
    ),
    v.check(
      (past) => past.length <= MOST_PAST,
      ({ input }) => tooManyWords(MOST_PAST, "time.pastForecasts", input.length),
    ),
  ),
) as v.GenericSchema<unknown, readonly PastForecast[] | undefined>;

export const START_AT = v.nullable(
  v.custom<string>(
    (value) => typeof value === "string" && momentOf(value) !== null,
    ({ input }) => momentWanted("the start of work (time.startAt)", input),
  ),
);

import * as v from "valibot";
import type { Plan } from "../plan.ts";
import { fields, quantity, text } from "../plan-makers.ts";
import { lonLat } from "../plan-schema.ts";
import { MAX_NAME } from "../plan-text.ts";
import { noListWords, tooManyWords } from "../words/refusals/plan-values.ts";

/** Most readings of the ground that a plan takes. */
export const MOST_READINGS = 2000;
/** Readings of the ground lie within these, metres in the terrain's datum. */
export const GROUND_RANGE_M = { least: -500, most: 9000 } as const;
/** Longest rod there is a use for, metres. Source: judgement; rods of 25 ft are sold. */
export const LONGEST_ROD_M = 10;

const elevation = (words: string) =>
  quantity(words, GROUND_RANGE_M.least, GROUND_RANGE_M.most, "m");

const READING = fields("a ground reading", {
  at: lonLat,
  groundM: elevation("the ground read (groundM)"),
});

/** Benchmark, backsight and ground read in the field, as a plan holds them. */
export const SURVEY = v.optional(
  v.nullable(
    fields("the survey (survey)", {
      benchmark: v.nullable(
        fields("the benchmark (survey.benchmark)", {
          name: text("the benchmark's name (survey.benchmark.name)", 0, MAX_NAME),
          elevationM: elevation("the benchmark's elevation (survey.benchmark.elevationM)"),
          at: v.nullable(lonLat),
        }),
      ),
      backsightM: v.nullable(quantity("the backsight (survey.backsightM)", 0, LONGEST_ROD_M, "m")),
      readings: v.pipe(
        v.array(READING, ({ input }) =>
          noListWords("the ground readings (survey.readings)", input),
        ),
        v.maxLength(MOST_READINGS, ({ received }) =>
          tooManyWords(MOST_READINGS, "ground readings", received),
        ),
      ),
    }),
  ),
) as v.GenericSchema<unknown, Plan["survey"]>;

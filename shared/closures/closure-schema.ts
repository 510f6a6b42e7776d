import * as v from "valibot";
import type { Closure } from "../plan.ts";
import { fields, quantity } from "../plan-makers.ts";
import { momentOf } from "../time/forecast-time.ts";
import {
  CLOSURES_APART,
  momentWanted,
  noListWords,
  tooManyWords,
} from "../words/refusals/plan-values.ts";

/** Longest chainage of a closure's end, metres, and most people kept for one: they only keep out slips. */
const MOST_M = 20_000;
const MOST_PEOPLE = 10_000;
const MOST_CLOSURES = 20;

const at = v.nullable(
  v.custom<string>(
    (value) => typeof value === "string" && momentOf(value) !== null,
    ({ input }) => momentWanted("the hour to close (closeBy.at)", input),
  ),
);

const CLOSURE = fields("a closure", {
  fromM: quantity("the start of the closure (fromM)", 0, MOST_M, "m"),
  toM: quantity("the end of the closure (toM)", 0, MOST_M, "m"),
  closeBy: fields("when the closure is closed (closeBy)", {
    stageM: v.nullable(quantity("the stage to close at (closeBy.stageM)", -100, 200, "m")),
    at,
  }),
  people: v.nullable(quantity("the people kept for the closure (people)", 1, MOST_PEOPLE)),
});

/** Stretches of a line left open, in order along it, none over another; left out where there is none. */
export const CLOSURES = v.optional(
  v.pipe(
    v.array(CLOSURE, ({ input }) => noListWords("the closures", input)),
    v.maxLength(MOST_CLOSURES, ({ received }) =>
      tooManyWords(MOST_CLOSURES, "closures of a line", received),
    ),
    v.check(
      (list) => list.every(({ fromM, toM }, k) => fromM < toM && fromM > (list[k - 1]?.toM ?? -1)),
      CLOSURES_APART,
    ),
  ),
) as v.GenericSchema<unknown, readonly Closure[] | undefined>;

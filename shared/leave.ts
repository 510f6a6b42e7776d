import * as v from "valibot";
import type { LeaveLevel, Plan, Water } from "./plan.ts";
import { fields, oneOf, quantity, text } from "./plan-makers.ts";
import { MAX_NOTE } from "./plan-text.ts";
import { momentOf } from "./time/forecast-time.ts";
import { momentWanted, NO_LEAVE_LEVEL } from "./words/refusals/plan-values.ts";

/** A leave level as a plan holds it: a level, an hour, or both. */
export const LEAVE = v.optional(
  v.nullable(
    v.pipe(
      fields("the leave stage (leave)", {
        by: oneOf("what the leave level is (leave.by)", ["stage", "elevation"]),
        levelM: v.nullable(quantity("the leave level (leave.levelM)", -500, 9000, "m")),
        at: v.nullable(
          v.custom<string>(
            (value) => typeof value === "string" && momentOf(value) !== null,
            ({ input }) => momentWanted("the hour to leave (leave.at)", input),
          ),
        ),
        note: text("what sets the leave stage (leave.note)", 0, MAX_NOTE),
      }),
      v.check(({ levelM, at }) => levelM !== null || at !== null, NO_LEAVE_LEVEL),
    ),
  ),
) as v.GenericSchema<unknown, Plan["leave"]>;

/** Elevation at the gauge at which people leave, metres; null where none is set or it counts from an unknown zero. */
export function leaveElevationM(leave: LeaveLevel, water: Water): number | null {
  const { by, levelM } = leave;
  if (levelM === null || by === "elevation") return levelM;
  if (water.by !== "stage") return null;
  return water.gaugeZeroM + levelM + (water.datumOffsetM ?? 0);
}

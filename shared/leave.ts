import * as v from "valibot";
import type { LeaveLevel, Plan, Water } from "./plan.ts";
import { fields, oneOf, quantity, text } from "./plan-makers.ts";
import { MAX_NOTE, shown } from "./plan-text.ts";
import { momentOf } from "./time/forecast-time.ts";

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
            (issue) =>
              `Expected the hour to leave (leave.at) as a time such as 2026-04-08T11:00-05:00; came ${shown(issue.input)}.`,
          ),
        ),
        note: text("what sets the leave stage (leave.note)", 0, MAX_NOTE),
      }),
      v.check(
        ({ levelM, at }) => levelM !== null || at !== null,
        "Expected a stage, an elevation or an hour to leave (leave.levelM, leave.at); came none.",
      ),
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

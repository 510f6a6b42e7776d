import { leaveElevationM } from "../leave.ts";
import type { Plan, Water } from "../plan.ts";
import { momentOf, momentText } from "../time/forecast-time.ts";
import { firstAbove, hydrographOf } from "../time/hydrograph.ts";

/** When an exit road first floods, and how that compares with the level or hour people leave at. */
export interface RoadFlood {
  /** Stage at the gauge, metres; null where the plan gives its water by elevation. */
  readonly stageM: number | null;
  /** `2026-04-08T11:00-05:00` by the likely forecast; null without one, and where it never passes that level. */
  readonly at: string | null;
  /** Whether people leave by then; null where that is not set, or cannot be compared. */
  readonly leavesBefore: boolean | null;
}

const SAME_M = 0.005;

/** @param gaugeM water at the gauge above which the road floods, metres */
export function roadFlood(plan: Plan, gaugeM: number): RoadFlood {
  const at = floodHour(plan, gaugeM);
  return { stageM: stageOf(plan.water, gaugeM), at, leavesBefore: leavesBefore(plan, gaugeM, at) };
}

function stageOf({ by, gaugeZeroM, datumOffsetM }: Water, gaugeM: number): number | null {
  return by === "stage" ? gaugeM - gaugeZeroM - (datumOffsetM ?? 0) : null;
}

function floodHour(plan: Plan, gaugeM: number): string | null {
  const forecast = plan.time?.forecast;
  const likely = forecast && hydrographOf(plan, forecast, "likely");
  if (!likely) return null;
  const atS = firstAbove(likely, likely.atS[0]!)(gaugeM);
  const { offsetMin } = momentOf(forecast.rows[0]!.at)!;
  return atS === null ? null : momentText({ atS: Math.floor(atS / 60) * 60, offsetMin });
}

/** A level and an hour are both kept to: the earlier one counts. */
function leavesBefore(plan: Plan, gaugeM: number, at: string | null): boolean | null {
  const { leave, water } = plan;
  if (!leave) return null;
  const leaveM = leaveElevationM(leave, water);
  const byLevel = leaveM === null ? null : leaveM <= gaugeM + SAME_M;
  const byHour =
    leave.at === null || at === null ? null : momentOf(leave.at)!.atS <= momentOf(at)!.atS;
  return byLevel === true || byHour === true ? true : (byLevel ?? byHour);
}

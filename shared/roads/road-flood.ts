import { leaveElevationM } from "../leave.ts";
import type { Plan, Water } from "../plan.ts";
import { momentOf, momentText } from "../time/forecast-time.ts";
import { firstAbove, type Hydrograph, hydrographOf } from "../time/hydrograph.ts";

/** When an exit road first floods, and how that compares with the level or hour people leave at. */
export interface RoadFlood {
  /** Stage at the gauge, metres; null where the plan gives its water by elevation. */
  readonly stageM: number | null;
  /** `2026-04-08T11:00-05:00` by the likely forecast; null without one, and where it never passes that level. */
  readonly at: string | null;
  /** True where the likely forecast begins above that level: the road is under water before anyone leaves by it. */
  readonly fromStart: boolean;
  /** Whether people leave by then; null where that is not set, or cannot be compared. */
  readonly leavesBefore: boolean | null;
}

const SAME_M = 0.005;

/** @param gaugeM water at the gauge above which the road floods, metres */
export function roadFlood(plan: Plan, gaugeM: number): RoadFlood {
  const likely = likelyOf(plan);
  const at = likely && floodHour(plan, likely, gaugeM);
  const fromStart = likely !== null && likely.levelM[0]! > gaugeM;
  const stageM = stageOf(plan.water, gaugeM);
  return { stageM, at, fromStart, leavesBefore: leavesBefore(plan, gaugeM, at) };
}

function stageOf({ by, gaugeZeroM, datumOffsetM }: Water, gaugeM: number): number | null {
  return by === "stage" ? gaugeM - gaugeZeroM - (datumOffsetM ?? 0) : null;
}

function likelyOf(plan: Plan): Hydrograph | null {
  const forecast = plan.time?.forecast;
  return forecast ? hydrographOf(plan, forecast, "likely") : null;
}

function floodHour(plan: Plan, likely: Hydrograph, gaugeM: number): string | null {
  const atS = firstAbove(likely, likely.atS[0]!)(gaugeM);
  const { offsetMin } = momentOf(plan.time!.forecast!.rows[0]!.at)!;
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

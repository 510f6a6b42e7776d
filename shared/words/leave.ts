import type { LeaveLevel, Plan } from "../plan.ts";
import { momentOf } from "../time/forecast-time.ts";
import { formatElevation, formatLength, type UnitSystem } from "../units.ts";
import { momentWords } from "./clock.ts";

/** When people leave: `Leave at stage 30.0 ft, Wed 11:00`; `Leave stage not set`. */
export function leaveWords({ leave }: Pick<Plan, "leave">, system: UnitSystem): string {
  if (!leave) return LEAVE_NOT_SET;
  return `Leave ${leave.levelM === null ? "" : "at "}${leaveLevelWords(leave, system, false)}`;
}

export const LEAVE_NOT_SET = "Leave stage not set";

/** `stage 30.0 ft, Wed 11:00`; with day and month on paper and in files. */
export function leaveLevelWords(leave: LeaveLevel, system: UnitSystem, long: boolean): string {
  const { by, levelM, at } = leave;
  const moment = at === null ? null : momentOf(at);
  const level =
    levelM !== null &&
    (by === "stage"
      ? `stage ${formatLength(levelM, system)}`
      : `water ${formatElevation(levelM, system)}`);
  return [level, moment && momentWords(moment, long, system)].filter((words) => words).join(", ");
}

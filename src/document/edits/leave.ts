import type { LeaveLevel } from "../../../shared/plan.ts";
import { edit } from "./alternatives.ts";

/** Sets the level or hour at which people leave; null takes it back. @returns whether the plan took it */
export function setLeave(leave: LeaveLevel | null): boolean {
  return edit({
    note: leave ? "Set the leave stage" : "Take the leave stage back",
    change: (now) => ({ ...now, leave }),
  });
}

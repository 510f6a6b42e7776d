import { FOOT_M, SURVEY_FOOT_M } from "./constants.ts";
import type { VerticalUnit } from "./plan.ts";

/** Metres in one unit of height. */
export function metresPer(unit: VerticalUnit): number {
  if (unit === "metre") return 1;
  return unit === "foot" ? FOOT_M : SURVEY_FOOT_M;
}

import type { Failure } from "../failure.ts";

/** In the place of a verdict while nobody has given the water's level. */
export const NOT_KNOWN_NO_STAGE = "not known: no stage";

/** That nothing is counted before a stage or an elevation is typed. */
export function noStage(): Failure {
  return {
    code: "plan/no-water",
    message: "Not known: no stage.",
    remedy: "Type the forecast stage and the gauge zero, or a water-surface elevation, in Water.",
  };
}

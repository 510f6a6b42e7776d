import type { Plan } from "../../../shared/plan.ts";
import { waterElevationAtGauge } from "../../../shared/stage.ts";
import type { UnitSystem } from "../../../shared/units.ts";
import { hourWords } from "../../../shared/words/clock.ts";
import { namedLevel } from "../../../shared/words/time.ts";

/** The water at a moment of the forecast, as the profile draws it. */
export interface ProfileMoment {
  /** Hours after the start of work. */
  readonly hour: number;
  /** Above the water that the line is sized for, metres; below 0 before the crest. */
  readonly riseM: number;
  /** "Wed 11:00: stage 27.8 ft" */
  readonly words: string;
}

/**
 * @param levelM water at the gauge at that moment, metres
 * @param startAt start of work as in a forecast row
 */
export function profileMoment(
  hour: number,
  levelM: number,
  startAt: string | null,
  plan: Plan,
  system: UnitSystem,
): ProfileMoment {
  const words = `${hourWords(startAt, hour, system, { toMin: 1 })}: ${namedLevel(plan, levelM, system)}`;
  return { hour, riseM: levelM - waterElevationAtGauge(plan.water), words };
}

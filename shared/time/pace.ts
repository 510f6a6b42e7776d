import type { Practice, TimeSettings } from "../plan.ts";
import type { Crew } from "./types.ts";

/**
 * What a crew gets done. Each bag is filled by some and laid by others at 40 to 60 an hour, so the smaller
 * party sets the pace; the slow pace is never faster than the whole job as measured.
 * Source: THW-E (40 to 60 bags an hour, filling or placing); derived from ERDC (whole job, 19).
 */
export function crewPace(
  { taskRateLow, taskRateHigh, jobRate }: Practice,
  time: TimeSettings,
  people: number,
): Crew {
  const fillers = people * time.fillShare;
  const layers = people - fillers;
  const party = Math.min(fillers, layers);
  const slowBagsPerH = Math.min(party * taskRateLow, people * jobRate);
  return {
    people,
    fillers,
    layers,
    crews: time.crews,
    slowBagsPerH,
    fastBagsPerH: Math.max(slowBagsPerH, party * taskRateHigh),
  };
}

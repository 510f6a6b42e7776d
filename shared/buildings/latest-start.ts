import { HOUR_S } from "../constants.ts";
import { timeOf } from "../defaults.ts";
import type { LonLat, Plan } from "../plan.ts";
import { daylightFrom } from "../time/daylight.ts";
import { clockHour } from "../time/forecast-time.ts";
import { crewPace } from "../time/pace.ts";
import { startOfWork } from "../time/start.ts";
import { workClock } from "../time/work-hours.ts";

/** Starts are tried so far apart, hours; the last of them then in quarters. */
const STEP_H = 1;
const FINE_STEPS = 4;
const LONGEST_H = 14 * 24;

/** One line to be built. */
interface LineWork {
  /** Bags to fill and lay, spares among them. */
  readonly bags: number;
  /** When it must be closed, seconds since 1970 UTC. */
  readonly closedByS: number;
  readonly mostOnOneLine: number;
  /** Where it is, for its daylight. */
  readonly at: LonLat;
}

/**
 * The latest start, to a quarter of an hour and never after it, from which a line is closed in time at the plan's
 * slow pace: setting up, shifts and nights as the plan has them, all its people on the line but no more than fit.
 * Null where people or shifts are not entered; -Infinity where no start within two weeks before is early enough.
 */
export function latestStart(plan: Plan, work: LineWork): number | null {
  const time = timeOf(plan);
  const { people } = plan.practice;
  const { shifts, setUpH } = time;
  if (people === null || shifts === null) return null;
  const crew = crewPace(plan.practice, time, Math.min(people, work.mostOnOneLine));
  const workedH = setUpH + work.bags / crew.slowBagsPerH;
  const offsetMin = startOfWork(time)?.offsetMin ?? null;
  const isInTime = (beforeH: number) => {
    const start = { atS: work.closedByS - beforeH * HOUR_S, offsetMin };
    const clock = workClock({ ...time, shifts }, clockHour(start), daylightFrom(start, work.at));
    return clock(workedH) <= beforeH;
  };
  for (let beforeH = Math.ceil(workedH); beforeH <= LONGEST_H; beforeH += STEP_H) {
    if (!isInTime(beforeH)) continue;
    for (let quarter = FINE_STEPS - 1; quarter > 0; quarter--) {
      const laterH = beforeH - (quarter * STEP_H) / FINE_STEPS;
      if (isInTime(laterH)) return work.closedByS - laterH * HOUR_S;
    }
    return work.closedByS - beforeH * HOUR_S;
  }
  return Number.NEGATIVE_INFINITY;
}

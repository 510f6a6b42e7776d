import { DAY_H } from "../constants.ts";
import type { TimeSettings } from "../plan.ts";
import type { DaylightOf } from "./daylight.ts";

/** What the clock of the work is made from; the shifts are those that someone has entered. */
export type WorkHours = Pick<TimeSettings, "shiftH" | "lit" | "dayFromH" | "dayToH"> & {
  readonly shifts: number;
};

const LONGEST_DAYS = 366;

/**
 * Hours from the start of work after which so many hours have been worked. Lit work goes on for all its
 * shifts from the start, then again every 24 hours; unlit work keeps to the daylight of each day and to the
 * hours stated for it, for no longer than its shifts. Infinity beyond a year.
 * @param startHour hour of the day at which work starts
 */
export function workClock(
  hours: WorkHours,
  startHour: number,
  daylight: DaylightOf,
): (workedH: number) => number {
  const perDayH = Math.min(DAY_H, hours.shifts * hours.shiftH);
  const windows: (readonly [number, number])[] = [];
  const windowOn = (day: number) =>
    (windows[day] ??= windowOf(hours, startHour, perDayH, day, daylight));
  return (workedH) => {
    let leftH = workedH;
    for (let day = 0; day < LONGEST_DAYS; day++) {
      const [fromH, toH] = windowOn(day);
      const openH = Math.max(0, toH - fromH);
      if (leftH <= openH && openH > 0) return fromH + leftH;
      leftH -= openH;
    }
    return Number.POSITIVE_INFINITY;
  };
}

const HALVINGS = 40;

/** The most hours that can be worked until an hour of the clock, to a second; Infinity where that never comes. */
export function workedUntil(clock: (workedH: number) => number, hour: number): number {
  if (hour === Number.POSITIVE_INFINITY) return hour;
  let [low, high] = [0, Math.max(0, hour)];
  if (clock(high) <= hour) return high;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    if (clock(middle) <= hour) low = middle;
    else high = middle;
  }
  return low;
}

function windowOf(
  { lit, dayFromH, dayToH }: WorkHours,
  startHour: number,
  perDayH: number,
  day: number,
  daylight: DaylightOf,
): readonly [number, number] {
  if (lit) return [DAY_H * day, DAY_H * day + perDayH];
  const [sunriseH, sunsetH] = daylight(day);
  const midnightH = DAY_H * day - startHour;
  const fromH = Math.max(0, sunriseH, midnightH + (dayFromH ?? 0));
  return [fromH, Math.min(sunsetH, midnightH + (dayToH ?? DAY_H), fromH + perDayH)];
}

import type { TimeSettings } from "../plan.ts";

const DAY_H = 24;
const LONGEST_DAYS = 366;

/**
 * Hours from the start of work after which so many hours have been worked. Lit work goes on for all its
 * shifts from the start, then again every 24 hours; unlit work keeps to the daylight of each day, for no
 * longer than its shifts. Infinity beyond a year.
 * @param startHour hour of the day at which work starts
 */
export function workClock(time: TimeSettings, startHour: number): (workedH: number) => number {
  const perDayH = Math.min(DAY_H, time.shifts * time.shiftH);
  return (workedH) => {
    let leftH = workedH;
    for (let day = 0; day < LONGEST_DAYS; day++) {
      const [fromH, toH] = windowOf(time, startHour, perDayH, day);
      const openH = Math.max(0, toH - fromH);
      if (leftH <= openH && openH > 0) return fromH + leftH;
      leftH -= openH;
    }
    return Number.POSITIVE_INFINITY;
  };
}

function windowOf(
  { lit, dayFromH, dayToH }: TimeSettings,
  startHour: number,
  perDayH: number,
  day: number,
): [number, number] {
  if (lit) return [DAY_H * day, DAY_H * day + perDayH];
  const fromH = Math.max(0, DAY_H * day + dayFromH - startHour);
  return [fromH, Math.min(DAY_H * day + dayToH - startHour, fromH + perDayH)];
}

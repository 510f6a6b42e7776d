import { getTimes } from "suncalc";
import { DAY_H, HOUR_S } from "../constants.ts";
import type { LonLat } from "../plan.ts";
import { clockHour, type Moment } from "./forecast-time.ts";

/** From when to when, hours from the start of work; equal ends where there is no daylight. */
export type DaylightOf = (day: number) => readonly [fromH: number, toH: number];

const ZONE_DEG = 15;

/**
 * Daylight at a place on each day counted from that of the start of work (0): from the upper edge of the sun on
 * the horizon to the same in the evening. Where the clock states no offset from UTC it is taken as the zone of
 * the longitude, by standard or daylight saving time, whichever leaves less of the day.
 * Source: Meeus, Astronomical Algorithms, as suncalc has it.
 */
export function daylightFrom(start: Moment, [lon, lat]: LonLat): DaylightOf {
  const isClockKnown = start.offsetMin !== null;
  const utcS = start.atS - (isClockKnown ? 0 : Math.round(lon / ZONE_DEG) * HOUR_S);
  const startHour = clockHour(start);
  const unsureH = isClockKnown ? 0 : 1;
  return (day) => {
    const midnightH = DAY_H * day - startHour;
    const noon = new Date((utcS + (midnightH + DAY_H / 2) * HOUR_S) * 1000);
    const { sunrise, sunset, alwaysUp, alwaysDown } = getTimes(noon, lat, lon);
    if (alwaysUp) return [midnightH, midnightH + DAY_H];
    if (alwaysDown || !sunrise || !sunset) return [midnightH, midnightH];
    const hourOf = (at: Date) => (at.getTime() / 1000 - utcS) / HOUR_S;
    return [hourOf(sunrise) + unsureH, hourOf(sunset)];
  };
}

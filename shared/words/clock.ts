import { HOUR_S } from "../constants.ts";
import { type Moment, momentOf, offsetText } from "../time/forecast-time.ts";
import type { RiverClock } from "../time/river-clock.ts";
import { formatHours, type UnitSystem } from "../units.ts";

/** How an hour of the work is written. */
export interface ClockForm {
  /** With day and month: `Wed Apr 8, 11:00`. */
  readonly long?: boolean;
  /** A date has no weekday: `Apr 15, 11:00`, for the cells of a table. */
  readonly isNarrow?: boolean;
  /** Rounded to so many minutes; a schedule is no better than a quarter of an hour. */
  readonly toMin?: number;
  /** To the next such moment, or to the one before; to the nearest where left out. */
  readonly rounded?: "up" | "down";
}

const SLACK = 1e-6;

/** Further from the start than this a weekday alone could be another week's. */
const SAME_WEEK_S = 6 * 24 * HOUR_S;

/**
 * An hour of the work on the clock of its start: `Wed 11:00`, or with the date where it is a week off. Counted
 * from the start, `28.0 h after the start`, where no start is known.
 * @param startAt as in a forecast row
 */
export function hourWords(
  startAt: string | null,
  hours: number,
  system: UnitSystem,
  form: ClockForm = {},
): string {
  const start = startAt === null ? null : momentOf(startAt);
  if (!start) return `${formatHours(hours)} after the start`;
  const far = Math.abs(hours) * HOUR_S > SAME_WEEK_S;
  const { long = far } = form;
  const atS = roundedS(start.atS + hours * HOUR_S, form);
  const moment = { atS, offsetMin: start.offsetMin };
  return long && form.isNarrow ? dateWords(moment, system) : momentWords(moment, long, system);
}

/** The hour of the work that {@link hourWords} shows, on the clock of its start; as it is without one. */
export function shownHour(startAt: string | null, hours: number, form: ClockForm): number {
  const start = startAt === null ? null : momentOf(startAt);
  return start ? (roundedS(start.atS + hours * HOUR_S, form) - start.atS) / HOUR_S : hours;
}

function roundedS(atS: number, { toMin = 15, rounded }: ClockForm): number {
  const steps = atS / (60 * toMin);
  if (rounded === "up") return Math.ceil(steps - SLACK) * 60 * toMin;
  return (rounded === "down" ? Math.floor(steps + SLACK) : Math.round(steps)) * 60 * toMin;
}

/** A moment on its own clock: `Wed 11:00`, long `Wed Apr 8, 11:00` or `Wed 8 Apr, 11:00`. */
export function momentWords(moment: Moment, long: boolean, system: UnitSystem): string {
  const utc = clockText(moment);
  return `${utc.slice(0, 3)} ${long ? dateWords(moment, system) : utc.slice(17, 22)}`;
}

/** `Apr 8, 11:00` or `8 Apr, 11:00`. */
function dateWords(moment: Moment, system: UnitSystem): string {
  const utc = clockText(moment);
  const [day, month] = [Number(utc.slice(5, 7)), utc.slice(8, 11)];
  return `${system === "us" ? `${month} ${day}` : `${day} ${month}`}, ${utc.slice(17, 22)}`;
}

/** When a forecast ends, on the clock of the work: `Mon Apr 6, 19:00`. */
export function endWords({ start, toH }: RiverClock, system: UnitSystem): string {
  return momentWords({ ...start, atS: start.atS + toH * HOUR_S }, true, system);
}

/** The day of a moment on its own clock: `Wed 8`. */
export function dayWords(moment: Moment): string {
  const utc = clockText(moment);
  return `${utc.slice(0, 3)} ${Number(utc.slice(5, 7))}`;
}

/** `UTC-05:00`; null where none is stated. */
export function zoneWords({ offsetMin }: Moment): string | null {
  if (offsetMin === null) return null;
  return `UTC${offsetText(offsetMin)}`;
}

/** `Wed, 08 Apr 2026 11:00:00 GMT` as the clock there shows it. */
function clockText({ atS, offsetMin }: Moment): string {
  return new Date((atS + 60 * (offsetMin ?? 0)) * 1000).toUTCString();
}

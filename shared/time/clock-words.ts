import { formatHours } from "../units.ts";
import { type Moment, momentOf, momentText } from "./forecast-time.ts";

/** How an hour of the work is written. */
export interface ClockForm {
  /** With day and month: `Wed 8 Apr 11:00`. */
  readonly long?: boolean;
  /** Rounded to so many minutes; a schedule is no better than a quarter of an hour. */
  readonly toMin?: number;
}

const HOUR_S = 3600;
const DAY_S = 24 * HOUR_S;
/** Further from the start than this a weekday alone could be another week's. */
const SAME_WEEK_S = 6 * DAY_S;

/**
 * An hour of the work on the clock of its start: `Wed 11:00`, or with the date where it is a week off. Counted
 * from the start, `28.0 h after the start`, where no start is known.
 * @param startAt as in a forecast row
 */
export function hourWords(startAt: string | null, hours: number, form: ClockForm = {}): string {
  const start = startAt === null ? null : momentOf(startAt);
  if (!start) return `${formatHours(hours)} after the start`;
  const far = Math.abs(hours) * HOUR_S > SAME_WEEK_S;
  const { toMin = 15, long = far } = form;
  const steps = Math.round((start.atS + hours * HOUR_S) / (60 * toMin));
  return momentWords({ atS: steps * 60 * toMin, offsetMin: start.offsetMin }, long);
}

/** An hour of the work as a file has it, to the quarter hour: `2026-04-08T11:00-05:00`. */
export function hourText(startAt: string | null, hours: number): string {
  const start = startAt === null ? null : momentOf(startAt);
  if (!start) return `${formatHours(hours)} after the start`;
  const quarter = HOUR_S / 4;
  const atS = Math.round((start.atS + hours * HOUR_S) / quarter) * quarter;
  return momentText({ atS, offsetMin: start.offsetMin });
}

/** A moment on its own clock: `Wed 11:00`, long `Wed 8 Apr 11:00`. */
export function momentWords(moment: Moment, long: boolean): string {
  const utc = clockText(moment);
  return `${long ? dayOf(utc, true) : utc.slice(0, 3)} ${utc.slice(17, 22)}`;
}

/** The day of a moment on its own clock: `Wed 8`. */
export function dayWords(moment: Moment): string {
  return dayOf(clockText(moment), false);
}

/** `UTC-05:00`; null where none is stated. */
export function zoneWords({ offsetMin }: Moment): string | null {
  if (offsetMin === null) return null;
  const two = (n: number) => String(n).padStart(2, "0");
  const ahead = Math.abs(offsetMin);
  return `UTC${offsetMin < 0 ? "-" : "+"}${two(Math.floor(ahead / 60))}:${two(ahead % 60)}`;
}

/** Midnights between two moments on the clock of `of`, seconds since 1970, `every` so many days. */
export function midnights(of: Moment, fromS: number, toS: number, every: number): number[] {
  const aheadS = 60 * (of.offsetMin ?? 0);
  const first = Math.ceil((fromS + aheadS) / DAY_S) * DAY_S - aheadS;
  const count = Math.max(0, Math.floor((toS - first) / (every * DAY_S)) + 1);
  return Array.from({ length: count }, (_, k) => first + k * every * DAY_S);
}

/** `Wed, 08 Apr 2026 11:00:00 GMT` as the clock there shows it. */
function clockText({ atS, offsetMin }: Moment): string {
  return new Date((atS + 60 * (offsetMin ?? 0)) * 1000).toUTCString();
}

function dayOf(utc: string, withMonth: boolean): string {
  const day = `${utc.slice(0, 3)} ${Number(utc.slice(5, 7))}`;
  return withMonth ? `${day} ${utc.slice(8, 11)}` : day;
}

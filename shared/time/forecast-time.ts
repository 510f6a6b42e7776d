import { DAY_S, HOUR_S } from "../constants.ts";
/** A moment as a forecast writes it. */
export interface Moment {
  /** Seconds since 1970-01-01 00:00 UTC; for a clock without an offset, as if it were UTC. */
  readonly atS: number;
  /** Minutes ahead of UTC; null where none is stated. */
  readonly offsetMin: number | null;
}

const MOMENT =
  /^(\d{4})-(\d{2})-(\d{2})[T ](\d{1,2}):(\d{2})(?::(\d{2})(?:\.0+)?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?$/i;
const FURTHEST_OFFSET_MIN = 14 * 60;

/**
 * A moment from `2026-04-03T14:00-05:00`, `2026-04-03 14:00`, with or without seconds and offset (ISO 8601,
 * RFC 3339). Null where it is none, or a day or hour that does not exist. The offset is kept, never guessed.
 */
export function momentOf(text: string): Moment | null {
  const match = MOMENT.exec(text.trim());
  if (!match) return null;
  const [year, month, day, hour, minute, second] = match
    .slice(1, 7)
    .map((digits) => Number(digits ?? 0)) as [number, number, number, number, number, number];
  const utc = new Date(Date.UTC(year, month - 1, day, hour, minute, second));
  const exists = utc.getUTCMonth() === month - 1 && utc.getUTCDate() === day;
  if (!exists || hour > 23 || minute > 59 || second > 59 || year < 1900) return null;
  const offsetMin = match[7] === undefined ? null : offsetOf(match[7]);
  if (offsetMin !== null && !(Math.abs(offsetMin) <= FURTHEST_OFFSET_MIN)) return null;
  return { atS: utc.getTime() / 1000 - 60 * (offsetMin ?? 0), offsetMin };
}

/** A moment as `2026-04-03T14:00-05:00`, or without an offset where there is none. */
export function momentText({ atS, offsetMin }: Moment): string {
  const there = new Date((atS + 60 * (offsetMin ?? 0)) * 1000).toISOString();
  const clock = there.slice(0, there.endsWith(":00.000Z") ? 16 : 19);
  if (offsetMin === null) return clock;
  return `${clock}${offsetText(offsetMin)}`;
}

/** Minutes ahead of UTC as `-05:00`. */
export function offsetText(offsetMin: number): string {
  const ahead = Math.abs(offsetMin);
  const two = (n: number) => String(n).padStart(2, "0");
  return `${offsetMin < 0 ? "-" : "+"}${two(Math.floor(ahead / 60))}:${two(ahead % 60)}`;
}

/** Hour of the day there, 0 to below 24. */
export function clockHour({ atS, offsetMin }: Moment): number {
  const there = atS + 60 * (offsetMin ?? 0);
  return (((there % DAY_S) + DAY_S) % DAY_S) / HOUR_S;
}

function offsetOf(text: string): number {
  if (/^[a-z]/i.test(text)) return 0;
  const minutes = 60 * Number(text.slice(1, 3)) + Number(text.slice(-2));
  return Number(text.slice(-2)) > 59 ? Number.NaN : text.startsWith("-") ? -minutes : minutes;
}

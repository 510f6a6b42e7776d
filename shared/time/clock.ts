import { DAY_S, HOUR_S } from "../constants.ts";
import { formatHours } from "../units.ts";
import { type Moment, momentOf, momentText } from "./forecast-time.ts";

/** An hour of the work as a file has it, to the quarter hour: `2026-04-08T11:00-05:00`. */
export function hourText(startAt: string | null, hours: number): string {
  const start = startAt === null ? null : momentOf(startAt);
  if (!start) return `${formatHours(hours)} after the start`;
  const quarter = HOUR_S / 4;
  const atS = Math.round((start.atS + hours * HOUR_S) / quarter) * quarter;
  return momentText({ atS, offsetMin: start.offsetMin });
}

/** Midnights between two moments on the clock of `of`, seconds since 1970, `every` so many days. */
export function midnights(of: Moment, fromS: number, toS: number, every: number): number[] {
  const aheadS = 60 * (of.offsetMin ?? 0);
  const first = Math.ceil((fromS + aheadS) / DAY_S) * DAY_S - aheadS;
  const count = Math.max(0, Math.floor((toS - first) / (every * DAY_S)) + 1);
  return Array.from({ length: count }, (_, k) => first + k * every * DAY_S);
}

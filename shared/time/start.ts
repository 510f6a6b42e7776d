import type { TimeSettings } from "../plan.ts";
import { type Moment, momentOf } from "./forecast-time.ts";

/**
 * Start of work in the forecast's zone: as stated, a start without an offset being on the forecast's clock; where
 * none is stated, the forecast's first row. Null without either.
 */
export function startOfWork({ startAt, forecast }: TimeSettings): Moment | null {
  const first = forecast ? momentOf(forecast.rows[0]!.at) : null;
  const stated = startAt === null ? null : momentOf(startAt);
  if (!stated || !first || stated.offsetMin !== null) return stated ?? first;
  return { atS: stated.atS - 60 * (first.offsetMin ?? 0), offsetMin: first.offsetMin };
}

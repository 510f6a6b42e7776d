import type { Forecast, TimeSettings } from "../plan.ts";
import { type Moment, momentOf } from "./forecast-time.ts";

/**
 * Start of work on the forecast's clock: as stated, an offset that only one of the two states being that of both;
 * where no start is stated, the forecast's first row. Null without either.
 */
export function startOfWork({ startAt, forecast }: TimeSettings): Moment | null {
  const first = forecast ? momentOf(forecast.rows[0]!.at) : null;
  const stated = startAt === null ? null : momentOf(startAt);
  if (!stated || !first) return stated ?? first;
  if (first.offsetMin === null) return onLocalClock(stated);
  if (stated.offsetMin !== null) return onForecastClock(stated, forecast!);
  return { atS: stated.atS - 60 * first.offsetMin, offsetMin: first.offsetMin };
}

/** What the clock there shows, without its offset. */
function onLocalClock({ atS, offsetMin }: Moment): Moment {
  return { atS: atS + 60 * (offsetMin ?? 0), offsetMin: null };
}

/** The same moment with an offset that the forecast has: its own, or that of the row it lies behind. */
function onForecastClock(stated: Moment, { rows }: Forecast): Moment {
  const moments = rows.map(({ at }) => momentOf(at)!);
  if (moments.some(({ offsetMin }) => offsetMin === stated.offsetMin)) return stated;
  const row = moments.findLast(({ atS }) => atS <= stated.atS) ?? moments[0]!;
  return { atS: stated.atS, offsetMin: row.offsetMin };
}

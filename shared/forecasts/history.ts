import { HOUR_S } from "../constants.ts";
import { timeOf } from "../defaults.ts";
import type { Forecast, PastForecast, Plan, TimeSettings } from "../plan.ts";
import { type Moment, momentOf } from "../time/forecast-time.ts";
import { hydrographOf } from "../time/hydrograph.ts";

/** Most earlier forecasts a plan keeps; the oldest goes first. */
export const MOST_PAST = 8;

/**
 * The settings with a forecast in them; another that was there before is kept among the earlier ones. The same rows
 * again, or none, replace nothing.
 */
export function withForecast(
  time: TimeSettings,
  forecast: Forecast,
  nowS: number,
): Pick<TimeSettings, "forecast" | "pastForecasts"> {
  const before = time.forecast;
  if (!before || sameRows(before, forecast)) return { forecast, pastForecasts: time.pastForecasts };
  const past: PastForecast = { ...before, replacedAtS: Math.round(nowS) };
  return { forecast, pastForecasts: [...(time.pastForecasts ?? []), past].slice(-MOST_PAST) };
}

function sameRows(a: Forecast, b: Forecast): boolean {
  const isSame = (one: Forecast["rows"][number], other: Forecast["rows"][number] | undefined) =>
    one.at === other?.at && one.levelM === other.levelM;
  return (
    a.levels === b.levels &&
    a.rows.length === b.rows.length &&
    a.rows.every((row, k) => isSame(row, b.rows[k]))
  );
}

/** Highest water of a likely forecast: when, on its own clock, and its elevation at the gauge, metres. */
interface Crest {
  readonly moment: Moment;
  readonly elevationM: number;
}

/** What a newer forecast says otherwise than the one before it. */
export interface ForecastChange {
  readonly before: Crest;
  readonly now: Crest;
  /** Higher, metres; negative = lower. */
  readonly riseM: number;
  /** Later, hours; negative = sooner. */
  readonly laterH: number;
}

/** The crest of a forecast; null where its likely water is not known. */
function crestOf(plan: Plan, forecast: Forecast): Crest | null {
  const river = hydrographOf(plan, forecast, "likely");
  if (!river) return null;
  const top = river.levelM.reduce((best, m, i) => (m > river.levelM[best]! ? i : best), 0);
  return { moment: momentOf(forecast.rows[top]!.at)!, elevationM: river.levelM[top]! };
}

/** How the plan's forecast differs from the one before it; null where there is none before it. */
export function forecastChange(plan: Plan): ForecastChange | null {
  const { forecast, pastForecasts } = timeOf(plan);
  const last = pastForecasts?.at(-1);
  return forecast && last ? changeBetween(plan, last, forecast) : null;
}

/** How a forecast differs from one before it. */
export function changeBetween(
  plan: Plan,
  earlier: Forecast,
  newer: Forecast,
): ForecastChange | null {
  const [before, now] = [crestOf(plan, earlier), crestOf(plan, newer)];
  if (!before || !now) return null;
  const laterS = now.moment.atS - before.moment.atS;
  return { before, now, riseM: now.elevationM - before.elevationM, laterH: laterS / HOUR_S };
}

import type { Forecast, Plan, Water } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { momentOf } from "./forecast-time.ts";

/** Which line of the forecast. */
export type Band = "low" | "likely" | "high";

/** A forecast as water-surface elevations at the gauge, straight between its rows. */
export interface Hydrograph {
  /** Seconds since 1970-01-01 00:00 UTC, rising. */
  readonly atS: Float64Array;
  /** Elevations in the terrain's datum, metres. */
  readonly levelM: Float64Array;
}

/**
 * True of a forecast by stage where the water is given by elevation and nobody has given a gauge zero: at what elevation
 * its levels are is not known.
 */
export function lacksGaugeZero({ water }: Pick<Plan, "water">, { levels }: Forecast): boolean {
  return levels === "stage" && water.by === "elevation" && water.gaugeZeroM === 0;
}

/**
 * One band of a plan's forecast; null where the forecast has not got it, and where its levels are at no known elevation.
 * Source: NWS-D, USGS-D (elevation = gauge zero + stage).
 */
export function hydrographOf(plan: Plan, forecast: Forecast, band: Band): Hydrograph | null {
  const { rows, levels } = forecast;
  if (lacksGaugeZero(plan, forecast)) return null;
  const picked = rows.map((row) =>
    band === "likely" ? row.levelM : band === "low" ? row.lowM : row.highM,
  );
  if (picked.some((level) => level === null)) return null;
  return {
    atS: Float64Array.from(rows, (row) => momentOf(row.at)!.atS),
    levelM: Float64Array.from(picked, (level) => elevationOf(level!, levels, plan.water)),
  };
}

/** Elevation of a level that a forecast gives, metres in the terrain's datum. */
function elevationOf(levelM: number, by: "stage" | "elevation", water: Water): number {
  return waterElevationAtGauge({ ...water, by, stageM: levelM, elevationM: levelM });
}

/** Water at a moment: before the first row as in the first row, after the last NaN. */
export function levelAt({ atS, levelM }: Hydrograph, moment: number): number {
  if (moment <= atS[0]!) return levelM[0]!;
  const next = rowAfter(atS, moment);
  if (next === atS.length) return moment === atS.at(-1) ? levelM.at(-1)! : Number.NaN;
  const share = (moment - atS[next - 1]!) / (atS[next]! - atS[next - 1]!);
  return levelM[next - 1]! + (levelM[next]! - levelM[next - 1]!) * share;
}

/** Highest water between two moments, both included, and when; NaN where nothing of it is forecast. */
export function highestBetween(
  hydrograph: Hydrograph,
  fromS: number,
  toS: number,
): { levelM: number; atS: number } {
  const { atS, levelM } = hydrograph;
  const endS = Math.min(toS, atS.at(-1)!);
  if (!(fromS <= endS)) return { levelM: Number.NaN, atS: Number.NaN };
  let highest = { levelM: levelAt(hydrograph, fromS), atS: fromS };
  for (let i = rowAfter(atS, fromS); i < atS.length && atS[i]! < endS; i++) {
    if (levelM[i]! > highest.levelM) highest = { levelM: levelM[i]!, atS: atS[i]! };
  }
  const lastM = levelAt(hydrograph, endS);
  return lastM > highest.levelM ? { levelM: lastM, atS: endS } : highest;
}

/**
 * For any level, the first moment from `fromS` on at which the water stands above it; null when it never
 * does. Made once, it answers for many levels.
 */
export function firstAbove(
  { atS, levelM }: Hydrograph,
  fromS: number,
): (levelM: number) => number | null {
  const highs = { atS: [] as number[], levelM: [] as number[] };
  let beforeS = fromS;
  let beforeM = levelAt({ atS, levelM }, fromS);
  let highestM = beforeM;
  for (let i = rowAfter(atS, fromS); i < atS.length; i++) {
    const [hereS, hereM] = [atS[i]!, levelM[i]!];
    if (hereM > highestM) {
      const share = (highestM - beforeM) / (hereM - beforeM);
      highs.atS.push(beforeS + share * (hereS - beforeS), hereS);
      highs.levelM.push(highestM, hereM);
      highestM = hereM;
    }
    [beforeS, beforeM] = [hereS, hereM];
  }
  const startM = levelAt({ atS, levelM }, fromS);
  return (wantedM) => {
    if (startM > wantedM) return fromS;
    if (!(wantedM < highestM)) return null;
    const next = rowAfter(highs.levelM, wantedM);
    const [lowM, highM] = [highs.levelM[next - 1]!, highs.levelM[next]!];
    const share = (wantedM - lowM) / (highM - lowM);
    return highs.atS[next - 1]! + share * (highs.atS[next]! - highs.atS[next - 1]!);
  };
}

/** Index of the first of rising values that is greater than one. */
function rowAfter(atS: ArrayLike<number>, moment: number): number {
  let low = 0;
  let high = atS.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (atS[middle]! <= moment) low = middle + 1;
    else high = middle;
  }
  return low;
}

import { FOOT_M, INCH_MM } from "../../shared/constants.ts";
import type { UnitSystem } from "../../shared/units.ts";

/** A scale that a plan is drawn to. */
export interface PlanScale {
  /** Metres on the ground in one millimetre of paper. */
  readonly mPerMm: number;
  /** As it is written: "1 : 500" or "1 in = 40 ft". */
  readonly words: string;
  /** Length of the scale bar on the ground, metres, and what stands at its middle and end. */
  readonly barM: number;
  readonly barWords: readonly [string, string];
}

/** Feet on the ground in an inch, and denominators, as engineers' scales have them; largest first. */
const FEET_PER_INCH = [10, 20, 30, 40, 50, 60, 80, 100] as const;
const DENOMINATORS = [100, 125, 200, 250, 300, 400, 500, 600, 750, 1000] as const;
/** The bar is about so long on paper, millimetres. */
const BAR_MM = 25;
const METRIC_BARS_M = [2, 4, 5, 10, 20, 25] as const;

/** Scales that plans are drawn to, the largest first. */
export function planScales(system: UnitSystem): readonly PlanScale[] {
  return system === "us" ? FEET_PER_INCH.map(feetScale) : DENOMINATORS.map(ratioScale);
}

/** The largest scale at which something of that size fits the room on the paper; null where none does. */
export function largestFitting(
  size: { readonly widthM: number; readonly heightM: number },
  room: { readonly widthMm: number; readonly heightMm: number },
  system: UnitSystem,
): PlanScale | null {
  const least = Math.max(size.widthM / room.widthMm, size.heightM / room.heightMm);
  return planScales(system).find(({ mPerMm }) => mPerMm >= least * (1 - 1e-9)) ?? null;
}

function ratioScale(denominator: number): PlanScale {
  const mPerMm = denominator / 1000;
  const barM = METRIC_BARS_M.findLast((m) => m <= mPerMm * BAR_MM * 1.2) ?? 2;
  return { mPerMm, words: `1 : ${denominator}`, barM, barWords: [`${barM / 2}`, `${barM} m`] };
}

function feetScale(feetPerInch: number): PlanScale {
  return {
    mPerMm: (feetPerInch * FOOT_M) / INCH_MM,
    words: `1 in = ${feetPerInch} ft`,
    barM: feetPerInch * FOOT_M,
    barWords: [`${feetPerInch / 2}`, `${feetPerInch} ft`],
  };
}

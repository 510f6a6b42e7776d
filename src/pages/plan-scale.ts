import { FOOT_M } from "../../shared/constants.ts";
import type { UnitSystem } from "../../shared/units.ts";

export interface PlanScale {
  /** Metres on the ground in one millimetre of paper. */
  readonly mPerMm: number;
  /** As it is written: "1 : 500" or "1 in = 40 ft". */
  readonly words: string;
  /** Length of the scale bar on the ground, metres, and what stands at its end. */
  readonly barM: number;
  readonly barWords: string;
}

const STEPS = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8] as const;
const INCH_MM = 25.4;

/** The largest usual scale at which a site of the given size fits the room on the paper. */
export function planScale(
  site: { readonly widthM: number; readonly heightM: number },
  room: { readonly widthMm: number; readonly heightMm: number },
  system: UnitSystem,
): PlanScale {
  const least = Math.max(site.widthM / room.widthMm, site.heightM / room.heightMm, 1e-3);
  return system === "us" ? feetScale(least) : ratioScale(least);
}

function ratioScale(leastMPerMm: number): PlanScale {
  const denominator = usualFrom(leastMPerMm * 1000);
  const mPerMm = denominator / 1000;
  const barM = usualFrom(mPerMm * 20);
  return { mPerMm, words: `1 : ${denominator}`, barM, barWords: `${barM} m` };
}

function feetScale(leastMPerMm: number): PlanScale {
  const feetPerInch = usualFrom((leastMPerMm * INCH_MM) / FOOT_M);
  const mPerMm = (feetPerInch * FOOT_M) / INCH_MM;
  return {
    mPerMm,
    words: `1 in = ${feetPerInch} ft`,
    barM: feetPerInch * FOOT_M,
    barWords: `${feetPerInch} ft`,
  };
}

function usualFrom(least: number): number {
  const decade = 10 ** Math.floor(Math.log10(least));
  const step = STEPS.find((each) => each * decade >= least * (1 - 1e-9)) ?? 10;
  return Number((step * decade).toPrecision(6));
}

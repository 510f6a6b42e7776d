import { INCH_M } from "../constants.ts";
import { lengthIn, type UnitSystem } from "../units.ts";

/** Differences below this are of the machine's arithmetic, not of the ground; in the unit that is rounded. */
const NOISE = 1e-6;

/** A figure rounded up to so many decimals: what is built to it is never too low. */
export function roundedUp(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return Math.ceil(value * scale - NOISE) / scale;
}

/** A height rounded up: to a tenth of a foot, or a centimetre; in that unit. */
export function heightUp(m: number, system: UnitSystem): number {
  return roundedUp(lengthIn(m, system), system === "us" ? 1 : 2);
}

/** A height as whole feet and inches, rounded up to the inch. */
export function feetAndInchesUp(m: number): { readonly feet: number; readonly inches: number } {
  const inches = Math.ceil(m / INCH_M - NOISE);
  return { feet: Math.floor(inches / 12), inches: inches % 12 };
}

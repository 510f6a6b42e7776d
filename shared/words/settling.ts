import { bagTopM, mostSettlingM, SETTLING_SHARE } from "../settling.ts";
import type { CrossSection, SizedLine } from "../sizing-types.ts";
import { formatElevation, formatShare, lengthIn, lengthUnit, type UnitSystem } from "../units.ts";

/** Figures rounded up, so that no bag is laid too low: two decimals of an elevation, one of a foot else. */
function up(value: number, digits: number): string {
  const scale = 10 ** digits;
  return (Math.ceil(value * scale - 1e-6) / scale).toFixed(digits);
}

/** Elevation to lay bags to, without its unit; null where no bags are laid. */
export function bagTopFigure(
  at: Pick<CrossSection, "crestM" | "heightM" | "courses">,
  system: UnitSystem,
): string | null {
  const topM = bagTopM(at);
  return topM === null ? null : up(lengthIn(topM, system), 2);
}

/** How much higher than the top of levee bags are laid between two chainages, at most, without its unit. */
export function mostSettlingFigure(
  line: Pick<SizedLine, "walk" | "reaches">,
  fromM: number,
  toM: number,
  system: UnitSystem,
): string | null {
  const mostM = mostSettlingM(line, fromM, toM);
  return mostM === null ? null : up(lengthIn(mostM, system), system === "us" ? 1 : 2);
}

/** `top of levee 874.93 ft, lay bags to 875.14 ft`; the top alone where no bags are laid. */
export function topWords(
  at: Pick<CrossSection, "crestM" | "heightM" | "courses">,
  system: UnitSystem,
): string {
  const top = `top of levee ${formatElevation(at.crestM, system)}`;
  const bags = bagTopFigure(at, system);
  return bags === null ? top : `${top}, lay bags to ${bags} ${lengthUnit(system)}`;
}

/** Why bags are laid higher than the top of levee. */
export const SETTLING_NOTE = `Wet bags settle: lay them at least ${formatShare(SETTLING_SHARE)} of the height above the top of levee (MB). The bags for that are not in the order.`;

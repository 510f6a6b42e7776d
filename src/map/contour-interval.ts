import { lengthFrom, lengthIn, type UnitSystem } from "../../shared/units.ts";

/** Distance wanted between neighbouring contours on ground of the raster's mean steepness, CSS pixels. */
const WANTED_PX = 34;
/** Every so many contours one is drawn heavier. */
const PER_INDEX = 5;

export interface ContourView {
  /** Ground covered by one CSS pixel, metres. */
  readonly metresPerPx: number;
  /** Height range of the raster over the shorter side of it. */
  readonly steepness: number;
  /** RMSE of the heights, metres: contours closer than twice that would be drawn from noise. */
  readonly rmseM: number;
  readonly system: UnitSystem;
}

/** Contour interval in metres that suits the zoom: 1, 2 or 5 times a power of ten feet or metres. */
export function contourIntervalM(view: ContourView): number {
  const wantedM = Math.max(WANTED_PX * view.metresPerPx * view.steepness, 2 * view.rmseM);
  const wanted = lengthIn(wantedM, view.system);
  const floor = view.system === "us" ? 0.5 : 0.2;
  return lengthFrom(Math.max(floor, roundUp(wanted)), view.system);
}

/** True for the heavier contours: every fifth. */
export function isIndexContour(elevationM: number, intervalM: number): boolean {
  return Math.round(elevationM / intervalM) % PER_INDEX === 0;
}

/** `874` or `266.4`: as many decimals as the interval needs, without a unit. */
export function contourLabel(elevationM: number, intervalM: number, system: UnitSystem): string {
  const decimals = lengthIn(intervalM, system) < 1 - 1e-9 ? 1 : 0;
  return lengthIn(elevationM, system).toFixed(decimals);
}

/** The next of 1, 2, 5, 10 ... that is not below a value, with a hair of tolerance. */
function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const step = [1, 2, 5, 10].find((each) => each * power >= value * (1 - 1e-9)) ?? 10;
  return step * power;
}

import { lengthFrom, lengthIn, lengthUnit, type UnitSystem } from "./units.ts";

/** The length of a scale bar: the largest of 1, 2, 5, 10 ... in the units in use that is not above a length, metres. */
export function scaleLength(mostM: number, system: UnitSystem): { lengthM: number; label: string } {
  const most = lengthIn(mostM, system);
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [5, 2, 1].find((each) => each * power <= most) ?? 1;
  const length = Number((step * power).toPrecision(1));
  return {
    lengthM: lengthFrom(length, system),
    label: `${length.toLocaleString("en-US")} ${lengthUnit(system)}`,
  };
}

import { lengthUnit, type UnitSystem } from "../units.ts";

/** `12 readings`; says so where there are none. */
export function readingCountWords(count: number): string {
  if (count === 0) return "no readings";
  return count === 1 ? "1 reading" : `${count} readings`;
}

/** What the rod readings of the stakes count down from. */
export function instrumentWords(instrument: number | null, system: UnitSystem): string {
  return instrument === null
    ? "With benchmark and backsight the stakes page has the rod reading of each mark."
    : `Height of instrument ${instrument.toFixed(2)} ${lengthUnit(system)}. The stakes page has the rod reading of each mark.`;
}

import { formatCount, formatLength, lengthUnit, type UnitSystem } from "../units.ts";
import { correctionWords } from "./ground-chances.ts";

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

/** How the ground that was read differs from the elevation data on average, metres. */
export function meanDifferenceWords(meanM: number, count: number, system: UnitSystem): string {
  const by = `${formatLength(Math.abs(meanM), system, 2)} ${meanM > 0 ? "higher" : "lower"}`;
  return `The ground was read ${by} than in the elevation data on average, at ${formatCount(count)} stakes. If that is so everywhere, correct all elevations.`;
}

/** That all elevations are corrected; null where they are not. */
export function correctedWords(correctionM: number, system: UnitSystem): string | null {
  return correctionM === 0
    ? null
    : `All elevations are corrected by ${correctionWords(correctionM, system)}.`;
}

const EXAMPLES = {
  us: { station: "2+50", rod: "6.14", ground: "873.46" },
  metric: { station: "0+076.2", rod: "1.87", ground: "266.23" },
};

/** A row as it is typed: `2+50, 6.14`. */
export function readingExample(readAs: "rod" | "ground", system: UnitSystem): string {
  return `${EXAMPLES[system].station}, ${EXAMPLES[system][readAs]}`;
}

import type { BuildStep, CrewPart, LineTime, Toward, WorkStretch } from "../time/types.ts";
import { formatLength, formatStation, lengthIn, type UnitSystem } from "../units.ts";

const NAMES: Readonly<Record<Toward, string>> = {
  N: "North",
  NE: "Northeast",
  E: "East",
  SE: "Southeast",
  S: "South",
  SW: "Southwest",
  W: "West",
  NW: "Northwest",
};

/** `North crew`, or `Crew 2` where crews are not told apart by where they work. */
export function crewName({ crew, toward }: Pick<CrewPart, "crew" | "toward">): string {
  return toward === null ? `Crew ${crew}` : `${NAMES[toward]} crew`;
}

/** `N3`: the third step of the North crew; `2-3` of crew 2. */
export function stepName(
  { crew, toward }: Pick<CrewPart, "crew" | "toward">,
  number: number,
): string {
  return toward === null ? `${crew}-${number}` : `${toward}${number}`;
}

/** Names of the steps laid on a stretch, in order; `HOLD` where nothing is laid. */
export function stepNames({ crew, steps, isOnHold }: WorkStretch, { parts }: LineTime): string[] {
  const part = parts.find((each) => each.crew === crew);
  if (isOnHold || !part) return [ON_HOLD];
  return steps.map((number) => stepName(part, number));
}

/** What stands where a step would: nothing is built. */
export const ON_HOLD = "HOLD";

/** `4+38 to 7+42`. */
export function stationsWords(
  { fromM, toM }: { readonly fromM: number; readonly toM: number },
  system: UnitSystem,
): string {
  return `${formatStation(fromM, system)} to ${formatStation(toM, system)}`;
}

/** Where a lift stops on the stake: `1.0 ft below`, `the mark`. */
export function layToWords({ belowM }: Pick<BuildStep, "belowM">, system: UnitSystem): string {
  return belowM > 1e-6 ? `${formatLength(belowM, system)} below` : "the mark";
}

/** The same in a column that names the unit: `1.0 below`, `the mark`. */
export function layToFigure({ belowM }: Pick<BuildStep, "belowM">, system: UnitSystem): string {
  const figure = lengthIn(belowM, system).toFixed(system === "us" ? 1 : 2);
  return belowM > 1e-6 ? `${figure} below` : "the mark";
}

/** What is drawn in the picture of the lifts. @param water the sized-for water, in words */
export function liftPictureWords(water: string): string {
  return `Dashes: water at ${water}. Bottom: lowest ground under the base.`;
}

/** Marks the middle of a reach that starts at a station. */
export function markMiddleWords(fromM: number, reach: string, system: UnitSystem): string {
  return `${formatStation(fromM, system)} to: mark the middle of ${reach}`;
}

import type { Apart } from "../apart.ts";
import type { Failure } from "../failure.ts";
import { formatDistance, type UnitSystem } from "../units.ts";

const DIRECTIONS = [
  ...(["north", "northeast", "east", "southeast"] as const),
  ...(["south", "southwest", "west", "northwest"] as const),
];

/** That elevation data and plan have no place in common, how far apart they are, and what to do. */
export function elsewhere(apart: Apart, systems: readonly [UnitSystem, ...UnitSystem[]]): Failure {
  const [first, ...others] = systems.map((system) => formatDistance(apart.distanceM, system));
  const distance = others.length > 0 ? `${first} (${others.join(", ")})` : first;
  const direction = DIRECTIONS[Math.round(apart.bearingDeg / 45) % DIRECTIONS.length];
  return {
    code: "plan/elsewhere",
    message: `The elevation data lies ${distance} ${direction} of the plan.`,
    remedy: "Open the elevation data of the plan's place, or start a new plan here.",
  };
}

import type { Apart } from "../apart.ts";
import type { Failure } from "../failure.ts";

const DIRECTIONS = [
  ...(["north", "northeast", "east", "southeast"] as const),
  ...(["south", "southwest", "west", "northwest"] as const),
];

/**
 * That elevation data and plan have no place in common, how far apart they are, and what to do.
 * @param apart null while it is not calculated
 */
export function elsewhere(apart: Apart | null): Failure {
  const remedy = "Open the elevation data of the plan's place, or start a new plan here.";
  const code = "plan/elsewhere";
  if (!apart) return { code, message: "The elevation data lies away from the plan.", remedy };
  const direction = DIRECTIONS[Math.round(apart.bearingDeg / 45) % DIRECTIONS.length];
  return {
    ...{ code, remedy },
    message: `The elevation data lies {0} ${direction} of the plan.`,
    figures: [{ as: "far", m: apart.distanceM }],
  };
}

/** That nothing can be worked out because no elevation data is open. */
export function noGround(): Failure {
  return {
    code: "ground/none",
    message: "This needs elevation data, and none is open.",
    remedy: "Open a GeoTIFF or an Esri ASCII grid of the site.",
  };
}

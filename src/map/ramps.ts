import type { ExpressionSpecification } from "maplibre-gl";
import { HOLE_DISPLAY_M } from "../../shared/messages.ts";
import { faded, type MapColours } from "./colours.ts";

/** Opacity of the water tint by depth below the surface, metres. Judgement: a foot must already read as wet. */
const TINT_BY_DEPTH_M: readonly (readonly [depthM: number, opacity: number])[] = [
  [8, 0.88],
  [4, 0.8],
  [2, 0.7],
  [1, 0.58],
  [0.3, 0.44],
  [0.02, 0.34],
];
/** Two stops must lie further apart than the encoding's 1/256 m. */
const EDGE_M = 0.008;
/** No ground on land is higher, so that everything above it in a display tile is missing data. */
const ABOVE_ALL_GROUND_M = HOLE_DISPLAY_M - 60;

/**
 * Colours for heights relative to the water plane: nothing above `elevationM`, the water's tint deepening
 * with depth below it, and the colour of missing ground where a display tile holds `HOLE_DISPLAY_M`.
 * A pure function of the water, so that a moving stage only sets a paint property.
 */
export function waterRamp(elevationM: number, colours: MapColours): ExpressionSpecification {
  const level = Math.min(Math.max(elevationM, -11_000), ABOVE_ALL_GROUND_M - 1);
  const tint = TINT_BY_DEPTH_M.flatMap(([depthM, opacity]) => [
    level - depthM,
    faded(colours.water, opacity),
  ]);
  return [
    "interpolate",
    ["linear"],
    ["elevation"],
    ...tint,
    level - EDGE_M,
    faded(colours.water, 0.3),
    level,
    faded(colours.water, 0),
    ABOVE_ALL_GROUND_M,
    faded(colours.hole, 0),
    ABOVE_ALL_GROUND_M + 1,
    colours.hole,
  ] as unknown as ExpressionSpecification;
}

/** Colour of missing ground alone, for when there is no water to show. */
export function holeRamp(colours: MapColours): ExpressionSpecification {
  return waterRamp(-11_000, colours);
}

/** Warm ground from the lowest to the highest height, in the stretched heights of the relief tiles. */
export function groundRamp(highestM: number, colours: MapColours): ExpressionSpecification {
  return [
    "interpolate",
    ["linear"],
    ["elevation"],
    0,
    colours.groundLow,
    Math.max(highestM, 0.01),
    colours.groundHigh,
  ] as unknown as ExpressionSpecification;
}

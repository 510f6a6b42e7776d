import type { ExpressionSpecification } from "maplibre-gl";
import { HOLE_DISPLAY_M, UNREAD_DISPLAY_M } from "../../shared/messages.ts";
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
/** Lower than any ground on land or under it. */
const LOWEST_M = -11_000;

/**
 * Colours for heights relative to the water plane: nothing above `levelM`, the water's tint deepening with
 * depth below it, and the colour of missing ground from `aboveGroundM` up, where display tiles hold
 * `HOLE_DISPLAY_M`; what is not read yet is paper. The lower `aboveGroundM` is, the thinner the seam that is drawn as neither at the rim
 * of a hole, where the picture runs smoothly from ground to that height.
 * A pure function of the water, so that a moving stage only sets a paint property.
 */
export function waterRamp(
  levelM: number,
  aboveGroundM: number,
  colours: MapColours,
): ExpressionSpecification {
  const holeM = Math.min(aboveGroundM, HOLE_DISPLAY_M - 1);
  const level = Math.min(Math.max(levelM, LOWEST_M), holeM - 2);
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
    holeM - 1,
    faded(colours.hole, 0),
    holeM,
    colours.hole,
    HOLE_DISPLAY_M + 1,
    colours.hole,
    UNREAD_DISPLAY_M - 1,
    colours.paper,
  ] as unknown as ExpressionSpecification;
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

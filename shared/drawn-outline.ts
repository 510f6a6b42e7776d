import type { GroundSummary } from "./messages.ts";
import type { LonLat } from "./plan.ts";

/** Cells left off along each edge: heights are read between cell centres, so the outer half cell has none. */
const RIM_CELLS = 1;

/**
 * The outline within which ground is drawn: the raster's corners drawn in by one cell, from the upper left
 * clockwise. What lies outside it is not a hole in the data but the end of it.
 */
export function drawnOutline({ corners, columns, rows }: GroundSummary): LonLat[] {
  const [upperLeft, upperRight, lowerRight, lowerLeft] = corners;
  const u = Math.min(0.5, RIM_CELLS / columns);
  const v = Math.min(0.5, RIM_CELLS / rows);
  const at = (right: number, down: number): LonLat =>
    between(between(upperLeft, upperRight, right), between(lowerLeft, lowerRight, right), down);
  return [at(u, v), at(1 - u, v), at(1 - u, 1 - v), at(u, 1 - v)];
}

function between(a: LonLat, b: LonLat, share: number): LonLat {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

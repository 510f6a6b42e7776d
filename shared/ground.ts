/**
 * Where heights come from. The engine makes one over a raster, tests make one from a formula;
 * everything in `shared/` works on this and never sees a raster.
 * x and y are metres on the plan plane (see plan-plane.ts): x east, y north of the plan's origin.
 */
export interface GroundSampler {
  /** Ground elevation in metres; NaN where there is no data (a hole is never ground). */
  heightAt(xM: number, yM: number): number;
  /** Size of one raster cell on the ground, metres (the smaller side). */
  readonly cellM: number;
  /** The longer side where cells are not square, metres; the same as `cellM` when left out. */
  readonly longCellM?: number;
}

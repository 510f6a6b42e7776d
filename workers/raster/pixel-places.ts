import type { LonLat } from "../../shared/plan.ts";
import type { Locator } from "./locate.ts";

/** Where each output pixel's centre lies in the grid, in cell centres. */
export interface PixelPlaces {
  readonly columns: Float64Array;
  readonly rows: Float64Array;
  /** Cells along one side of an output pixel, in the middle of the picture. */
  readonly cellsPerPixel: number;
}

type Project = (column: number, row: number) => [number, number];

/** Pixels between places that are projected exactly. */
const STEP = 8;
/** Places may be off by this share of an output pixel. */
const TOLERANCE_PIXELS = 0.05;
const PROBES = [
  [0.5, 0],
  [0, 0.5],
  [0.5, 0.5],
] as const;

/** Projects every eighth pixel and fills in between; every pixel where that is not near enough. */
export function pixelPlaces(
  project: (column: number, row: number) => LonLat,
  locator: Locator,
  width: number,
  height: number,
): PixelPlaces {
  const exact: Project = (column, row) => {
    const [longitude, latitude] = project(column, row);
    return locator.toCell(longitude, latitude);
  };
  const cellsPerPixel = scaleAt(exact, (width - 1) / 2, (height - 1) / 2);
  const columns = new Float64Array(width * height);
  const rows = new Float64Array(width * height);
  for (let top = 0; top < height; top += STEP) {
    for (let left = 0; left < width; left += STEP) {
      const near = squareAt(exact, left, top, TOLERANCE_PIXELS * cellsPerPixel) ?? exact;
      fill(near, columns, rows, left, top, width, height);
    }
  }
  return { columns, rows, cellsPerPixel };
}

function fill(
  place: Project,
  columns: Float64Array,
  rows: Float64Array,
  left: number,
  top: number,
  width: number,
  height: number,
): void {
  for (let y = top; y < Math.min(height, top + STEP); y++) {
    for (let x = left; x < Math.min(width, left + STEP); x++) {
      const [column, row] = place(x, y);
      columns[y * width + x] = column;
      rows[y * width + x] = row;
    }
  }
}

/**
 * A bilinear stand-in over one square of pixels; null where it is not near enough in the middle of two
 * sides and of the square (between conformal projections the middle alone would show no error).
 */
function squareAt(exact: Project, left: number, top: number, tolerance: number): Project | null {
  const a = exact(left, top);
  const b = exact(left + STEP, top);
  const c = exact(left, top + STEP);
  const d = exact(left + STEP, top + STEP);
  const between = (u: number, v: number, k: 0 | 1): number =>
    (1 - v) * ((1 - u) * a[k] + u * b[k]) + v * ((1 - u) * c[k] + u * d[k]);
  const isNear = ([u, v]: readonly [number, number]): boolean => {
    const [column, row] = exact(left + STEP * u, top + STEP * v);
    return Math.hypot(between(u, v, 0) - column, between(u, v, 1) - row) <= tolerance;
  };
  if (!PROBES.every(isNear)) return null;
  return (x, y) => {
    const u = (x - left) / STEP;
    const v = (y - top) / STEP;
    return [between(u, v, 0), between(u, v, 1)];
  };
}

function scaleAt(exact: Project, x: number, y: number): number {
  const here = exact(x, y);
  const right = exact(x + 1, y);
  const below = exact(x, y + 1);
  const cross =
    (right[0] - here[0]) * (below[1] - here[1]) - (right[1] - here[1]) * (below[0] - here[0]);
  return Math.sqrt(Math.abs(cross));
}

import type { PlaneBox } from "../../shared/site.ts";
/**
 * A fast stand-in for the exact way from the plan plane to the raster: control points are projected
 * exactly, and between them column and row are bilinear. Eight coefficients a square: of column, then
 * of row, for 1, u, v and uv.
 */
export interface Lattice {
  readonly box: PlaneBox;
  readonly spacingM: number;
  readonly across: number;
  readonly up: number;
  readonly coefficients: Float64Array;
  /** Columns and rows the box reaches, in cell centres. */
  readonly reach: PlaneBox;
  /** Largest difference from the exact way that was found, metres on the ground. */
  readonly errorM: number;
}

/** Places may be off by this much on the ground, metres: a tenth of what the heights must agree to. */
const TOLERANCE_M = 1e-4;
const WIDEST_SPACING_M = 256;
const NARROWEST_SPACING_M = 4;
/** Squares that are compared with the exact way, and where in them a bilinear map errs most. */
const COMPARED = 64;
const PROBES = [
  [0.5, 0],
  [0, 0.5],
  [0.5, 0.5],
] as const;

/**
 * @param toCell exact way from plan-plane metres to column and row
 * @param cellM metres on the ground of one column and one row
 */
export function makeLattice(
  box: PlaneBox,
  toCell: (xM: number, yM: number) => [number, number],
  cellM: number,
): Lattice {
  const side = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  let spacingM = Math.min(WIDEST_SPACING_M, Math.max(NARROWEST_SPACING_M, side / 2));
  let lattice = buildLattice(box, toCell, cellM, spacingM);
  while (lattice.errorM > TOLERANCE_M && spacingM > NARROWEST_SPACING_M) {
    spacingM /= 2;
    lattice = buildLattice(box, toCell, cellM, spacingM);
  }
  return lattice;
}

function buildLattice(
  box: PlaneBox,
  toCell: (xM: number, yM: number) => [number, number],
  cellM: number,
  spacingM: number,
): Lattice {
  const across = Math.max(1, Math.ceil((box.maxX - box.minX) / spacingM));
  const up = Math.max(1, Math.ceil((box.maxY - box.minY) / spacingM));
  const columns = new Float64Array((across + 1) * (up + 1));
  const rows = new Float64Array((across + 1) * (up + 1));
  for (let j = 0, at = 0; j <= up; j++) {
    for (let i = 0; i <= across; i++, at++) {
      const [column, row] = toCell(box.minX + i * spacingM, box.minY + j * spacingM);
      columns[at] = column;
      rows[at] = row;
    }
  }
  const coefficients = new Float64Array(8 * across * up);
  for (let j = 0, to = 0; j < up; j++) {
    for (let i = 0; i < across; i++, to += 8) {
      const at = j * (across + 1) + i;
      writeSquare(coefficients, to, columns, at, across + 1);
      writeSquare(coefficients, to + 4, rows, at, across + 1);
    }
  }
  return {
    box,
    spacingM,
    across,
    up,
    coefficients,
    reach: reachOf(columns, rows),
    errorM: cellM * worstError(box, spacingM, across, up, coefficients, toCell),
  };
}

function writeSquare(
  coefficients: Float64Array,
  to: number,
  values: Float64Array,
  at: number,
  stride: number,
): void {
  const corner = values[at]!;
  const right = values[at + 1]! - corner;
  const above = values[at + stride]! - corner;
  coefficients[to] = corner;
  coefficients[to + 1] = right;
  coefficients[to + 2] = above;
  coefficients[to + 3] = values[at + stride + 1]! - corner - right - above;
}

function reachOf(columns: Float64Array, rows: Float64Array): PlaneBox {
  const reach = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let i = 0; i < columns.length; i++) {
    reach.minX = Math.min(reach.minX, columns[i]!);
    reach.maxX = Math.max(reach.maxX, columns[i]!);
    reach.minY = Math.min(reach.minY, rows[i]!);
    reach.maxY = Math.max(reach.maxY, rows[i]!);
  }
  return reach;
}

/**
 * Cells. Squares spread over the whole lattice are compared in the middle of two sides and of the square:
 * where the projection is conformal the errors along x and y cancel in the middle of the square.
 */
function worstError(
  box: PlaneBox,
  spacingM: number,
  across: number,
  up: number,
  coefficients: Float64Array,
  toCell: (xM: number, yM: number) => [number, number],
): number {
  const step = Math.max(1, Math.floor((across * up) / COMPARED));
  let worst = 0;
  for (let square = 0; square < across * up; square += step) {
    const i = square % across;
    const j = Math.floor(square / across);
    const c = coefficients.subarray(8 * square, 8 * square + 8);
    for (const [u, v] of PROBES) {
      const [column, row] = toCell(box.minX + (i + u) * spacingM, box.minY + (j + v) * spacingM);
      const nearColumn = c[0]! + c[1]! * u + c[2]! * v + c[3]! * u * v;
      const nearRow = c[4]! + c[5]! * u + c[6]! * v + c[7]! * u * v;
      worst = Math.max(worst, Math.hypot(nearColumn - column, nearRow - row));
    }
  }
  return worst;
}

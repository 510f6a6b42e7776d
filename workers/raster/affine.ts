/**
 * A flat map from grid to reference coordinates: x = x0 + xPerColumn * column + xPerRow * row, y likewise.
 * Columns and rows count cell corners: (0, 0) is the outer corner of the first cell, (0.5, 0.5) its centre.
 * Rotated, sheared and south-up grids are all of this shape.
 */
export interface Affine {
  readonly x0: number;
  readonly xPerColumn: number;
  readonly xPerRow: number;
  readonly y0: number;
  readonly yPerColumn: number;
  readonly yPerRow: number;
}

/** Reference coordinates of a place in the grid. */
export function applyAffine(affine: Affine, column: number, row: number): [number, number] {
  return [
    affine.x0 + affine.xPerColumn * column + affine.xPerRow * row,
    affine.y0 + affine.yPerColumn * column + affine.yPerRow * row,
  ];
}

/** The map back, from reference coordinates to column and row. The affine must be {@link isUsableAffine}. */
export function inverseAffine(affine: Affine): (x: number, y: number) => [number, number] {
  const { x0, y0, xPerColumn, xPerRow, yPerColumn, yPerRow } = affine;
  const determinant = xPerColumn * yPerRow - xPerRow * yPerColumn;
  const columnPerX = yPerRow / determinant;
  const columnPerY = -xPerRow / determinant;
  const rowPerX = -yPerColumn / determinant;
  const rowPerY = xPerColumn / determinant;
  return (x, y) => [
    columnPerX * (x - x0) + columnPerY * (y - y0),
    rowPerX * (x - x0) + rowPerY * (y - y0),
  ];
}

/** False for NaN, infinite or collapsed grids. */
export function isUsableAffine(affine: Affine): boolean {
  const finite = Object.values(affine).every((value) => Number.isFinite(value));
  const determinant = affine.xPerColumn * affine.yPerRow - affine.xPerRow * affine.yPerColumn;
  return finite && Number.isFinite(1 / determinant);
}

/** The affine of the same lattice with its origin moved by whole or part cells. */
export function shiftAffine(affine: Affine, columns: number, rows: number): Affine {
  const [x0, y0] = applyAffine(affine, columns, rows);
  return { ...affine, x0, y0 };
}

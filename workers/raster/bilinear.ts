/** Closer than this to a cell's centre only that cell counts, so that rounding pulls in no neighbour. */
const ON_CENTRE_CELLS = 1e-6;

/**
 * Height between cell centres, metres. NaN outside the cells given, and wherever a cell that carries
 * weight has no data: a hole is never ground. Exactly on a cell's centre only that cell counts.
 * @param column place counted in cell centres: 0 is the centre of the window's first column
 * @param row likewise
 */
export function bilinear(
  heightsM: Float32Array,
  columns: number,
  rows: number,
  column: number,
  row: number,
): number {
  const x = column + ON_CENTRE_CELLS;
  const y = row + ON_CENTRE_CELLS;
  if (!(x >= 0 && y >= 0 && x < columns && y < rows)) return Number.NaN;
  const c = x | 0;
  const r = y | 0;
  const u = column - c < ON_CENTRE_CELLS ? 0 : column - c;
  const v = row - r < ON_CENTRE_CELLS ? 0 : row - r;
  // A side without weight is read from the cell itself, so that nothing beyond the edge is touched.
  const right = u === 0 ? 0 : 1;
  const below = v === 0 ? 0 : columns;
  if (c + right >= columns || (below !== 0 && r + 1 >= rows)) return Number.NaN;
  const at = r * columns + c;
  const top = heightsM[at]! * (1 - u) + heightsM[at + right]! * u;
  const bottom = heightsM[at + below]! * (1 - u) + heightsM[at + below + right]! * u;
  return top * (1 - v) + bottom * v;
}

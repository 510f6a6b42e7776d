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
  const c = Math.floor(column + ON_CENTRE_CELLS);
  const r = Math.floor(row + ON_CENTRE_CELLS);
  if (!(c >= 0 && r >= 0 && c < columns && r < rows)) return Number.NaN;
  const u = column - c < ON_CENTRE_CELLS ? 0 : column - c;
  const v = row - r < ON_CENTRE_CELLS ? 0 : row - r;
  const at = r * columns + c;
  // An edge cell is read with weight on one side only; the index of the unweighted side stays inside.
  const right = u > 0 ? (c + 1 < columns ? 1 : -1) : 0;
  const below = v > 0 ? (r + 1 < rows ? columns : -1) : 0;
  if (right < 0 || below < 0) return Number.NaN;
  const top = (1 - u) * heightsM[at]! + u * heightsM[at + right]!;
  const bottom = (1 - u) * heightsM[at + below]! + u * heightsM[at + below + right]!;
  return (1 - v) * top + v * bottom;
}

/**
 * A copy of a grid in which every NaN takes the nearest height along its row, or where its row has none,
 * along its column; null when the grid has no height at all. For shading only, so that the rim of a hole
 * is not drawn as a cliff; what is filled is drawn over by the hatch of missing ground.
 * @param heightM columns x rows heights, row by row
 */
export function fillHoles(
  heightM: Float32Array,
  columns: number,
  rows: number,
): Float32Array | null {
  const filled = heightM.slice();
  let full = 0;
  for (let row = 0; row < rows; row++) {
    if (fillRun(filled, row * columns, 1, columns)) full++;
  }
  if (full === 0) return null;
  if (full === rows) return filled;
  for (let column = 0; column < columns; column++) fillRun(filled, column, columns, rows);
  return filled;
}

/** Fills one run of cells from its nearest heights; false when it holds none. */
function fillRun(values: Float32Array, start: number, stride: number, count: number): boolean {
  let last = -1;
  for (let k = 0; k < count; k++) {
    if (Number.isNaN(values[start + k * stride]!)) continue;
    const height = values[start + k * stride]!;
    const before = last < 0 ? height : values[start + last * stride]!;
    const middle = last < 0 ? -1 : (last + k) / 2;
    for (let gap = last + 1; gap < k; gap++) {
      values[start + gap * stride] = gap <= middle ? before : height;
    }
    last = k;
  }
  if (last < 0) return false;
  for (let gap = last + 1; gap < count; gap++) {
    values[start + gap * stride] = values[start + last * stride]!;
  }
  return true;
}

/**
 * Smooths a grid with the weights 1 2 1 along rows and then along columns, `times` over, so that the level
 * lines of noisy lidar read as ground and not as noise. Display only. Cells without data stay NaN and
 * lend no weight to their neighbours.
 * @param heightM columns x rows heights, row by row
 * @returns a new grid of the same size
 */
export function soften(
  heightM: Float32Array,
  columns: number,
  rows: number,
  times: number,
): Float32Array {
  let now = heightM;
  for (let pass = 0; pass < times; pass++) {
    now = along(now, rows, columns, columns, 1);
    now = along(now, columns, rows, 1, columns);
  }
  return now;
}

function along(
  heightM: Float32Array,
  runs: number,
  length: number,
  runStride: number,
  stride: number,
): Float32Array {
  const softened = new Float32Array(heightM.length);
  for (let run = 0; run < runs; run++) {
    for (let k = 0; k < length; k++) {
      const i = run * runStride + k * stride;
      const middle = heightM[i]!;
      const before = k > 0 ? heightM[i - stride]! : Number.NaN;
      const after = k < length - 1 ? heightM[i + stride]! : Number.NaN;
      const low = Number.isNaN(before) ? middle : before;
      const high = Number.isNaN(after) ? middle : after;
      softened[i] = (low + 2 * middle + high) / 4;
    }
  }
  return softened;
}

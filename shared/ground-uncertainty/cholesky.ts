/** What is added to a diagonal that rounding made not positive, as a share of it. */
const LEAST_PIVOT = 1e-12;

/**
 * Lower triangle L with L Lt = A, for a symmetric positive definite matrix of n rows, row by row; A is left as it is.
 * A pivot that rounding takes to zero or below is lifted to a trillionth of its diagonal.
 */
export function cholesky(matrix: Float64Array, n: number): Float64Array {
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      if (i === j) lower[i * n + i] = Math.sqrt(Math.max(sum, LEAST_PIVOT * matrix[i * n + i]!));
      else lower[i * n + j] = sum / lower[j * n + j]!;
    }
  }
  return lower;
}

/** Solves L Lt x = right into `out`, which may be `right`. */
export function solveCholesky(
  lower: Float64Array,
  n: number,
  right: Float64Array,
  out: Float64Array,
) {
  for (let i = 0; i < n; i++) {
    let sum = right[i]!;
    for (let k = 0; k < i; k++) sum -= lower[i * n + k]! * out[k]!;
    out[i] = sum / lower[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = out[i]!;
    for (let k = i + 1; k < n; k++) sum -= lower[k * n + i]! * out[k]!;
    out[i] = sum / lower[i * n + i]!;
  }
}

/** Multiplies a lower triangle by a vector into `out`, another array. */
export function timesLower(
  lower: Float64Array,
  n: number,
  vector: Float64Array,
  out: Float64Array,
) {
  for (let i = 0; i < n; i++) {
    const row = i * n;
    // Four sums side by side: each waits for its own last addition alone.
    let [a, b, c, d] = [0, 0, 0, 0];
    let k = 0;
    for (; k + 3 <= i; k += 4) {
      a += lower[row + k]! * vector[k]!;
      b += lower[row + k + 1]! * vector[k + 1]!;
      c += lower[row + k + 2]! * vector[k + 2]!;
      d += lower[row + k + 3]! * vector[k + 3]!;
    }
    for (; k <= i; k++) a += lower[row + k]! * vector[k]!;
    out[i] = a + b + (c + d);
  }
}

import type { LineSamples } from "../line-samples.ts";

/** A sum along the line of a quantity per metre, and the length on which it is not known. */
export interface Sum {
  readonly total: number;
  readonly lengthNoDataM: number;
}

/** Integrates a quantity per metre over the walk, straight between samples; NaN counts into the length. */
export function sumAlong(samples: LineSamples, valueAt: (sample: number) => number): Sum {
  let total = 0;
  let lengthNoDataM = 0;
  for (const { first, last } of samples.pieces) {
    for (let i = first; i < last; i++) {
      const stepM = samples.chainageM[i + 1]! - samples.chainageM[i]!;
      const part = ((valueAt(i) + valueAt(i + 1)) / 2) * stepM;
      if (Number.isNaN(part)) lengthNoDataM += stepM;
      else total += part;
    }
  }
  return { total, lengthNoDataM };
}

/** Length of line whose samples meet a condition, metres; each sample speaks for half a step either way. */
export function lengthWhere(samples: LineSamples, is: (sample: number) => boolean): number {
  return sumAlong(samples, (i) => (is(i) ? 1 : 0)).total;
}

/** Sample with the least finite value; null when there is none. */
export function leastAt(values: ArrayLike<number>): number | null {
  let least: number | null = null;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isFinite(value) && (least === null || value < values[least]!)) least = i;
  }
  return least;
}

/** Sample with the greatest finite value; null when there is none. */
export function greatestAt(values: ArrayLike<number>): number | null {
  const turned = leastAt(Float64Array.from(values, (value) => -value));
  return turned;
}

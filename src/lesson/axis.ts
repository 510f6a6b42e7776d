/** From where to where an axis runs, and its labels. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly labels: readonly number[];
}

const STEPS = [0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10, 25, 50, 100, 200, 500, 1000];

/**
 * An axis over a range that grows by whole steps, so that it stays where it is until something would leave it.
 * @param least range it always has
 * @param values what must have room on it
 * @param most most steps it is divided into
 */
export function axisFor(
  [least, greatest]: readonly [number, number],
  values: readonly number[],
  most: number,
): Axis {
  const low = Math.min(least, ...values);
  const high = Math.max(greatest, ...values);
  const step = STEPS.find((each) => (high - low) / each <= most) ?? (high - low) / most;
  const below = Math.ceil((least - low) / step - 1e-6);
  const above = Math.ceil((high - greatest) / step - 1e-6);
  const from = least - Math.max(0, below) * step;
  const to = greatest + Math.max(0, above) * step;
  const count = Math.floor((to - from) / step + 1e-6);
  return { from, to, labels: Array.from({ length: count + 1 }, (_, i) => from + i * step) };
}

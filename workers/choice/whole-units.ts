/**
 * Whole units in which the choice counts, so that a sum is exact: a bag, a liter of sand, a hundredth of a square
 * meter of sheeting, a thousandth of a person-hour, a thousandth of a weight. What a line takes is rounded up and
 * what there is down: no choice takes more than there is.
 */
export const UNITS_PER = {
  bags: 1,
  sandM3: 1000,
  sheetM2: 100,
  hours: 1000,
  weight: 1000,
} as const;

type Counted = keyof typeof UNITS_PER;

/** A figure this much past a whole unit is that unit: 0.1 + 0.2 takes no more than 0.3. */
const NEAR = 1e-6;

/** Whole units of what is needed. */
export function unitsNeeded(amount: number, counted: Counted): number {
  return Math.max(0, Math.ceil(amount * UNITS_PER[counted] - NEAR));
}

/** Whole units of what there is; Infinity where it is not limited. */
export function unitsThere(amount: number, counted: Counted): number {
  return Math.max(0, Math.floor(amount * UNITS_PER[counted] + NEAR));
}

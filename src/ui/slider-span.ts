/** What a figure may differ by after a change of units and back, in the person's unit. */
const TOLERANCE = 1e-6;

/** The whole units that a slider spans. */
export interface Span {
  readonly least: number;
  readonly most: number;
}

/** The whole units that hold figures, with a reach to either side. */
export function spanAround(figures: readonly number[], reach: number): Span {
  return {
    least: Math.floor(Math.min(...figures) - reach + TOLERANCE),
    most: Math.ceil(Math.max(...figures) + reach - TOLERANCE),
  };
}

/** Whether a value is on a scale, its two ends included. */
export function isOnSpan(value: number, { least, most }: Span): boolean {
  return value >= least - TOLERANCE && value <= most + TOLERANCE;
}

/** How far along a scale a value is, 0 to 1. */
export function shareOn(value: number, { least, most }: Span): number {
  return Math.min(1, Math.max(0, (value - least) / (most - least)));
}

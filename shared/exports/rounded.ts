/** A figure rounded as it is to be read; null where it is not known. */
export function decimals(value: number | null, digits: number): number | null {
  return value === null || !Number.isFinite(value) ? null : Number(value.toFixed(digits));
}

/** Digits of longitude and latitude in files: a tenth of a millimeter. */
export const DEGREE_DIGITS = 9;
/** Digits of meters in files whose format has no other unit. */
export const METRE_DIGITS = 3;

/** A figure rounded as it is to be read; null where it is not known. */
export function decimals(value: number | null, digits: number): number | null {
  return value === null || !Number.isFinite(value) ? null : Number(value.toFixed(digits));
}

/**
 * The five height classes of the drawing: quarters of the limit (1, 2, 3, 4 ft at the default 4 ft)
 * and over it. Same classes on map, profile, section, bar and sheets.
 */
export const HEIGHT_CLASSES = 5;

/** 0..3 for up to a quarter, half, three quarters, the whole of the limit; 4 over it; -1 where nothing is built or height is NaN. */
export function heightClass(greatestHeightM: number, limitM: number): number {
  if (!(greatestHeightM > 0)) return -1;
  if (greatestHeightM > limitM + 1e-9) return 4;
  return Math.min(3, Math.floor(((greatestHeightM - 1e-9) / limitM) * 4));
}

const LEAST_PX = 14;
const MOST_PX = 30;

/** Size of the calculation's type, pixels: 14 on 1024 x 768, 21.5 on 1920 x 1080, read from the back of a room. */
export function typeSizePx(widthPx: number, heightPx: number): number {
  const byWidth = 5.43 + 0.00837 * widthPx;
  const byHeight = 0.0199 * heightPx;
  return Math.max(LEAST_PX, Math.min(byWidth, byHeight, MOST_PX));
}

/**
 * Volume between two end areas by the average end area: L (A1 + A2) / 2.
 * Source: KHAMIS; VOSE arts 106-108.
 */
export function averageEndVolume(firstArea: number, lastArea: number, length: number): number {
  return (length * (firstArea + lastArea)) / 2;
}

/**
 * Volume by the prismoidal rule: L (A1 + 4 Am + A2) / 6, where Am is the area of the section measured
 * half way, not the mean of the end areas. Source: KHAMIS; VOSE arts 106-108.
 */
export function prismoidalVolume(
  firstArea: number,
  middleArea: number,
  lastArea: number,
  length: number,
): number {
  return (length * (firstArea + 4 * middleArea + lastArea)) / 6;
}

/** Share of an interval, 0..1, on which a quantity that runs straight from `from` to `to` lies above `level`. */
export function shareAbove(from: number, to: number, level: number): number {
  const high = Math.max(from, to);
  const low = Math.min(from, to);
  if (low > level) return 1;
  if (!(high > level)) return 0;
  return (high - level) / (high - low);
}

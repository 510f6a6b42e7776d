/**
 * Rain that runs off: Q = C i A, m3/s from m/s and m2; the 1.00833 of cfs, in/h and acre falls away in SI.
 * Source: rational method, RAT.
 */
export function runoffM3PerS(coefficient: number, rainMPerS: number, areaM2: number): number {
  return coefficient * rainMPerS * areaM2;
}

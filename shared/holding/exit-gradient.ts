import type { GradientClass, Spread } from "./types.ts";

/**
 * What was seen where the gradient through the top ground lay in a range; the ranges overlap, and above 0.8
 * new boils start. Source: NIX-11, quoting TM 3-424 (the flood of 1950).
 */
const SEEN: readonly (readonly [GradientClass, low: number, high: number])[] = [
  ["light", 0, 0.5],
  ["medium", 0.2, 0.6],
  ["heavy", 0.4, 0.7],
  ["boils", 0.5, 0.8],
  ["new-boils", 0.8, Number.POSITIVE_INFINITY],
];

/** Gradient that is accepted at the toe of existing levees. Source: NIX-11. */
export const ACCEPTED_GRADIENT = 0.5;

/** Every class a gradient lies in, the gravest last; none for a gradient that is not known. Source: NIX-11. */
export function gradientClasses(gradient: number): GradientClass[] {
  return SEEN.filter(([, low, high]) => gradient >= low && gradient <= high).map(([name]) => name);
}

/** Gradient at which sand floats: (G - 1) / (1 + e). Source: DAS 9.6. */
export function criticalGradient(specificGravity: number, voidRatio: number): number {
  return (specificGravity - 1) / (1 + voidRatio);
}

/** Critical gradients of quartz sands, void ratio 0.8 to 0.5. Source: DAS 9.6; the range of e from memory. */
export const CRITICAL: Spread = {
  low: criticalGradient(2.65, 0.8),
  high: criticalGradient(2.65, 0.5),
};

/**
 * Exit gradient at the landside toe of a tight base on deep pervious ground, the toe set in by a depth d:
 * G = (H / d) / (pi sqrt(lambda)), lambda = (1 + sqrt(1 + (b / d)^2)) / 2. Source: Khosla, from memory.
 * Tight ground below makes it less; a tight top layer over sand can make it more.
 */
export function exitGradient(headM: number, baseM: number, toeDepthM: number): number {
  const lambda = (1 + Math.hypot(1, baseM / toeDepthM)) / 2;
  return headM / toeDepthM / (Math.PI * Math.sqrt(lambda));
}

import type { Point } from "./types.ts";

export interface Crossing {
  /** Legs that cross, by the corner they start at. */
  readonly first: number;
  readonly second: number;
  readonly at: Point;
}

/** The first two legs of a closed line, not neighbours, that cross or touch; null when none do. */
export function crossingLegs(corners: readonly Point[]): Crossing | null {
  const count = corners.length;
  for (let first = 0; first < count; first++) {
    for (let second = first + 2; second < count; second++) {
      if (first === 0 && second === count - 1) continue;
      const at = meeting(
        corners[first]!,
        corners[first + 1]!,
        corners[second]!,
        corners[(second + 1) % count]!,
      );
      if (at) return { first, second, at };
    }
  }
  return null;
}

/** Where two straight pieces meet; null when they do not, or lie along each other. */
function meeting(a: Point, b: Point, c: Point, d: Point): Point | null {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const vx = d[0] - c[0];
  const vy = d[1] - c[1];
  const cross = ux * vy - uy * vx;
  if (cross === 0) return null;
  const wx = c[0] - a[0];
  const wy = c[1] - a[1];
  const s = (wx * vy - wy * vx) / cross;
  const t = (wx * uy - wy * ux) / cross;
  if (s < 0 || s > 1 || t < 0 || t > 1) return null;
  return [a[0] + s * ux, a[1] + s * uy];
}

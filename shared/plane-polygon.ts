import type { LonLat } from "./plan.ts";
import type { PlanPlane } from "./plan-plane.ts";

/** A closed outline on the plan plane; the first corner is not repeated. */
export interface PlanePolygon {
  readonly xM: readonly number[];
  readonly yM: readonly number[];
}

export function planePolygon(outline: readonly LonLat[], plane: PlanPlane): PlanePolygon {
  const points = outline.map((at) => plane.toPlane(at));
  return { xM: points.map((point) => point[0]), yM: points.map((point) => point[1]) };
}

/** Whether a point lies inside the outline (even-odd rule). */
export function isInside(polygon: PlanePolygon, x: number, y: number): boolean {
  const { xM, yM } = polygon;
  let inside = false;
  for (let i = 0, j = xM.length - 1; i < xM.length; j = i++) {
    const crosses = yM[i]! > y !== yM[j]! > y;
    if (crosses && x < ((xM[j]! - xM[i]!) * (y - yM[i]!)) / (yM[j]! - yM[i]!) + xM[i]!) {
      inside = !inside;
    }
  }
  return inside;
}

/** Distance from a point to the outline, metres; 0 inside it. */
export function distanceTo(polygon: PlanePolygon, x: number, y: number): number {
  if (isInside(polygon, x, y)) return 0;
  const { xM, yM } = polygon;
  let leastSquare = Number.POSITIVE_INFINITY;
  for (let i = 0, j = xM.length - 1; i < xM.length; j = i++) {
    const alongX = xM[i]! - xM[j]!;
    const alongY = yM[i]! - yM[j]!;
    const square = alongX * alongX + alongY * alongY;
    const raw = square > 0 ? ((x - xM[j]!) * alongX + (y - yM[j]!) * alongY) / square : 0;
    const share = Math.min(1, Math.max(0, raw));
    const dx = x - xM[j]! - share * alongX;
    const dy = y - yM[j]! - share * alongY;
    leastSquare = Math.min(leastSquare, dx * dx + dy * dy);
  }
  return Math.sqrt(leastSquare);
}

/** Whether the straight piece from a to b touches or enters the outline. */
export function pieceTouches(
  polygon: PlanePolygon,
  aX: number,
  aY: number,
  bX: number,
  bY: number,
): boolean {
  if (isInside(polygon, aX, aY) || isInside(polygon, bX, bY)) return true;
  const { xM, yM } = polygon;
  for (let i = 0, j = xM.length - 1; i < xM.length; j = i++) {
    if (piecesMeet(aX, aY, bX, bY, xM[j]!, yM[j]!, xM[i]!, yM[i]!) !== null) return true;
  }
  return false;
}

/**
 * Where two straight pieces a-b and c-d meet, as a share of a-b; null where they do not. Touching counts.
 * Of pieces that lie on one another the first common point of a-b is given.
 */
export function piecesMeet(
  aX: number,
  aY: number,
  bX: number,
  bY: number,
  cX: number,
  cY: number,
  dX: number,
  dY: number,
): number | null {
  const rX = bX - aX;
  const rY = bY - aY;
  const sX = dX - cX;
  const sY = dY - cY;
  const cross = rX * sY - rY * sX;
  const fromX = cX - aX;
  const fromY = cY - aY;
  const scale = Math.hypot(rX, rY) * Math.hypot(sX, sY);
  if (Math.abs(cross) > 1e-12 * scale) {
    const share = (fromX * sY - fromY * sX) / cross;
    const other = (fromX * rY - fromY * rX) / cross;
    return share >= 0 && share <= 1 && other >= 0 && other <= 1 ? share : null;
  }
  const square = rX * rX + rY * rY;
  const apart = Math.abs(fromX * rY - fromY * rX);
  if (square === 0 || apart > 1e-9 * square) return null;
  const start = (fromX * rX + fromY * rY) / square;
  const end = start + (sX * rX + sY * rY) / square;
  const low = Math.max(0, Math.min(start, end));
  return low <= Math.min(1, Math.max(start, end)) ? low : null;
}

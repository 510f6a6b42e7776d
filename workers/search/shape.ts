import type { Outline, Point } from "./types.ts";

/** An outline as flat arrays, with its bounding box and a point that lies inside it. Metres. */
export interface Shape {
  readonly count: number;
  readonly xM: Float64Array;
  readonly yM: Float64Array;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly inside: Point;
}

export function shapeOf(outline: Outline): Shape {
  const xM = Float64Array.from(outline, (each) => each[0]);
  const yM = Float64Array.from(outline, (each) => each[1]);
  const bare = {
    count: outline.length,
    xM,
    yM,
    minX: xM.reduce((a, b) => Math.min(a, b)),
    minY: yM.reduce((a, b) => Math.min(a, b)),
    maxX: xM.reduce((a, b) => Math.max(a, b)),
    maxY: yM.reduce((a, b) => Math.max(a, b)),
  };
  return { ...bare, inside: insidePoint(outline) };
}

/** Signed area of an outline, m2; positive when counter-clockwise. */
export function signedArea(outline: Outline): number {
  const [originX, originY] = outline[0] ?? [0, 0];
  let twice = 0;
  for (let i = 0; i < outline.length; i++) {
    const [x1, y1] = outline[i]!;
    const [x2, y2] = outline[(i + 1) % outline.length]!;
    twice += (x1 - originX) * (y2 - originY) - (x2 - originX) * (y1 - originY);
  }
  return twice / 2;
}

/** True when the point lies inside the outline (even-odd rule). */
export function contains(outline: Outline, xM: number, yM: number): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [xi, yi] = outline[i]!;
    const [xj, yj] = outline[j]!;
    if (yi > yM !== yj > yM && xM < ((xj - xi) * (yM - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

/** Distance from a point to a shape's edge, metres; negative inside. */
export function signedDistance(shape: Shape, x: number, y: number): number {
  const { xM, yM, count } = shape;
  let best = Infinity;
  let inside = false;
  let xj = xM[count - 1]!;
  let yj = yM[count - 1]!;
  for (let i = 0; i < count; i++) {
    const xi = xM[i]!;
    const yi = yM[i]!;
    const ex = xj - xi;
    const ey = yj - yi;
    const wx = x - xi;
    const wy = y - yi;
    if (yi > y !== yj > y && wx < (ex * wy) / ey) inside = !inside;
    const lengthSquared = ex * ex + ey * ey;
    let t = lengthSquared > 0 ? (wx * ex + wy * ey) / lengthSquared : 0;
    if (t < 0) t = 0;
    else if (t > 1) t = 1;
    const dx = wx - t * ex;
    const dy = wy - t * ey;
    const d = dx * dx + dy * dy;
    if (d < best) best = d;
    xj = xi;
    yj = yi;
  }
  const distance = Math.sqrt(best);
  return inside ? -distance : distance;
}

/** How near a leg comes to a shape, and where. */
export interface Nearest {
  /** Metres; 0 when they touch, cross, or the leg lies inside. */
  distance: number;
  /** Place on the leg, 0..1. */
  share: number;
}

/** Finds where a leg is nearest to a shape; writes into `out`. */
export function legNearest(
  out: Nearest,
  shape: Shape,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): void {
  const { xM, yM, count } = shape;
  const ux = x2 - x1;
  const uy = y2 - y1;
  const legSquared = ux * ux + uy * uy;
  let best = Infinity;
  let share = 0;
  let inside = false;
  let xj = xM[count - 1]!;
  let yj = yM[count - 1]!;
  for (let i = 0; i < count; i++) {
    const xi = xM[i]!;
    const yi = yM[i]!;
    const ex = xj - xi;
    const ey = yj - yi;
    const edgeSquared = ex * ex + ey * ey;
    const ax = x1 - xi;
    const ay = y1 - yi;
    if (yi > y1 !== yj > y1 && ax < (ex * ay) / ey) inside = !inside;
    const cross = ux * ey - uy * ex;
    if (cross !== 0) {
      const s = (ay * ex - ax * ey) / cross;
      const t = (ay * ux - ax * uy) / cross;
      if (s >= 0 && s <= 1 && t >= 0 && t <= 1) {
        out.distance = 0;
        out.share = s;
        return;
      }
    }
    const fromStart = offSegment(ax, ay, ex, ey, edgeSquared);
    const fromEnd = offSegment(x2 - xi, y2 - yi, ex, ey, edgeSquared);
    const fromCorner = offSegment(-ax, -ay, ux, uy, legSquared);
    if (fromStart < best) {
      best = fromStart;
      share = 0;
    }
    if (fromEnd < best) {
      best = fromEnd;
      share = 1;
    }
    if (fromCorner < best) {
      best = fromCorner;
      share = Math.max(0, Math.min(1, -(ax * ux + ay * uy) / legSquared));
    }
    xj = xi;
    yj = yi;
  }
  out.distance = inside ? 0 : Math.sqrt(best);
  out.share = share;
}

/** Squared distance from (wx, wy) to the segment from the origin along (ex, ey). */
function offSegment(wx: number, wy: number, ex: number, ey: number, lengthSquared: number): number {
  let t = lengthSquared > 0 ? (wx * ex + wy * ey) / lengthSquared : 0;
  if (t < 0) t = 0;
  else if (t > 1) t = 1;
  const dx = wx - t * ex;
  const dy = wy - t * ey;
  return dx * dx + dy * dy;
}

/** A point well inside: the middle of the widest span over a few heights. */
function insidePoint(outline: Outline): Point {
  const ys = outline.map((each) => each[1]);
  const low = Math.min(...ys);
  const high = Math.max(...ys);
  let best: Point = outline[0]!;
  let widest = -1;
  for (let k = 1; k < 16; k++) {
    const y = low + ((high - low) * (k + 0.0137)) / 16;
    const cuts = crossingsAt(outline, y);
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      const width = Math.min(cuts[i + 1]! - cuts[i]!, 4 * Math.min(y - low, high - y));
      if (width <= widest) continue;
      widest = width;
      best = [(cuts[i]! + cuts[i + 1]!) / 2, y];
    }
  }
  return best;
}

function crossingsAt(outline: Outline, y: number): number[] {
  const cuts: number[] = [];
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [xi, yi] = outline[i]!;
    const [xj, yj] = outline[j]!;
    if (yi > y !== yj > y) cuts.push(((xj - xi) * (y - yi)) / (yj - yi) + xi);
  }
  return cuts.sort((a, b) => a - b);
}

import { DEGREE_M } from "../constants.ts";
import type { LonLat } from "../plan.ts";

/** Smaller or narrower in the mean is no building. Source: judgement. */
const LEAST_AREA_M2 = 4;
const LEAST_WIDTH_M = 0.5;
/** Outlines are the same whose corners differ by less than about this, degrees: 1 cm. */
const SAME_DEGREES = 1e-7;

type Outlines = readonly (readonly LonLat[])[];

/** Area of outlines, square meters, to about a hundredth. */
export function areaM2(parts: Outlines): number {
  return parts.reduce((sum, part) => sum + measures(part).areaM2, 0);
}

/** Whether outlines are too small or too narrow for a building. */
export function isSliver(parts: Outlines): boolean {
  const perimeterM = parts.reduce((sum, part) => sum + measures(part).perimeterM, 0);
  const area = areaM2(parts);
  return area < LEAST_AREA_M2 || (2 * area) / perimeterM < LEAST_WIDTH_M;
}

function measures(outline: readonly LonLat[]) {
  const [lon0, lat0] = outline[0] ?? [0, 0];
  const east = DEGREE_M * Math.cos((lat0 * Math.PI) / 180);
  const places = outline.map(([lon, lat]) => [(lon - lon0) * east, (lat - lat0) * DEGREE_M]);
  let [twice, perimeterM] = [0, 0];
  places.forEach(([x, y], i) => {
    const [nextX, nextY] = places[(i + 1) % places.length]!;
    twice += x! * nextY! - nextX! * y!;
    perimeterM += Math.hypot(nextX! - x!, nextY! - y!);
  });
  return { areaM2: Math.abs(twice) / 2, perimeterM };
}

/** The same for outlines with the same corners, wherever they start, whichever way they run, in any order of parts. */
export function outlineKey(parts: Outlines): string {
  return parts.map(partKey).sort().join(" | ");
}

function partKey(outline: readonly LonLat[]): string {
  const corners = outline.map(
    ([lon, lat]) => `${Math.round(lon / SAME_DEGREES)},${Math.round(lat / SAME_DEGREES)}`,
  );
  const first = corners.reduce((least, corner, i) => (corner < corners[least]! ? i : least), 0);
  const forward = [...corners.slice(first), ...corners.slice(0, first)];
  const backward = [forward[0]!, ...forward.slice(1).reverse()];
  return [forward.join(" "), backward.join(" ")].sort()[0]!;
}

/** Whether two sides of an outline that are not neighbors meet. */
export function crossesItself(outline: readonly LonLat[]): boolean {
  const count = outline.length;
  const sides = outline.map((from, i) => {
    const to = outline[(i + 1) % count]!;
    return { from, to, index: i, west: Math.min(from[0], to[0]), east: Math.max(from[0], to[0]) };
  });
  const byWest = [...sides].sort((a, b) => a.west - b.west);
  return byWest.some((a, i) => {
    for (let j = i + 1; j < count && byWest[j]!.west <= a.east; j++) {
      const b = byWest[j]!;
      const apart = Math.abs(a.index - b.index);
      if (apart > 1 && apart < count - 1 && meet(a.from, a.to, b.from, b.to)) return true;
    }
    return false;
  });
}

function meet(a: LonLat, b: LonLat, c: LonLat, d: LonLat): boolean {
  const side = (p: LonLat, q: LonLat, r: LonLat) =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  const on = (p: LonLat, q: LonLat, r: LonLat) =>
    side(p, q, r) === 0 &&
    [0, 1].every((axis) => {
      const [u, v, w] = [p[axis]!, q[axis]!, r[axis]!];
      return w >= Math.min(u, v) && w <= Math.max(u, v);
    });
  const crosses = side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
  return crosses || on(a, b, c) || on(a, b, d) || on(c, d, a) || on(c, d, b);
}

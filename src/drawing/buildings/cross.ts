import type { LonLat } from "../../../shared/plan.ts";

type Spot = readonly [number, number];

/** The two diagonals of the box round an outline that lies along its longest side. */
export function crossOf(outline: readonly LonLat[]): readonly (readonly LonLat[])[] {
  const [lon0, lat0] = outline[0]!;
  const shrink = Math.cos((lat0 * Math.PI) / 180);
  const flat = outline.map(([lon, lat]): Spot => [(lon - lon0) * shrink, lat - lat0]);
  const [ux, uy] = longestWay(flat);
  const along = flat.map(([x, y]) => x * ux + y * uy);
  const across = flat.map(([x, y]) => y * ux - x * uy);
  const [a, b] = [Math.min(...along), Math.max(...along)];
  const [c, d] = [Math.min(...across), Math.max(...across)];
  const back = (u: number, v: number): LonLat => [
    lon0 + (u * ux - v * uy) / shrink,
    lat0 + u * uy + v * ux,
  ];
  return [
    [back(a, c), back(b, d)],
    [back(a, d), back(b, c)],
  ];
}

/** Unit vector of the longest side. */
function longestWay(corners: readonly Spot[]): Spot {
  let [best, way]: [number, Spot] = [0, [1, 0]];
  for (const [i, [x, y]] of corners.entries()) {
    const [nextX, nextY] = corners[(i + 1) % corners.length]!;
    const length = Math.hypot(nextX - x, nextY - y);
    if (length > best) [best, way] = [length, [(nextX - x) / length, (nextY - y) / length]];
  }
  return way;
}

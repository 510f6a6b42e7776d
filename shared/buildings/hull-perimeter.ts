import { convexHull } from "../convex-hull.ts";
import type { LonLat } from "../plan.ts";
import { metersPerDegree } from "./near-buildings.ts";

/** Length round the convex hull of places within a few hundred meters of each other, meters. */
export function hullPerimeterM(places: readonly LonLat[]): number {
  const [lon0, lat0] = places[0]!;
  const [perLon, perLat] = metersPerDegree(lat0);
  const hull = convexHull(
    places.map(([lon, lat]) => [(lon - lon0) * perLon, (lat - lat0) * perLat]),
  );
  return hull.reduce((total, [x, y], k) => {
    const [nextX, nextY] = hull[(k + 1) % hull.length]!;
    return total + Math.hypot(nextX - x, nextY - y);
  }, 0);
}

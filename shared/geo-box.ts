import type { LonLat } from "./plan.ts";

export type GeoBox = readonly [west: number, south: number, east: number, north: number];

/** The box around places; null without any. */
export function geoBoxOf(places: Iterable<LonLat>): GeoBox | null {
  let [west, south] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [east, north] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const [lon, lat] of places) {
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  }
  return west <= east ? [west, south, east, north] : null;
}

/** The middle of the box around corners, at least one. */
export function middleOf(corners: readonly LonLat[]): LonLat {
  const [west, south, east, north] = geoBoxOf(corners)!;
  return [(west + east) / 2, (south + north) / 2];
}

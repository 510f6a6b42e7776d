import type { LonLat } from "../../shared/plan.ts";

/** Pixels along one side of a display tile. */
export const TILE_PX = 256;

const DEGREES = 180 / Math.PI;

/** West edge of the world 0, east edge 1. Source: EPSG:3857, scaled to the unit square. */
export function mercatorX(lon: number): number {
  return (lon + 180) / 360;
}

/** North 0, south 1; latitudes beyond 85.05 degrees lie outside. */
export function mercatorY(lat: number): number {
  return 0.5 - Math.log(Math.tan(Math.PI / 4 + lat / DEGREES / 2)) / (2 * Math.PI);
}

/** Inverse of {@link mercatorX} and {@link mercatorY}. */
export function fromMercator(x: number, y: number): [number, number] {
  return [x * 360 - 180, Math.atan(Math.sinh(Math.PI * (1 - 2 * y))) * DEGREES];
}

/** Position on a tile in its pixels (0,0 = upper left corner of the upper left pixel). */
export function tilePixel(tile: { z: number; x: number; y: number }, at: LonLat): [number, number] {
  const scale = 2 ** tile.z * TILE_PX;
  return [mercatorX(at[0]) * scale - tile.x * TILE_PX, mercatorY(at[1]) * scale - tile.y * TILE_PX];
}

/** Longitude and latitude of a place on a tile given in its pixels. */
export function tileLonLat(
  tile: { z: number; x: number; y: number },
  px: number,
  py: number,
): [number, number] {
  const scale = 2 ** tile.z;
  return fromMercator((tile.x + px / TILE_PX) / scale, (tile.y + py / TILE_PX) / scale);
}

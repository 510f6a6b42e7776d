import { drawnOutline } from "../../shared/drawn-outline.ts";
import type { CallOptions, TileRequest, TileResponse } from "../../shared/messages.ts";
import type { Terrain } from "../raster/terrain.ts";
import { TILE_PX, tileLonLat, tilePixel } from "./mercator.ts";

/** Grids kept: a view of three pictures of the same tiles reads each from the raster once. */
const KEPT = 48;

const kept = new WeakMap<Terrain, Map<string, Promise<TileGrid>>>();

/** Heights at the pixel centres of one display tile. */
export interface TileGrid {
  /** TILE_PX x TILE_PX heights in metres from the north west, row by row; NaN where there is no data. */
  readonly heightM: Float32Array;
  /** Share of the raster that is read, while it is being read; `heightM` has `UNREAD_M` where it is not. Null: all is there. */
  readonly share: number | null;
  /** True where the raster's own outline covers the pixel, so that NaN there is a hole and not the outside. */
  covers(column: number, row: number): boolean;
}

/** What a tile's answer says of a raster that is still being read. */
export function shareOf({ share }: TileGrid): Pick<TileResponse, "share"> {
  return share === null ? {} : { share };
}

/**
 * Reads the heights of a display tile; null when the tile lies outside the raster.
 * A failed read is not kept.
 */
export function tileGrid(
  terrain: Terrain,
  tile: TileRequest,
  options?: CallOptions,
): Promise<TileGrid> | null {
  if (!touches(terrain, tile)) return null;
  const grids = kept.get(terrain) ?? new Map<string, Promise<TileGrid>>();
  kept.set(terrain, grids);
  const key = `${tile.turn}/${tile.z}/${tile.x}/${tile.y}`;
  const known = grids.get(key);
  if (known) return known;
  const reading = read(terrain, tile, options);
  grids.set(key, reading);
  reading.catch(() => grids.delete(key));
  if (grids.size > KEPT) grids.delete(grids.keys().next().value!);
  return reading;
}

async function read(
  terrain: Terrain,
  tile: TileRequest,
  options: CallOptions | undefined,
): Promise<TileGrid> {
  let part: number | null = null;
  const heightM = await terrain.readGrid(
    (column, row) => tileLonLat(tile, column + 0.5, row + 0.5),
    TILE_PX,
    TILE_PX,
    {
      ...options,
      onPart: (share) => {
        part = share;
      },
    },
  );
  return { heightM, share: part, covers: outlineOn(terrain, tile) };
}

function touches(terrain: Terrain, tile: TileRequest): boolean {
  const [west, south, east, north] = terrain.summary.bounds;
  const [left, top] = tilePixel(tile, [west, north]);
  const [right, bottom] = tilePixel(tile, [east, south]);
  return right > 0 && left < TILE_PX && bottom > 0 && top < TILE_PX;
}

/**
 * Test for "inside the raster's outline" in tile pixels. The outline is a quadrilateral,
 * drawn in by a pixel and a half and by the sag of its edges, which on the mercator picture are
 * slightly bent (2.5e-4 of their length covers a 10 km raster at 70 degrees north).
 */
function outlineOn(terrain: Terrain, tile: TileRequest): (column: number, row: number) => boolean {
  const corners = drawnOutline(terrain.summary).map((corner) => tilePixel(tile, corner));
  const sides = corners.map((from, index) => {
    const to = corners[(index + 1) % corners.length]!;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
    const alongX = (to[0] - from[0]) / length;
    const alongY = (to[1] - from[1]) / length;
    return { from, alongX, alongY, inset: 1.5 + 2.5e-4 * length };
  });
  return (column, row) =>
    sides.every(({ from, alongX, alongY, inset }) => {
      const inwards = alongX * (row + 0.5 - from[1]) - alongY * (column + 0.5 - from[0]);
      return inwards > inset;
    });
}

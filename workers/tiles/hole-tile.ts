import type { CallOptions, TileRequest, TileResponse } from "../../shared/messages.ts";
import type { Terrain } from "../raster/terrain.ts";
import { TILE_PX } from "./mercator.ts";
import { shareOf, tileGrid } from "./tile-grid.ts";

/** Distance between the lines of the hatch; it divides the tile, so that the hatch runs on across tiles. */
const PITCH_PX = 8;
/** A tone that reads on the light and on the dark colour of missing ground. */
const HATCH = [128, 119, 104, 255] as const;

/**
 * Picture of the cells without data inside the raster's outline: lines from lower left to upper right,
 * transparent between them and elsewhere. `rgba` is null when the tile holds no such cell.
 */
export async function holeTile(
  terrain: Terrain,
  request: TileRequest,
  options?: CallOptions,
): Promise<TileResponse> {
  const grid = await tileGrid(terrain, request, options);
  if (!grid) return { rgba: null, holes: false };
  const rgba = new Uint8ClampedArray(TILE_PX * TILE_PX * 4);
  let holes = false;
  for (let i = 0; i < grid.heightM.length; i++) {
    const column = i % TILE_PX;
    const row = Math.floor(i / TILE_PX);
    if (!Number.isNaN(grid.heightM[i]!) || !grid.covers(column, row)) continue;
    holes = true;
    if ((column + row) % PITCH_PX < 2) rgba.set(HATCH, 4 * i);
  }
  return { rgba: holes ? rgba : null, holes, ...shareOf(grid) };
}

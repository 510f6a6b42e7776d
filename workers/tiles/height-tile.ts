import {
  type CallOptions,
  type HeightTileRequest,
  HOLE_DISPLAY_M,
  type TileRequest,
  type TileResponse,
  UNREAD_DISPLAY_M,
} from "../../shared/messages.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { UNREAD_M } from "../raster/built-overview.ts";
import type { Terrain } from "../raster/terrain.ts";
import { fillHoles } from "./fill-holes.ts";
import { TILE_PX, tileLonLat } from "./mercator.ts";
import { shareOf, tileGrid } from "./tile-grid.ts";

/** Cells along one side of the lattice on which the tilt of the water is computed exactly. */
const LATTICE = 8;

/**
 * Heights of one display tile, Terrarium-encoded: height = 256 R + G + B / 256 - 32768.
 * Plain heights, or relative to a falling water plane (`fall`), with `HOLE_DISPLAY_M` where there is no
 * data and `UNREAD_DISPLAY_M` where it is not read yet; or for shading (`relief`) stretched about a base, with the
 * holes filled from their rim and what is not read yet flat.
 * `rgba` is null when the tile lies outside the raster, or nothing of it is read yet.
 */
export async function heightTile(
  terrain: Terrain,
  request: HeightTileRequest,
  options?: CallOptions,
): Promise<TileResponse> {
  const grid = await tileGrid(terrain, request, options);
  if (!grid) return { rgba: null, holes: false };
  const holes = hasHole(grid.heightM, grid.covers);
  const said = { holes, ...shareOf(grid) };
  const isUnread = (index: number): boolean => grid.heightM[index] === UNREAD_M;
  if (request.relief) {
    const { baseM, scale } = request.relief;
    const read = grid.heightM.map((heightM) => (heightM === UNREAD_M ? Number.NaN : heightM));
    const filled = fillHoles(read, TILE_PX, TILE_PX);
    if (!filled) return { rgba: null, ...said };
    const stretched = (heightM: number, index: number) =>
      isUnread(index) ? 0 : (heightM - baseM) * scale;
    return { rgba: encode(filled, stretched), ...said };
  }
  if (grid.heightM.every((heightM) => heightM === UNREAD_M)) return { rgba: null, ...said };
  const dropM = request.fall ? dropOver(request, request.fall) : null;
  const shown = (heightM: number, index: number): number => {
    if (isUnread(index)) return UNREAD_DISPLAY_M;
    if (Number.isNaN(heightM)) return HOLE_DISPLAY_M;
    return dropM ? heightM + dropM[index]! : heightM;
  };
  return { rgba: encode(grid.heightM, shown), ...said };
}

function encode(
  heightM: Float32Array,
  shown: (heightM: number, index: number) => number,
): Uint8ClampedArray<ArrayBuffer> {
  const rgba = new Uint8ClampedArray(heightM.length * 4);
  for (let i = 0; i < heightM.length; i++) {
    const steps = Math.round((shown(heightM[i]!, i) + 32768) * 256);
    const held = Math.min(0xffffff, Math.max(0, steps));
    rgba[4 * i] = held >> 16;
    rgba[4 * i + 1] = (held >> 8) & 0xff;
    rgba[4 * i + 2] = held & 0xff;
    rgba[4 * i + 3] = 255;
  }
  return rgba;
}

function hasHole(heightM: Float32Array, covers: (column: number, row: number) => boolean): boolean {
  for (let i = 0; i < heightM.length; i++) {
    if (Number.isNaN(heightM[i]!) && covers(i % TILE_PX, Math.floor(i / TILE_PX))) return true;
  }
  return false;
}

/**
 * How far the water has fallen at each pixel centre since the reference point, metres: adding it to the
 * ground makes the tilted water plane one level. Exact on a coarse lattice of the tile, bilinear between.
 */
function dropOver(tile: TileRequest, fall: NonNullable<HeightTileRequest["fall"]>): Float32Array {
  const plane = planPlane(fall.at);
  const [towardX, towardY] = plane.toPlane(fall.toward);
  const reach = Math.hypot(towardX, towardY) || 1;
  const exact = new Float64Array((LATTICE + 1) ** 2);
  for (let k = 0; k < exact.length; k++) {
    const px = ((k % (LATTICE + 1)) * TILE_PX) / LATTICE;
    const py = (Math.floor(k / (LATTICE + 1)) * TILE_PX) / LATTICE;
    const [x, y] = plane.toPlane(tileLonLat(tile, px, py));
    exact[k] = (fall.fallPerM * (x * towardX + y * towardY)) / reach;
  }
  const drop = new Float32Array(TILE_PX * TILE_PX);
  for (let i = 0; i < drop.length; i++) {
    const u = (((i % TILE_PX) + 0.5) * LATTICE) / TILE_PX;
    const v = ((Math.floor(i / TILE_PX) + 0.5) * LATTICE) / TILE_PX;
    const column = Math.floor(u);
    const row = Math.floor(v);
    const k = row * (LATTICE + 1) + column;
    const upper = exact[k]! + (exact[k + 1]! - exact[k]!) * (u - column);
    const below = k + LATTICE + 1;
    const lower = exact[below]! + (exact[below + 1]! - exact[below]!) * (u - column);
    drop[i] = upper + (lower - upper) * (v - row);
  }
  return drop;
}

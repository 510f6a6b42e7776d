import { Refusal } from "../../shared/failure.ts";
import type { LonLat } from "../../shared/plan.ts";
import { bilinear } from "./bilinear.ts";
import type { BlockStore } from "./block-store.ts";
import type { Locator } from "./locate.ts";
import { type Mosaic, type Part, readMosaic } from "./mosaic.ts";
import type { OpenRaster, RasterLevel } from "./open-raster.ts";
import { type PixelPlaces, pixelPlaces } from "./pixel-places.ts";
import { onEdge } from "./sampler.ts";
import { type CellWindow, emptyWindow, fillFromLevel, type WindowCells } from "./window.ts";

/** The largest picture made at once, pixels. */
const MOST_PIXELS = 16_777_216;

/** An overview is used when its cells are at most this many output pixels wide. */
const COARSEST_CELL_PIXELS = 1.25;

type Levels = ReadonlyMap<OpenRaster, readonly RasterLevel[]>;

/**
 * Heights at the centres of a picture's pixels, metres, NaN where there is no data. Each file is read at
 * the resolution that suits the pixels; full resolution is never held whole.
 * @param project longitude and latitude of an output pixel's centre
 * @throws Refusal `ground/picture-too-large` above 16.7 million pixels
 */
export async function readGrid(
  mosaic: Mosaic,
  levels: Levels,
  locator: Locator,
  store: BlockStore,
  project: (column: number, row: number) => LonLat,
  width: number,
  height: number,
): Promise<Float32Array> {
  if (width * height > MOST_PIXELS) {
    throw new Refusal(
      "ground/picture-too-large",
      `A picture of ${width} x ${height} pixels was asked for; at most ${MOST_PIXELS} are made at once.`,
      "Ask for a smaller picture.",
    );
  }
  const places = pixelPlaces(project, locator, width, height);
  const heightsM = new Float32Array(width * height).fill(Number.NaN);
  if (places.cellsPerPixel * COARSEST_CELL_PIXELS < 2) {
    await fillFull(heightsM, places, mosaic, levels, store);
    return heightsM;
  }
  for (const part of mosaic.parts) await fillPart(heightsM, places, part, levels, store);
  return heightsM;
}

/** At full resolution the files are joined first, so that their seams are exact. */
async function fillFull(
  heightsM: Float32Array,
  places: PixelPlaces,
  mosaic: Mosaic,
  levels: Levels,
  store: BlockStore,
): Promise<void> {
  const window = windowAround(places, mosaic, 1, 1, 0, 0);
  if (!window) return;
  const cells = await readMosaic(mosaic, levels, window, store);
  interpolate(heightsM, places, cells, mosaic, 1, 1, 0, 0);
}

async function fillPart(
  heightsM: Float32Array,
  places: PixelPlaces,
  part: Part,
  levels: Levels,
  store: BlockStore,
): Promise<void> {
  const { raster, column, row } = part;
  const coarsest = places.cellsPerPixel * COARSEST_CELL_PIXELS;
  const fine = levels.get(raster)!;
  const level = fine.findLast((each) => raster.columns / each.columns <= coarsest) ?? fine[0]!;
  const perColumn = level.columns / raster.columns;
  const perRow = level.rows / raster.rows;
  const window = windowAround(places, level, perColumn, perRow, column, row);
  if (!window) return;
  const cells = emptyWindow(window);
  await fillFromLevel(cells, level, store);
  interpolate(heightsM, places, cells, level, perColumn, perRow, column, row);
}

interface Size {
  readonly columns: number;
  readonly rows: number;
}

/** The cells of a level that the picture touches; null when it touches none. */
function windowAround(
  places: PixelPlaces,
  size: Size,
  perColumn: number,
  perRow: number,
  column: number,
  row: number,
): CellWindow | null {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < places.columns.length; i++) {
    const x = onEdge((places.columns[i]! + 0.5 - column) * perColumn - 0.5, size.columns - 1);
    const y = onEdge((places.rows[i]! + 0.5 - row) * perRow - 0.5, size.rows - 1);
    if (Number.isNaN(x) || Number.isNaN(y)) continue;
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  if (left > right) return null;
  const first = { column: Math.floor(left), row: Math.floor(top) };
  return {
    ...first,
    columns: Math.min(size.columns, Math.ceil(right) + 1) - first.column,
    rows: Math.min(size.rows, Math.ceil(bottom) + 1) - first.row,
  };
}

/** Writes the pixels that have no height yet. */
function interpolate(
  heightsM: Float32Array,
  places: PixelPlaces,
  cells: WindowCells,
  size: Size,
  perColumn: number,
  perRow: number,
  column: number,
  row: number,
): void {
  for (let i = 0; i < heightsM.length; i++) {
    if (!Number.isNaN(heightsM[i]!)) continue;
    const x = onEdge((places.columns[i]! + 0.5 - column) * perColumn - 0.5, size.columns - 1);
    const y = onEdge((places.rows[i]! + 0.5 - row) * perRow - 0.5, size.rows - 1);
    heightsM[i] = bilinear(
      cells.heightsM,
      cells.columns,
      cells.rows,
      x - cells.column,
      y - cells.row,
    );
  }
}

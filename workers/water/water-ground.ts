import type { CallOptions } from "../../shared/messages.ts";
import type { LonLat } from "../../shared/plan.ts";
import type { Terrain } from "../raster/terrain.ts";
import type { CellWindow } from "../raster/window.ts";
import { emptyFrame, makeGrid, writeRows } from "./frame-heights.ts";
import type { GridPlace, WaterGrid } from "./water-grid.ts";

/** The ground that water is traced on. */
export interface WaterGround {
  /**
   * The raster's own cells, unresampled: all of them, or those about the plan when there are too many. Cells of
   * the raster and not samples between them, so that a count of cells is the raster's and a bank one cell wide
   * keeps its crest.
   */
  readonly near: WaterGrid;
  /** All of the ground in coarser cells, when `near` is not all of it; else null. */
  readonly whole: WaterGrid | null;
}

/** How much ground is traced at once. */
export interface GroundLimits {
  /** Most cells traced one by one. */
  readonly cells: number;
  /** Most coarser cells when the ground has more. */
  readonly coarseCells: number;
  /** Ground wanted round the plan before it is read again, in cells. */
  readonly margin: number;
}

const GROUND_LIMITS: GroundLimits = {
  cells: 4096 * 4096,
  coarseCells: 4_000_000,
  margin: 256,
};
const BAND_ROWS = 256;

interface Held {
  near: { readonly window: CellWindow; readonly grid: Promise<WaterGrid> } | null;
  whole: Promise<WaterGrid> | null;
}

const held = new WeakMap<Terrain, Held>();

/**
 * Reads the ground for tracing, once: what was read is kept as long as the terrain is.
 * @param around corners of what the plan holds
 */
export async function readWaterGround(
  terrain: Terrain,
  around: readonly LonLat[],
  options: CallOptions = {},
  limits: GroundLimits = GROUND_LIMITS,
): Promise<WaterGround> {
  const kept = held.get(terrain) ?? { near: null, whole: null };
  held.set(terrain, kept);
  const { columns, rows } = terrain.summary;
  const wanted = boxOf(terrain, around);
  const everything = { column: 0, row: 0, columns, rows };
  const isWhole = columns * rows <= limits.cells;
  const window = isWhole ? everything : windowAbout(wanted, columns, rows, limits);
  const near = window && nearGrid(terrain, kept, padded(wanted, limits.margin), window, options);
  const whole = isWhole ? null : await wholeGrid(terrain, kept, limits, options);
  return near ? { near: await near, whole } : { near: whole!, whole };
}

function nearGrid(
  terrain: Terrain,
  kept: Held,
  wanted: CellWindow,
  window: CellWindow,
  options: CallOptions,
): Promise<WaterGrid> {
  if (kept.near && holds(kept.near.window, wanted, terrain.summary)) return kept.near.grid;
  const grid = readWindow(terrain, window, options);
  const fresh = { window, grid };
  kept.near = fresh;
  grid.catch(() => {
    if (kept.near === fresh) kept.near = null;
  });
  return grid;
}

function wholeGrid(
  terrain: Terrain,
  kept: Held,
  limits: GroundLimits,
  options: CallOptions,
): Promise<WaterGrid> {
  if (kept.whole) return kept.whole;
  const grid = readCoarse(terrain, limits, options);
  kept.whole = grid;
  grid.catch(() => {
    kept.whole = null;
  });
  return grid;
}

async function readWindow(
  { cells }: Terrain,
  { column, row, columns, rows }: CellWindow,
  { onProgress }: CallOptions,
): Promise<WaterGrid> {
  const framed = emptyFrame(columns, rows);
  for (let done = 0; done < rows; done += BAND_ROWS) {
    const band = { column, row: row + done, columns, rows: Math.min(BAND_ROWS, rows - done) };
    writeRows(framed, columns, done, (await cells.read(band)).heightsM);
    onProgress?.((0.7 * done) / rows, "Reading the ground");
  }
  const place: GridPlace = {
    toCell: (longitude, latitude) => {
      const [x, y] = cells.toCell(longitude, latitude);
      return [x - column, y - row];
    },
    toLonLat: (x, y) => cells.toLonLat(x + column, y + row),
  };
  return makeGrid(columns, rows, framed, place);
}

async function readCoarse(
  { cells, summary, readGrid }: Terrain,
  { coarseCells }: GroundLimits,
  options: CallOptions,
): Promise<WaterGrid> {
  const factor = Math.ceil(Math.sqrt((summary.columns * summary.rows) / coarseCells));
  const columns = Math.floor(summary.columns / factor);
  const rows = Math.floor(summary.rows / factor);
  const fine = (place: number) => (place + 0.5) * factor - 0.5;
  const place: GridPlace = {
    toCell: (longitude, latitude) => {
      const [x, y] = cells.toCell(longitude, latitude);
      return [(x + 0.5) / factor - 0.5, (y + 0.5) / factor - 0.5];
    },
    toLonLat: (x, y) => cells.toLonLat(fine(x), fine(y)),
  };
  const framed = emptyFrame(columns, rows);
  writeRows(framed, columns, 0, await readGrid(place.toLonLat, columns, rows, options));
  return makeGrid(columns, rows, framed, place);
}

/** The cells that places lie in, as a window; a spot in the middle of the ground when there are none. */
function boxOf({ cells, summary }: Terrain, around: readonly LonLat[]): CellWindow {
  const clamp = (value: number, last: number) => Math.min(last, Math.max(0, Math.round(value)));
  const spots = around
    .map(([longitude, latitude]) => cells.toCell(longitude, latitude))
    .filter(([x, y]) => Number.isFinite(x + y));
  if (spots.length === 0) spots.push([summary.columns / 2, summary.rows / 2]);
  const xs = spots.map(([x]) => clamp(x, summary.columns - 1));
  const ys = spots.map(([, y]) => clamp(y, summary.rows - 1));
  const [column, row] = [Math.min(...xs), Math.min(...ys)];
  return {
    ...{ column, row },
    columns: Math.max(...xs) - column + 1,
    rows: Math.max(...ys) - row + 1,
  };
}

/** The largest window about a box that can be traced cell by cell; null when the box itself is too large. */
function windowAbout(
  box: CellWindow,
  columns: number,
  rows: number,
  { cells, margin }: GroundLimits,
): CellWindow | null {
  const wide = Math.min(columns, Math.max(Math.floor(Math.sqrt(cells)), box.columns + 2 * margin));
  const high = Math.min(rows, Math.floor(cells / wide));
  if (high < Math.min(rows, box.rows + 2 * margin)) return null;
  const broad = Math.min(columns, Math.floor(cells / high));
  const start = (middle: number, size: number, all: number) =>
    Math.round(Math.min(all - size, Math.max(0, middle - size / 2)));
  return {
    column: start(box.column + box.columns / 2, broad, columns),
    row: start(box.row + box.rows / 2, high, rows),
    columns: broad,
    rows: high,
  };
}

function padded({ column, row, columns, rows }: CellWindow, margin: number): CellWindow {
  return {
    column: column - margin,
    row: row - margin,
    columns: columns + 2 * margin,
    rows: rows + 2 * margin,
  };
}

/** Whether a window holds what a box has of the ground. */
function holds(
  window: CellWindow,
  box: CellWindow,
  { columns, rows }: { readonly columns: number; readonly rows: number },
): boolean {
  return (
    window.column <= Math.max(0, box.column) &&
    window.row <= Math.max(0, box.row) &&
    window.column + window.columns >= Math.min(columns, box.column + box.columns) &&
    window.row + window.rows >= Math.min(rows, box.row + box.rows)
  );
}

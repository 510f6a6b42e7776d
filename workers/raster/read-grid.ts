import { refusal } from "../../shared/failure.ts";
import type { CallOptions } from "../../shared/messages.ts";
import type { LonLat } from "../../shared/plan.ts";
import { bilinear } from "./bilinear.ts";
import type { BlockStore } from "./block-store.ts";
import { type BuiltOverview, buildAll, type ReadSoFar, UNREAD_M } from "./built-overview.ts";
import type { Locator } from "./locate.ts";
import { type Mosaic, type Part, readMosaic } from "./mosaic.ts";
import type { OpenRaster, RasterLevel } from "./open-raster.ts";
import { type PixelPlaces, pixelPlaces } from "./pixel-places.ts";
import { onEdge } from "./sampler.ts";
import type { ShownLevels } from "./shown-levels.ts";
import { type CellWindow, emptyWindow, fillFromLevel, type WindowCells } from "./window.ts";

/** The largest picture made at once, pixels. */
const MOST_PIXELS = 16_777_216;

/** An overview is used when its cells are at most this many output pixels wide. */
const COARSEST_CELL_PIXELS = 1.25;

/** What pictures are made from. */
export interface GridSource {
  readonly mosaic: Mosaic;
  readonly levels: ReadonlyMap<OpenRaster, readonly RasterLevel[]>;
  /** The same with the coarser levels that are made here. */
  readonly shown: ReadonlyMap<OpenRaster, ShownLevels>;
  readonly locator: Locator;
  readonly store: BlockStore;
}

export interface ReadGridOptions extends CallOptions {
  /**
   * Where it is given, a picture of a large raster that is still being swept does not wait: it shows what is read,
   * has `UNREAD_M` where nothing is, and the share that is read is given here.
   */
  readonly onPart?: (share: number) => void;
}

export type ReadGrid = (
  project: (column: number, row: number) => LonLat,
  columns: number,
  rows: number,
  options?: ReadGridOptions,
) => Promise<Float32Array>;

/**
 * Reads pictures one after the other, so that the memory they take together is bounded. A picture that waits for the
 * sweep over a raster without overviews keeps no other waiting.
 */
export function makeGridReader(source: GridSource): ReadGrid {
  let last: Promise<unknown> = Promise.resolve();
  return async (project, columns, rows, options) => {
    const picture = await preparePicture(source, project, columns, rows, options);
    const turn = last.then(() => readPicture(source, picture));
    last = turn.catch(() => {});
    return turn;
  };
}

interface Picture {
  readonly places: PixelPlaces;
  /** One for each file that the picture touches; null for all files joined at full resolution. */
  readonly layers: readonly Layer[] | null;
}

interface Layer {
  readonly part: Part;
  readonly level: RasterLevel;
  readonly perColumn: number;
  readonly perRow: number;
  readonly window: CellWindow;
  /** Where the level is still being made: what there is of it. */
  readonly soFar: ReadSoFar | null;
}

/**
 * Chooses the resolution of each file that suits the pixels, and makes overviews where there are none.
 * @throws Refusal `ground/picture-too-large` above 16.7 million pixels
 */
async function preparePicture(
  { mosaic, shown, locator }: GridSource,
  project: (column: number, row: number) => LonLat,
  columns: number,
  rows: number,
  options: ReadGridOptions | undefined,
): Promise<Picture> {
  if (columns * rows > MOST_PIXELS) {
    throw refusal("ground/picture-too-large", { columns, rows, most: MOST_PIXELS });
  }
  const places = pixelPlaces(project, locator, columns, rows);
  if (places.cellsPerPixel * COARSEST_CELL_PIXELS < 2) return { places, layers: null };
  const layers = mosaic.parts.flatMap((part) => layerOf(part, shown.get(part.raster)!, places));
  const builtFor = ({ part, level }: Layer): BuiltOverview | null => {
    const { levels, built } = shown.get(part.raster)!;
    return built && levels.indexOf(level) >= levels.indexOf(built.level) ? built : null;
  };
  if (options?.onPart) return partlyRead(places, layers, builtFor, options);
  await buildAll(
    layers.flatMap((layer) => builtFor(layer) ?? []),
    options,
  );
  return { places, layers };
}

/** Takes what there is of overviews that are being made in place of the levels that follow from them. */
async function partlyRead(
  places: PixelPlaces,
  layers: readonly Layer[],
  builtFor: (layer: Layer) => BuiltOverview | null,
  { onPart, onProgress }: ReadGridOptions,
): Promise<Picture> {
  const shares: number[] = [];
  const now = layers.map(async (layer): Promise<Layer> => {
    const built = builtFor(layer);
    const soFar = await built?.soFar((share) =>
      onProgress?.(share, "Reading all of the elevation data"),
    );
    if (!built || !soFar) return layer;
    shares.push(soFar.share);
    const { part } = layer;
    const perColumn = built.level.columns / part.columns;
    const perRow = built.level.rows / part.rows;
    return { part, level: built.level, perColumn, perRow, window: soFar.cells, soFar };
  });
  const ready = await Promise.all(now);
  if (shares.length > 0) onPart?.(Math.min(...shares));
  return { places, layers: ready };
}

function layerOf(part: Part, { levels }: ShownLevels, places: PixelPlaces): Layer[] {
  const { column, row } = part;
  const coarsest = places.cellsPerPixel * COARSEST_CELL_PIXELS;
  const level = levels.findLast((each) => part.columns / each.columns <= coarsest) ?? levels[0]!;
  const perColumn = level.columns / part.columns;
  const perRow = level.rows / part.rows;
  const window = windowAround(places, level, perColumn, perRow, column, row);
  return window ? [{ part, level, perColumn, perRow, window, soFar: null }] : [];
}

/** Heights at the centres of a picture's pixels, metres, NaN where there is no data. */
async function readPicture(source: GridSource, { places, layers }: Picture): Promise<Float32Array> {
  const heightsM = new Float32Array(places.columns.length).fill(Number.NaN);
  if (!layers) {
    await fillFull(heightsM, places, source);
    return heightsM;
  }
  for (const { part, level, perColumn, perRow, window, soFar } of layers) {
    const cells = soFar?.cells ?? emptyWindow(window);
    if (!soFar) await fillFromLevel(cells, level, source.store);
    interpolate(heightsM, places, cells, level, perColumn, perRow, part.column, part.row);
  }
  return heightsM;
}

/** At full resolution the files are joined first, so that their seams are exact. */
async function fillFull(
  heightsM: Float32Array,
  places: PixelPlaces,
  { mosaic, levels, store }: GridSource,
): Promise<void> {
  const window = windowAround(places, mosaic, 1, 1, 0, 0);
  if (!window) return;
  const cells = await readMosaic(mosaic, levels, window, store);
  interpolate(heightsM, places, cells, mosaic, 1, 1, 0, 0);
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

/** Writes the pixels that have no height yet, `UNREAD_M` where a cell that carries weight is not read. */
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
    if (Number.isFinite(heightsM[i]!)) continue;
    const x = onEdge((places.columns[i]! + 0.5 - column) * perColumn - 0.5, size.columns - 1);
    const y = onEdge((places.rows[i]! + 0.5 - row) * perRow - 0.5, size.rows - 1);
    const [across, down] = [x - cells.column, y - cells.row];
    const heightM = bilinear(cells.heightsM, cells.columns, cells.rows, across, down);
    if (Number.isFinite(heightM)) heightsM[i] = heightM;
    else if (touchesUnread(cells, across, down)) heightsM[i] = UNREAD_M;
  }
}

/** True where one of the four cells round a place is not read yet. */
function touchesUnread({ heightsM, columns, rows }: WindowCells, x: number, y: number): boolean {
  if (!(x >= 0 && y >= 0)) return false;
  const right = Math.min(columns - 1, Math.ceil(x));
  const below = Math.min(rows - 1, Math.ceil(y));
  return [Math.floor(y), below].some((row) =>
    [Math.floor(x), right].some((column) => heightsM[row * columns + column] === UNREAD_M),
  );
}

import type { CallOptions, ContoursRequest, ContoursResponse } from "../../shared/messages.ts";
import type { LonLat } from "../../shared/plan.ts";
import type { Terrain } from "../raster/terrain.ts";
import { type Isoline, isolines } from "./isolines.ts";
import { fromMercator, mercatorX, mercatorY } from "./mercator.ts";
import { soften } from "./soften.ts";

/** Grid step on the screen, CSS pixels. */
const STEP_PX = 2;
const MOST_CELLS = 1_000_000;
/** More levels than this and only every second, fifth, tenth ... is drawn. */
const MOST_LEVELS = 120;
/** Closed lines shorter than this many grid steps are noise at the scale of the view. */
const LEAST_STEPS = 10;

/**
 * Level lines of the ground in view, at whole multiples of the interval, softened for display.
 * No line runs along a hole or along the edge of the view: it stops there.
 */
export async function contours(
  terrain: Terrain,
  request: ContoursRequest,
  options?: CallOptions,
): Promise<ContoursResponse> {
  const frame = frameOf(terrain, request);
  if (!frame) return { lines: [] };
  const { columns, rows, place } = frame;
  const read = await terrain.readGrid(place, columns, rows, options);
  const heightM = soften(read, columns, rows, 2);
  const lines = levels(heightM, request.intervalM).flatMap((elevationM) =>
    isolines(heightM, columns, rows, elevationM)
      .filter(worthDrawing)
      .map((line) => ({ elevationM, path: toPath(roundOff(line, frame.rounds), place) })),
  );
  return { lines };
}

interface Frame {
  readonly columns: number;
  readonly rows: number;
  readonly place: (column: number, row: number) => [number, number];
  /** How often corners are cut, so that a coarse grid still gives round lines. */
  readonly rounds: number;
}

/**
 * The grid of the view cut to the raster, on a lattice of powers of two of the mercator square, so that
 * lines stay where they are while the map is moved. Never finer than half a cell.
 */
function frameOf(terrain: Terrain, request: ContoursRequest): Frame | null {
  const { bounds, cellXM, cellYM } = terrain.summary;
  const west = mercatorX(Math.max(bounds[0], request.bounds[0]));
  const east = mercatorX(Math.min(bounds[2], request.bounds[2]));
  const south = mercatorY(Math.max(bounds[1], request.bounds[1]));
  const north = mercatorY(Math.min(bounds[3], request.bounds[3]));
  if (!(east > west && south > north)) return null;
  const pixel = (mercatorX(request.bounds[2]) - mercatorX(request.bounds[0])) / request.widthPx;
  const latitude = (bounds[1] + bounds[3]) / 2;
  const metre = 1 / (40075016.686 * Math.cos((latitude * Math.PI) / 180));
  const halfCell = (Math.min(cellXM, cellYM) / 2) * metre;
  let step = 2 ** Math.ceil(Math.log2(Math.max(STEP_PX * pixel, halfCell)) - 0.5);
  while (((east - west) / step + 2) * ((south - north) / step + 2) > MOST_CELLS) step *= 2;
  const firstColumn = Math.floor(west / step);
  const firstRow = Math.floor(north / step);
  return {
    columns: Math.ceil(east / step) - firstColumn + 1,
    rows: Math.ceil(south / step) - firstRow + 1,
    place: (column, row) => fromMercator((firstColumn + column) * step, (firstRow + row) * step),
    rounds: Math.min(3, Math.max(0, Math.round(Math.log2(step / pixel / STEP_PX)))),
  };
}

function levels(heightM: Float32Array, intervalM: number): number[] {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const height of heightM) {
    if (height < lowest) lowest = height;
    if (height > highest) highest = height;
  }
  if (!(highest > lowest && intervalM > 0)) return [];
  const count = (highest - lowest) / intervalM;
  const skip = [1, 2, 5, 10, 20, 50].find((each) => count / each <= MOST_LEVELS) ?? count;
  const step = intervalM * skip;
  const first = Math.ceil(lowest / step);
  const last = Math.floor(highest / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => (first + k) * step);
}

function worthDrawing(line: Isoline): boolean {
  const end = line.length - 2;
  const closed = line[0] === line[end] && line[1] === line[end + 1];
  return closed ? line.length / 2 > LEAST_STEPS : line.length >= 6;
}

/** Corner cutting. Source: G. M. Chaikin, "An algorithm for high-speed curve generation", 1974. */
function roundOff(line: Isoline, times: number): Isoline {
  let now = line;
  for (let pass = 0; pass < times; pass++) now = cutCorners(now);
  return now;
}

function cutCorners(line: Isoline): Isoline {
  const end = line.length - 2;
  const closed = line[0] === line[end] && line[1] === line[end + 1];
  const cut: number[] = closed ? [] : [line[0]!, line[1]!];
  for (let i = 0; i < end; i += 2) {
    const [ax, ay, bx, by] = [line[i]!, line[i + 1]!, line[i + 2]!, line[i + 3]!];
    cut.push(0.75 * ax + 0.25 * bx, 0.75 * ay + 0.25 * by);
    cut.push(0.25 * ax + 0.75 * bx, 0.25 * ay + 0.75 * by);
  }
  if (closed) cut.push(cut[0]!, cut[1]!);
  else cut.push(line[end]!, line[end + 1]!);
  return cut;
}

function toPath(line: Isoline, place: Frame["place"]): LonLat[] {
  const path: LonLat[] = [];
  for (let i = 0; i < line.length; i += 2) path.push(place(line[i]!, line[i + 1]!));
  return path;
}

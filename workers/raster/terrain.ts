import { asFailure, Refusal, refusal } from "../../shared/failure.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { FileNote, GroundNote, TilesTogether } from "../../shared/ground-notes.ts";
import type { CallOptions, GroundSummary, OnGrid, TerrainFile } from "../../shared/messages.ts";
import type { LonLat, VerticalUnit } from "../../shared/plan.ts";
import type { PlanPlane } from "../../shared/plan-plane.ts";
import type { PlaneBox } from "../../shared/site.ts";
import { stopIfCancelled } from "../stop-if-cancelled.ts";
import { bilinear } from "./bilinear.ts";
import { makeBlockStore } from "./block-store.ts";
import type { Kept, OverviewShelf } from "./built-overview.ts";
import { type Locator, makeLocator } from "./locate.ts";
import { joinRasters, type Mosaic, type MosaicCells, type Part, readMosaic } from "./mosaic.ts";
import type { OpenRaster } from "./open-raster.ts";
import { makeGridReader, type ReadGrid } from "./read-grid.ts";
import { allRefused, type RefusedFile } from "./refused-files.ts";
import { onEdge } from "./sampler.ts";
import { makeSamplerSource } from "./sampler-source.ts";
import { type Marks, settleMarks } from "./settle-marks.ts";
import { shownLevels } from "./shown-levels.ts";
import { sortFiles } from "./sort-files.ts";
import { summarise, type UnitChoice } from "./summary.ts";
import { tilesTogether } from "./tiles-together.ts";
import { openWanted, wantedRasters } from "./wanted-rasters.ts";
import type { CellWindow, WindowCells } from "./window.ts";

/** One opened ground: a raster, or several of one survey. Heights are metres, NaN where there is no data. */
export interface Terrain {
  readonly summary: GroundSummary;
  /**
   * Full-resolution heights over a box of the plan plane (metres). Reads only the window needed; a box
   * inside one asked before is answered from what was read then.
   * @throws Refusal `ground/window-too-large`, `ground/mark-unknown` when a height stands apart that the survey
   * did not see, or when the file turns out damaged
   */
  samplerFor(plane: PlanPlane, box: PlaneBox): Promise<GroundSampler>;
  /** The same, made for this very box: no digit depends on what was asked before. */
  ownSampler(plane: PlanPlane, box: PlaneBox): Promise<GroundSampler>;
  /**
   * Heights at the centres of a picture's pixels, row by row, for display. The first picture of a large raster
   * without overviews waits for a sweep over all of it and says how far that is; it goes on when the caller leaves.
   * @param project longitude and latitude of an output pixel's centre
   */
  readonly readGrid: ReadGrid;
  /** Height at one place, metres; NaN outside the raster or in a hole. */
  probe(at: LonLat): Promise<number>;
  /** Places in the raster's own reference. */
  toGrid(places: readonly LonLat[]): OnGrid;
  /** Longitude and latitude of a place in the raster's own grid, degrees. */
  lonLatAt(x: number, y: number): [number, number];
  /** The raster's own cells, for what has to be counted cell by cell. */
  readonly cells: Locator & {
    /** @throws Refusal as `samplerFor` */
    read(window: CellWindow): Promise<WindowCells>;
  };
}

/**
 * Opens rasters without loading them. Formats are told by content; side-car files may be among the files, and VRTs that
 * say which of the files count, and in which order.
 * @param verticalUnit what the person says; it counts only where a file states none
 * @param shelf where overviews made of large rasters are kept between visits
 * @param marks values that the person says are missing data or ground, and those still to be asked about
 * @throws Refusal when a file cannot be read, does not fit the others, or states no vertical unit
 * (`ground/unit-unknown`) and the person neither
 */
export async function openTerrain(
  files: readonly TerrainFile[],
  verticalUnit: VerticalUnit | null,
  options?: CallOptions,
  shelf: OverviewShelf | null = null,
  marks: Marks = { choices: [], asked: [] },
): Promise<Terrain> {
  const { rasters: found, loose } = sortFiles(files);
  const rasters: OpenRaster[] = [];
  const refused: RefusedFile[] = [];
  const { wanted, unnamed } = await wantedRasters(found);
  for (const each of wanted) {
    stopIfCancelled(options);
    options?.onProgress?.(rasters.length / wanted.length, `Reading ${each.file.name}`);
    try {
      rasters.push(await openWanted(each));
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      refused.push({ name: each.file.name, refusal: withoutFilesBeside(thrown, each.file) });
    }
  }
  if (refused.length > 0) throw allRefused(refused, wanted.length);
  const [first, ...others] = rasters;
  if (!first) throw refusal("raster/none");

  const choices = new Map(rasters.map((raster) => [raster, unitOf(raster, verticalUnit)]));
  const mosaic = joinRasters([first, ...others]);
  const locator = makeLocator(mosaic);
  const store = makeBlockStore();
  const inUnit = rasters.map((raster) => ({ raster, unit: choices.get(raster)!.unit }));
  const { levels, heights, asked, unseen } = await settleMarks(inUnit, marks, store);
  const vrt = wanted.find(({ use }) => use)?.use?.vrt;
  const tiles = tilesTogether(mosaic);
  const notes: GroundNote[] = [
    ...gatheredNotes(rasters, verticalUnit),
    ...(vrt === undefined ? [] : [{ kind: "vrt" as const, vrt, unnamed }]),
    ...(saysSomething(tiles) ? [{ kind: "tiles" as const, ...tiles }] : []),
    ...loose.map(({ name }) => ({ kind: "loose" as const, name })),
  ];
  const summary: GroundSummary = {
    ...summarise(mosaic, heights, locator, choices.get(first)!, notes),
    marks: marks.choices,
    marksAsked: asked,
  };
  stopIfCancelled(options);

  const hidden = [
    ...marks.choices.filter(({ is }) => is === "hole").map(({ value }) => value),
    ...asked.map(({ value }) => value),
  ];
  const shown = shownLevels(levels, store, (raster) =>
    keptAs(raster, files, [verticalUnit, ...hidden], shelf),
  );
  const readCounted = async (window: CellWindow): Promise<MosaicCells> => {
    const cells = await readMosaic(mosaic, levels, window, store);
    const mark = unseen(cells.heightsM, (index) => partAt(mosaic, window, index));
    if (mark) throw refusal("ground/mark-unknown", { mark });
    return cells;
  };
  return {
    summary,
    ...makeSamplerSource(mosaic, locator, readCounted),
    readGrid: makeGridReader({ mosaic, levels, shown, locator, store }),
    async probe([longitude, latitude]) {
      const place = locator.toCell(longitude, latitude);
      const column = onEdge(place[0], mosaic.columns - 1);
      const row = onEdge(place[1], mosaic.rows - 1);
      if (Number.isNaN(column) || Number.isNaN(row)) return Number.NaN;
      const corner = { column: Math.floor(column), row: Math.floor(row) };
      const cells = await readMosaic(mosaic, levels, { ...corner, columns: 2, rows: 2 }, store);
      return bilinear(cells.heightsM, 2, 2, column - corner.column, row - corner.row);
    },
    toGrid(places) {
      const { label, unitM, fromLonLat } = mosaic.reference;
      return { crs: label, unitM, xy: places.map(([lon, lat]) => fromLonLat(lon, lat)) };
    },
    lonLatAt: (x, y) => mosaic.reference.toLonLat(x, y),
    cells: { ...locator, read: readCounted },
  };
}

/** The key names all that the heights follow from: every file, as far as it can be told apart, and what was said. */
function keptAs(
  raster: OpenRaster,
  files: readonly TerrainFile[],
  said: readonly unknown[],
  shelf: OverviewShelf | null,
): Kept | null {
  if (!shelf) return null;
  if (files.some(({ blob }) => blob.lastModified === undefined)) return null;
  const marks = files.map(({ name, blob }) => [name, blob.size, blob.lastModified]);
  return { shelf, key: JSON.stringify([raster.name, raster.bytes, said, marks]) };
}

/** Index of the first part that covers a cell of a window. */
function partAt({ parts }: Mosaic, window: CellWindow, index: number): number {
  const column = window.column + (index % window.columns);
  const row = window.row + Math.floor(index / window.columns);
  const covers = (part: Part) =>
    column >= part.column &&
    row >= part.row &&
    column < part.column + part.columns &&
    row < part.row + part.rows;
  return Math.max(0, parts.findIndex(covers));
}

function unitOf(raster: OpenRaster, stated: VerticalUnit | null): UnitChoice {
  if (raster.vertical.unit) return { unit: raster.vertical.unit, from: "file" };
  if (stated) return { unit: stated, from: "person" };
  throw refusal("ground/unit-unknown", { name: raster.name });
}

function saysSomething({ coarser, offGrid, overlap }: TilesTogether): boolean {
  return overlap || coarser.length > 0 || offGrid.length > 0;
}

/** What is to be known of the files, once for all files of which the same is to be known. */
function gatheredNotes(
  rasters: readonly OpenRaster[],
  chosen: VerticalUnit | null,
): readonly GroundNote[] {
  const gathered = new Map<string, { kind: "of-files"; note: FileNote; names: string[] }>();
  for (const raster of rasters) {
    const { values } = raster.strays;
    const strays = values.length > 0 ? [{ kind: "strays" as const, values }] : [];
    for (const note of [...raster.notes, ...disagreement(raster, chosen), ...strays]) {
      const key = JSON.stringify(note);
      const same = gathered.get(key) ?? { kind: "of-files", note, names: [] };
      same.names.push(raster.name);
      gathered.set(key, same);
    }
  }
  return [...gathered.values()];
}

function disagreement({ vertical }: OpenRaster, chosen: VerticalUnit | null): FileNote[] {
  if (!chosen || !vertical.unit || vertical.unit === chosen) return [];
  return [{ kind: "unit-stated", stated: vertical.unit, chosen }];
}

/** Refusals of a raster that files beside it could have answered. */
const BESIDE = ["raster/no-place", "raster/crs-missing"];

/** Says of a raster at an address that no files beside it were looked for. */
function withoutFilesBeside(thrown: Refusal, { name, host }: TerrainFile): Refusal {
  if (host === undefined || !BESIDE.includes(thrown.code)) return thrown;
  return refusal("raster/alone", { why: asFailure(thrown), name, host });
}

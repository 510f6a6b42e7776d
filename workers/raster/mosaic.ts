import { refusal } from "../../shared/failure.ts";
import { type Affine, applyAffine, inverseAffine } from "./affine.ts";
import type { BlockStore } from "./block-store.ts";
import type { OpenRaster, RasterLevel } from "./open-raster.ts";
import type { HorizontalReference } from "./reference.ts";
import { resampleInto } from "./resample.ts";
import { type CellWindow, emptyWindow, fillFromLevel, type WindowCells } from "./window.ts";

/** Where something lies in a grid, cells; whole numbers where it is on that grid. */
interface Placed {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
}

/** A raster in the common grid. */
export interface Part extends Placed {
  readonly raster: OpenRaster;
}

/** Rasters whose cells line up: between them there is no seam. */
export interface TileGrid {
  /** In the grid's own cells. Where two overlap, the first with data counts. */
  readonly tiles: readonly Part[];
  readonly columns: number;
  readonly rows: number;
  /** Where the grid lies in the common grid, and how many of that grid's cells one of its cells spans. */
  readonly place: Placed & { readonly across: number; readonly down: number };
}

/** Rasters in one reference, on the grid of those with the finest cells. */
export interface Mosaic {
  readonly columns: number;
  readonly rows: number;
  readonly affine: Affine;
  readonly reference: HorizontalReference;
  /** Finest first. Where two overlap, the first with data counts. */
  readonly parts: readonly Part[];
  /** The same by the grids they are on, finest first. */
  readonly grids: readonly [TileGrid, ...TileGrid[]];
}

/** Cells of a mosaic, with how much coarser than its grid the coarsest raster is that some of them come from. */
export interface MosaicCells extends WindowCells {
  /** Cells of the common grid along one side of that raster's cells; 1 for the grid's own. */
  readonly coarsest: number;
}

/** Grids may differ by this much of a cell and still count as one. */
const LATTICE_TOLERANCE_CELLS = 1e-3;
/** Cell areas that differ by less are of one size. */
const SAME_AREA = 1e-3;

/**
 * Puts rasters on one grid. Those with coarser cells, or off the grid, are interpolated onto it; where files overlap,
 * the finer counts.
 * @param rasters in the order in which they count where their cells are of one size
 * @throws Refusal `ground/files-differ`, naming the file that differs from the first and in what
 */
export function joinRasters(rasters: readonly [OpenRaster, ...OpenRaster[]]): Mosaic {
  const groups = linedUp(rasters);
  const [first] = groups;
  const cells = groups.map((group) => inCells(first!, group));
  const left = Math.floor(Math.min(...cells.map(({ column }) => column)) + LATTICE_TOLERANCE_CELLS);
  const top = Math.floor(Math.min(...cells.map(({ row }) => row)) + LATTICE_TOLERANCE_CELLS);
  const end = (ends: number[]) => Math.ceil(Math.max(...ends) - LATTICE_TOLERANCE_CELLS);
  const [x0, y0] = applyAffine(first![0].raster.affine, left, top);
  const grids = groups.map((group, i): TileGrid => {
    const place = { ...cells[i]!, column: cells[i]!.column - left, row: cells[i]!.row - top };
    return { tiles: fromOrigin(group), ...extentOf(group), place };
  });
  return {
    columns: end(cells.map(({ column, columns }) => column + columns)) - left,
    rows: end(cells.map(({ row, rows }) => row + rows)) - top,
    affine: { ...first![0].raster.affine, x0, y0 },
    reference: first![0].raster.reference,
    parts: grids.flatMap(({ tiles, place }) => tiles.map((tile) => inCommon(tile, place))),
    grids: grids as unknown as Mosaic["grids"],
  };
}

/** Heights of a window of the grid at full resolution; the seams between files on one grid are not seen. */
export async function readMosaic(
  { grids: [finest, ...coarser] }: Mosaic,
  levels: ReadonlyMap<OpenRaster, readonly RasterLevel[]>,
  window: CellWindow,
  store: BlockStore,
): Promise<MosaicCells> {
  const own = { column: window.column - finest.place.column, row: window.row - finest.place.row };
  const read = async (grid: TileGrid, cells: CellWindow) => {
    const target = emptyWindow(cells);
    for (const [i, { raster, column, row }] of grid.tiles.entries()) {
      const place = { column: cells.column - column, row: cells.row - row };
      await fillFromLevel(target, levels.get(raster)![0]!, store, place, i === 0);
    }
    return target;
  };
  const target = { ...(await read(finest, { ...window, ...own })), ...window };
  let coarsest = 1;
  for (const grid of coarser) {
    if (!target.heightsM.some(Number.isNaN)) break;
    const filled = await resampleInto(target, grid, (cells) => read(grid, cells));
    if (filled) coarsest = Math.max(coarsest, grid.place.across, grid.place.down);
  }
  return { ...target, coarsest };
}

/** Rasters with their offset from the first of them, in cells. */
type Group = readonly [Offset, ...Offset[]];

interface Offset {
  readonly raster: OpenRaster;
  readonly column: number;
  readonly row: number;
}

/** Rasters by the grids they are on, those with the smallest cells first. */
function linedUp(rasters: readonly [OpenRaster, ...OpenRaster[]]): Group[] {
  const groups: [Offset, ...Offset[]][] = [];
  for (const raster of rasters) {
    refuseOther(rasters[0], raster);
    const found = groups.some((group) => {
      const offset = offsetOf(group[0].raster, raster);
      if (offset) group.push({ raster, ...offset });
      return offset !== null;
    });
    if (!found) groups.push([{ raster, column: 0, row: 0 }]);
  }
  const areaOf = ([{ raster }]: Group) => cellArea(raster.affine);
  return groups.sort((a, b) => {
    const ratio = areaOf(a) / areaOf(b);
    return Math.abs(ratio - 1) < SAME_AREA ? 0 : ratio - 1;
  });
}

function cellArea({ xPerColumn, xPerRow, yPerColumn, yPerRow }: Affine): number {
  return Math.abs(xPerColumn * yPerRow - xPerRow * yPerColumn);
}

function cornerOf(group: Group): { column: number; row: number } {
  return {
    column: Math.min(...group.map(({ column }) => column)),
    row: Math.min(...group.map(({ row }) => row)),
  };
}

function extentOf(group: Group): { columns: number; rows: number } {
  const { column: left, row: top } = cornerOf(group);
  return {
    columns: Math.max(...group.map(({ raster, column }) => column + raster.columns)) - left,
    rows: Math.max(...group.map(({ raster, row }) => row + raster.rows)) - top,
  };
}

function fromOrigin(group: Group): Part[] {
  const { column: left, row: top } = cornerOf(group);
  return group.map(({ raster, column, row }) => {
    const { columns, rows } = raster;
    return { raster, column: column - left, row: row - top, columns, rows };
  });
}

/**
 * Where a group of rasters lies in the cells of another, counted from its first raster's corner.
 * @throws Refusal `ground/files-differ` when its grid is turned or mirrored against that one
 */
function inCells([{ raster: first }]: Group, group: Group): TileGrid["place"] {
  const [{ raster }] = group;
  const toCell = inverseAffine(first.affine);
  const { column: left, row: top } = cornerOf(group);
  const { columns, rows } = extentOf(group);
  const [column, row] = toCell(...applyAffine(raster.affine, left, top));
  const [right, turnedRow] = toCell(...applyAffine(raster.affine, left + columns, top));
  const [turnedColumn, bottom] = toCell(...applyAffine(raster.affine, left, top + rows));
  const turned = Math.max(Math.abs(turnedRow - row), Math.abs(turnedColumn - column));
  const isUpright = right > column && bottom > row;
  if (!isUpright || !(turned < LATTICE_TOLERANCE_CELLS * Math.max(columns, rows))) {
    throw refusal("ground/files-differ", { in: "grid", name: raster.name, first: first.name });
  }
  const whole = (place: number) =>
    Math.abs(place - Math.round(place)) < LATTICE_TOLERANCE_CELLS ? Math.round(place) : place;
  return {
    column: whole(column),
    row: whole(row),
    columns: whole(right - column),
    rows: whole(bottom - row),
    across: (right - column) / columns,
    down: (bottom - row) / rows,
  };
}

function inCommon(tile: Part, place: TileGrid["place"]): Part {
  const { across, down } = place;
  return {
    raster: tile.raster,
    column: place.column + tile.column * across,
    row: place.row + tile.row * down,
    columns: tile.columns * across,
    rows: tile.rows * down,
  };
}

function refuseOther(first: OpenRaster, raster: OpenRaster): void {
  const names = { name: raster.name, first: first.name };
  if (raster.reference.definition !== first.reference.definition) {
    const labels = { has: raster.reference.label, firstHas: first.reference.label };
    throw refusal("ground/files-differ", { in: "reference", ...names, ...labels });
  }
  const [unit, firstUnit] = [raster.vertical.unit, first.vertical.unit];
  if (unit !== null && firstUnit !== null && unit !== firstUnit) {
    throw refusal("ground/files-differ", { in: "unit", ...names, has: unit, firstHas: firstUnit });
  }
  const [has, firstHas] = [raster.vertical.datum, first.vertical.datum];
  if (has !== firstHas) {
    throw refusal("ground/files-differ", { in: "datum", ...names, has, firstHas });
  }
}

/** How many cells a raster is from another on the same grid; null when it is on a grid of its own. */
function offsetOf(first: OpenRaster, raster: OpenRaster): { column: number; row: number } | null {
  const toCell = inverseAffine(first.affine);
  const [column, row] = toCell(raster.affine.x0, raster.affine.y0);
  const farCorner = applyAffine(raster.affine, raster.columns, raster.rows);
  const [farColumn, farRow] = toCell(...farCorner);
  const stretch = Math.max(
    Math.abs(farColumn - column - raster.columns),
    Math.abs(farRow - row - raster.rows),
  );
  const whole = { column: Math.round(column), row: Math.round(row) };
  const off = Math.max(Math.abs(column - whole.column), Math.abs(row - whole.row));
  return stretch < LATTICE_TOLERANCE_CELLS && off < LATTICE_TOLERANCE_CELLS ? whole : null;
}

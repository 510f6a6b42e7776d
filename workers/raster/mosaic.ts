import { Refusal } from "../../shared/failure.ts";
import { type Affine, inverseAffine } from "./affine.ts";
import type { BlockStore } from "./block-store.ts";
import type { OpenRaster, RasterLevel } from "./open-raster.ts";
import type { HorizontalReference } from "./reference.ts";
import { type CellWindow, emptyWindow, fillFromLevel, type WindowCells } from "./window.ts";

/** A raster in the common grid: its first cell is the grid's cell (column, row). */
export interface Part {
  readonly raster: OpenRaster;
  readonly column: number;
  readonly row: number;
}

/** Rasters of one survey on one grid. */
export interface Mosaic {
  readonly columns: number;
  readonly rows: number;
  readonly affine: Affine;
  readonly reference: HorizontalReference;
  /** In the order given: where two overlap, the first with data wins. */
  readonly parts: readonly Part[];
  readonly overlap: boolean;
}

/** Grids may differ by this much of a cell and still count as one. */
const LATTICE_TOLERANCE_CELLS = 1e-3;

/**
 * Puts rasters on one grid.
 * @throws Refusal `ground/files-differ`, naming the file that differs from the first and in what
 */
export function joinRasters(rasters: readonly [OpenRaster, ...OpenRaster[]]): Mosaic {
  const [first] = rasters;
  const placed = rasters.map((raster) => ({ raster, ...offsetOf(first, raster) }));
  const left = Math.min(...placed.map((part) => part.column));
  const top = Math.min(...placed.map((part) => part.row));
  const parts = placed.map((part) => ({
    ...part,
    column: part.column - left,
    row: part.row - top,
  }));
  const [x0, y0] = originAt(first.affine, left, top);
  return {
    columns: Math.max(...parts.map((part) => part.column + part.raster.columns)),
    rows: Math.max(...parts.map((part) => part.row + part.raster.rows)),
    affine: { ...first.affine, x0, y0 },
    reference: first.reference,
    parts,
    overlap: parts.some((part, i) => parts.slice(0, i).some((before) => overlaps(part, before))),
  };
}

/** Heights of a window of the grid at full resolution; the seams between files are not seen. */
export async function readMosaic(
  mosaic: Mosaic,
  levels: ReadonlyMap<OpenRaster, readonly RasterLevel[]>,
  window: CellWindow,
  store: BlockStore,
): Promise<WindowCells> {
  const target = emptyWindow(window);
  for (const [i, { raster, column, row }] of mosaic.parts.entries()) {
    const level = levels.get(raster)![0]!;
    const place = { column: window.column - column, row: window.row - row };
    await fillFromLevel(target, level, store, place, i === 0);
  }
  return target;
}

function originAt(affine: Affine, column: number, row: number): [number, number] {
  return [
    affine.x0 + affine.xPerColumn * column + affine.xPerRow * row,
    affine.y0 + affine.yPerColumn * column + affine.yPerRow * row,
  ];
}

function offsetOf(first: OpenRaster, raster: OpenRaster): { column: number; row: number } {
  if (raster.reference.definition !== first.reference.definition) {
    throw differs(
      first,
      raster,
      `is in ${raster.reference.label}, and "${first.name}" in ${first.reference.label}`,
    );
  }
  if (raster.vertical.datum !== first.vertical.datum) {
    throw differs(
      first,
      raster,
      `has heights above ${raster.vertical.datum ?? "an unnamed datum"}, and "${first.name}" above ${first.vertical.datum ?? "an unnamed datum"}`,
    );
  }
  const toCell = inverseAffine(first.affine);
  const [column, row] = toCell(raster.affine.x0, raster.affine.y0);
  const farCorner = originAt(raster.affine, raster.columns, raster.rows);
  const [farColumn, farRow] = toCell(...farCorner);
  const stretch = Math.max(
    Math.abs(farColumn - column - raster.columns),
    Math.abs(farRow - row - raster.rows),
  );
  if (!(stretch < LATTICE_TOLERANCE_CELLS)) {
    throw differs(
      first,
      raster,
      `has cells of ${cellText(raster)}, and "${first.name}" of ${cellText(first)}`,
    );
  }
  const whole = { column: Math.round(column), row: Math.round(row) };
  const off = Math.max(Math.abs(column - whole.column), Math.abs(row - whole.row));
  if (!(off < LATTICE_TOLERANCE_CELLS)) {
    throw differs(
      first,
      raster,
      `lies ${off.toFixed(3)} of a cell off the grid of "${first.name}"`,
    );
  }
  return whole;
}

function cellText({ affine }: OpenRaster): string {
  const width = Math.hypot(affine.xPerColumn, affine.yPerColumn);
  const height = Math.hypot(affine.xPerRow, affine.yPerRow);
  return `${Number(width.toPrecision(6))} x ${Number(height.toPrecision(6))}`;
}

function differs(first: OpenRaster, raster: OpenRaster, how: string): Refusal {
  return new Refusal(
    "ground/files-differ",
    `Several files must be tiles of one survey, on one grid. "${raster.name}" ${how}.`,
    `Open only files that fit together, or bring them onto the grid of "${first.name}" in a GIS first.`,
  );
}

function overlaps(a: Part, b: Part): boolean {
  return (
    a.column < b.column + b.raster.columns &&
    b.column < a.column + a.raster.columns &&
    a.row < b.row + b.raster.rows &&
    b.row < a.row + a.raster.rows
  );
}

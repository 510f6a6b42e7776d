import type { LonLat } from "../../shared/plan.ts";

/** Where a grid's cells lie on Earth, counted in cell centres: (0, 0) is the middle of the first cell. */
export interface GridPlace {
  toCell(longitude: number, latitude: number): [number, number];
  toLonLat(column: number, row: number): [number, number];
}

/**
 * Ground on a regular grid with a frame one cell wide round it, so that no step of water has to ask whether
 * it leaves the grid. Heights are metres; NaN is a hole (ground not known), -Infinity lies outside the
 * ground (the frame, and what the raster leaves out along its edge).
 */
export interface WaterGrid {
  /** Without the frame. */
  readonly columns: number;
  readonly rows: number;
  /** Cells in a row of `heightM`, frame included: columns + 2. */
  readonly width: number;
  /** (rows + 2) x (columns + 2) values. */
  readonly heightM: Float32Array;
  /** Area of one cell of each row on the ground, m2. */
  readonly rowAreaM2: Float64Array;
  /** Shorter side of a cell on the ground, metres. */
  readonly cellM: number;
  /** Cells of holes inside the ground. */
  readonly holeCells: Int32Array;
  /** Cells without data that join the edge of the grid: outside the ground. */
  readonly outsideCells: Int32Array;
  readonly place: GridPlace;
}

/** Where water comes from: the edge of the ground, marked cells, or both. */
export interface WaterCells {
  readonly edge: boolean;
  readonly cells: readonly number[];
  /** Open pipes that it passes too; left out = none. */
  readonly links?: readonly Link[];
}

/** A way for water under the ground, either way, from cell to cell. */
export interface Link {
  /** Identifier of the culvert or drain. */
  readonly pipeId: string;
  readonly a: number;
  readonly b: number;
  /** Water must be higher than this, over the heights of the grid, to pass. */
  readonly levelM: number;
}

/** Links by either of their cells; null without any. */
export function linksByCell({ links = [] }: WaterCells): Map<number, readonly Link[]> | null {
  if (links.length === 0) return null;
  const found = new Map<number, readonly Link[]>();
  for (const link of links) {
    for (const cell of [link.a, link.b]) found.set(cell, [...(found.get(cell) ?? []), link]);
  }
  return found;
}

/** The cell at the other end of a link. */
export function acrossLink({ a, b }: Link, cell: number): number {
  return cell === a ? b : a;
}

/** Steps to the eight neighbours of a cell. */
export function neighbourSteps(width: number): Int32Array {
  return Int32Array.of(-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1);
}

/** How cells are counted in a framed grid. */
type Counted = Pick<WaterGrid, "columns" | "rows" | "width">;

/** Index of a cell; -1 outside the grid. */
export function cellIndex({ columns, rows, width }: Counted, column: number, row: number): number {
  if (!(column >= 0 && row >= 0 && column < columns && row < rows)) return -1;
  return (row + 1) * width + column + 1;
}

export function columnOf({ width }: Pick<Counted, "width">, cell: number): number {
  return (cell % width) - 1;
}

export function rowOf({ width }: Pick<Counted, "width">, cell: number): number {
  return Math.floor(cell / width) - 1;
}

/** The cell a place lies in; -1 outside the grid. */
export function cellAt(grid: WaterGrid, [longitude, latitude]: LonLat): number {
  const [column, row] = grid.place.toCell(longitude, latitude);
  return cellIndex(grid, Math.floor(column + 0.5), Math.floor(row + 0.5));
}

/** Longitude and latitude of a cell's middle. */
export function lonLatOf(grid: WaterGrid, cell: number): LonLat {
  return grid.place.toLonLat(columnOf(grid, cell), rowOf(grid, cell));
}

/**
 * Opens or closes the edge of the ground: open, water stands all round it; closed, none comes from there.
 * What the raster leaves out along its edge counts as outside when open, as holes when closed.
 */
export function setEdge(grid: WaterGrid, open: boolean): void {
  const { heightM, width, rows, outsideCells } = grid;
  const frame = open ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  heightM.fill(frame, 0, width);
  heightM.fill(frame, (rows + 1) * width);
  for (let row = 1; row <= rows; row++) {
    heightM[row * width] = frame;
    heightM[row * width + width - 1] = frame;
  }
  const beyond = open ? Number.NEGATIVE_INFINITY : Number.NaN;
  for (let i = 0; i < outsideCells.length; i++) heightM[outsideCells[i]!] = beyond;
}

/** Holes as the edge stands: closed, what lies outside the ground is unknown too. */
export function holesOf(grid: WaterGrid, edge: boolean): readonly Int32Array[] {
  return edge ? [grid.holeCells] : [grid.holeCells, grid.outsideCells];
}

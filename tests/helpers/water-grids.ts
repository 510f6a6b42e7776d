import type { GroundSummary } from "../../shared/messages.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import type { Terrain } from "../../workers/raster/terrain.ts";
import { emptyFrame, makeGrid, writeRows } from "../../workers/water/frame-heights.ts";
import { cellIndex, type GridPlace, type WaterGrid } from "../../workers/water/water-grid.ts";
import { PLANE } from "./grounds.ts";

/** Heights on a grid without its frame, rows from the north. */
export interface Heights {
  readonly columns: number;
  readonly rows: number;
  readonly heightM: Float32Array;
}

export const EDGE = { edge: true, cells: [] } as const;

/** Draws a grid: one character a cell, spaces between; `.` is 0, `#` is 9, `x` a hole, digits themselves. */
export function drawn(...lines: readonly string[]): Heights {
  const cells = lines.map((line) => line.split(/\s+/).filter((word) => word !== ""));
  const heightOf = (word: string) =>
    word === "." ? 0 : word === "#" ? 9 : word === "x" ? Number.NaN : Number(word);
  return {
    columns: cells[0]!.length,
    rows: cells.length,
    heightM: Float32Array.from(cells.flat(), heightOf),
  };
}

/** A grid on the plan plane of the tests; the middle of cell (0, 0) is at its origin, rows run south. */
export function gridFrom({ columns, rows, heightM }: Heights, cellM = 1): WaterGrid {
  const plane = planPlane(PLANE.origin);
  const place: GridPlace = {
    toCell: (longitude, latitude) => {
      const [x, y] = plane.toPlane([longitude, latitude]);
      return [x / cellM, -y / cellM];
    },
    toLonLat: (column, row) => plane.toLonLat(column * cellM, -row * cellM),
  };
  const framed = emptyFrame(columns, rows);
  writeRows(framed, columns, 0, heightM);
  return makeGrid(columns, rows, framed, place);
}

/** Values of a framed grid without the frame. */
export function inner<T>(grid: WaterGrid, framed: ArrayLike<T>): T[] {
  const values: T[] = [];
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      values.push(framed[cellIndex(grid, column, row)]!);
    }
  }
  return values;
}

/** Rows of codes as text, for drawn expectations. */
export function picture(grid: WaterGrid, codes: Uint8Array): string[] {
  const values = inner(grid, codes);
  return Array.from({ length: grid.rows }, (_, row) =>
    values.slice(row * grid.columns, (row + 1) * grid.columns).join(" "),
  );
}

/** The eight ways to lay a grid: turned by quarters, mirrored. `cell` moves a cell (column, row) along. */
export const TURNS: readonly {
  readonly name: string;
  readonly turn: (grid: Heights) => Heights;
  readonly cell: (grid: Heights, column: number, row: number) => readonly [number, number];
}[] = [0, 1, 2, 3, 4, 5, 6, 7].map((k) => {
  const cell = (grid: Heights, column: number, row: number): readonly [number, number] => {
    let [c, r] = [column, row];
    let [columns, rows] = [grid.columns, grid.rows];
    if (k >= 4) c = columns - 1 - c;
    for (let turns = 0; turns < k % 4; turns++) {
      [c, r] = [rows - 1 - r, c];
      [columns, rows] = [rows, columns];
    }
    return [c, r];
  };
  return {
    name: `${k >= 4 ? "mirrored and " : ""}turned by ${(k % 4) * 90} degrees`,
    cell,
    turn: (grid) => {
      const swapped = k % 2 === 1;
      const columns = swapped ? grid.rows : grid.columns;
      const rows = swapped ? grid.columns : grid.rows;
      const heightM = new Float32Array(grid.heightM.length);
      for (let row = 0; row < grid.rows; row++) {
        for (let column = 0; column < grid.columns; column++) {
          const [c, r] = cell(grid, column, row);
          heightM[r * columns + c] = grid.heightM[row * grid.columns + column]!;
        }
      }
      return { columns, rows, heightM };
    },
  };
});

/** A terrain that holds a grid of the tests, as far as water is traced on it. */
export function terrainOf(heights: Heights, cellM = 1): Terrain {
  const { columns, rows, heightM } = heights;
  const { place } = gridFrom({ columns: 1, rows: 1, heightM: new Float32Array(1) }, cellM);
  const at = (column: number, row: number) =>
    column >= 0 && row >= 0 && column < columns && row < rows
      ? heightM[row * columns + column]!
      : Number.NaN;
  const unused = () => {
    throw new Error("Water is traced on the raster's cells.");
  };
  return {
    summary: { columns, rows } as GroundSummary,
    samplerFor: unused,
    ownSampler: unused,
    probe: unused,
    toGrid: unused,
    lonLatAt: unused,
    async readGrid(project, across, down) {
      const picture = new Float32Array(across * down);
      for (let i = 0; i < picture.length; i++) {
        const [longitude, latitude] = project(i % across, Math.floor(i / across));
        const [column, row] = place.toCell(longitude, latitude);
        picture[i] = at(Math.round(column), Math.round(row));
      }
      return picture;
    },
    cells: {
      ...place,
      async read(window) {
        const found = new Float32Array(window.columns * window.rows);
        for (let i = 0; i < found.length; i++) {
          const row = Math.floor(i / window.columns);
          found[i] = at(window.column + i - row * window.columns, window.row + row);
        }
        return { ...window, heightsM: found };
      },
    },
  };
}

/** Heights by a formula of the plan plane: x east, y south of the first cell's middle, metres. */
export function byFormula(
  columns: number,
  rows: number,
  heightAt: (xM: number, southM: number) => number,
  cellM = 1,
): Heights {
  const heightM = new Float32Array(columns * rows);
  for (let i = 0; i < heightM.length; i++) {
    const row = Math.floor(i / columns);
    heightM[i] = heightAt((i - row * columns) * cellM, row * cellM);
  }
  return { columns, rows, heightM };
}

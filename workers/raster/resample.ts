import { bilinear } from "./bilinear.ts";
import type { TileGrid } from "./mosaic.ts";
import { onEdge } from "./sampler.ts";
import type { CellWindow, WindowCells } from "./window.ts";

/**
 * Gives the cells of a window that have no height yet one between the cells of another grid, by bilinear
 * interpolation across the tiles of that grid. In the outermost half cell of a tile without a neighbour the edge cell's
 * own height counts, as GDAL has it.
 * @param read cells of the other grid, in its own columns and rows
 * @returns whether any cell was given a height
 */
export async function resampleInto(
  target: WindowCells,
  grid: TileGrid,
  read: (window: CellWindow) => Promise<WindowCells>,
): Promise<boolean> {
  const columnAt = (i: number) =>
    (target.column + i + 0.5 - grid.place.column) / grid.place.across - 0.5;
  const rowAt = (j: number) => (target.row + j + 0.5 - grid.place.row) / grid.place.down - 0.5;
  const across = spanOf(columnAt(0), columnAt(target.columns - 1), grid.columns);
  const down = spanOf(rowAt(0), rowAt(target.rows - 1), grid.rows);
  if (!across || !down) return false;
  const cells = await read({
    ...{ column: across.first, columns: across.count },
    ...{ row: down.first, rows: down.count },
  });
  const areas = [{ column: 0, row: 0, columns: grid.columns, rows: grid.rows }, ...grid.tiles];
  const touched = areas.filter((area) => meets(area, cells));
  let filled = false;
  for (const area of touched) {
    for (let j = 0; j < target.rows; j++) {
      const y = area.row + onEdge(rowAt(j) - area.row, area.rows - 1) - cells.row;
      if (Number.isNaN(y)) continue;
      for (let i = 0, at = j * target.columns; i < target.columns; i++, at++) {
        if (!Number.isNaN(target.heightsM[at]!)) continue;
        const x = area.column + onEdge(columnAt(i) - area.column, area.columns - 1) - cells.column;
        const heightM = bilinear(cells.heightsM, cells.columns, cells.rows, x, y);
        if (Number.isNaN(heightM)) continue;
        target.heightsM[at] = heightM;
        filled = true;
      }
    }
  }
  return filled;
}

/** The cells along one side that places from one to another lie between; null when they miss the grid. */
function spanOf(from: number, to: number, count: number): { first: number; count: number } | null {
  if (to < -0.5 || from > count - 0.5) return null;
  const first = Math.min(count - 1, Math.max(0, Math.floor(from)));
  const last = Math.max(0, Math.min(count - 1, Math.ceil(to)));
  return { first, count: last - first + 1 };
}

function meets(a: CellWindow, b: CellWindow): boolean {
  return (
    a.column < b.column + b.columns &&
    b.column < a.column + a.columns &&
    a.row < b.row + b.rows &&
    b.row < a.row + a.rows
  );
}

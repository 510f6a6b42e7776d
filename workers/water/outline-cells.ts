import type { LonLat } from "../../shared/plan.ts";
import { cellsAlong, type GridSpot } from "./cells-along.ts";
import { cellIndex, type WaterGrid } from "./water-grid.ts";

/**
 * The cells of the framed grid that an outline covers or touches, each once; what lies off the grid is left
 * out. An outline smaller than a cell has the cells it lies in.
 */
export function outlineCells(grid: WaterGrid, outline: readonly LonLat[]): number[] {
  const spots = outline.map(([longitude, latitude]) => grid.place.toCell(longitude, latitude));
  const found = new Set<number>();
  const take = (column: number, row: number) => {
    const cell = cellIndex(grid, column, row);
    if (cell >= 0) found.add(cell);
  };
  for (const [i, spot] of spots.entries()) cellsAlong(spot, spots[(i + 1) % spots.length]!, take);
  const rows = spots.map(([, row]) => row);
  const firstRow = Math.max(0, Math.ceil(Math.min(...rows)));
  const lastRow = Math.min(grid.rows - 1, Math.floor(Math.max(...rows)));
  for (let row = firstRow; row <= lastRow; row++) fillRow(spots, row, grid.columns, take);
  return [...found];
}

/** Cells of a row whose middle lies inside (even-odd rule). */
function fillRow(
  spots: readonly GridSpot[],
  row: number,
  columns: number,
  take: (column: number, row: number) => void,
): void {
  const crossings: number[] = [];
  for (const [i, [columnA, rowA]] of spots.entries()) {
    const [columnB, rowB] = spots[(i + 1) % spots.length]!;
    if (rowA > row === rowB > row) continue;
    crossings.push(columnA + ((row - rowA) / (rowB - rowA)) * (columnB - columnA));
  }
  crossings.sort((a, b) => a - b);
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const first = Math.max(0, Math.ceil(crossings[i]!));
    const last = Math.min(columns - 1, Math.floor(crossings[i + 1]!));
    for (let column = first; column <= last; column++) take(column, row);
  }
}

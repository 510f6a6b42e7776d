import type { LonLat } from "../../shared/plan.ts";
import { outlineCells } from "../water/outline-cells.ts";
import { cellAt, columnOf, lonLatOf, rowOf, type WaterGrid } from "../water/water-grid.ts";

/**
 * A place under a building where the ground is not known; null where all of it is. A hole that is the building and
 * nothing else, as where buildings were taken out of the survey, is not missing: the ground at its walls is there.
 */
export function missingGround(
  grid: WaterGrid,
  parts: readonly (readonly LonLat[])[],
): LonLat | null {
  for (const outline of parts) {
    const off = outline.find((at) => cellAt(grid, at) < 0);
    if (off) return off;
    const cells = outlineCells(grid, outline);
    const missing = cells.filter((cell) => !Number.isFinite(grid.heightM[cell]!));
    if (missing.length === 0) continue;
    if (missing.length < cells.length && isTheBuilding(grid, outline, cells)) continue;
    return lonLatOf(grid, missing[0]!);
  }
  return null;
}

/** Whether the cells without data are those whose middle lies in an outline, all of them and no other. */
function isTheBuilding(
  grid: WaterGrid,
  outline: readonly LonLat[],
  cells: readonly number[],
): boolean {
  const spots = outline.map(([longitude, latitude]) => grid.place.toCell(longitude, latitude));
  return cells.every((cell) => {
    const isInside = holds(spots, columnOf(grid, cell), rowOf(grid, cell));
    return isInside === Number.isNaN(grid.heightM[cell]!);
  });
}

/** Even-odd rule, counted in cells. */
function holds(
  spots: readonly (readonly [number, number])[],
  column: number,
  row: number,
): boolean {
  let isInside = false;
  for (const [i, [columnA, rowA]] of spots.entries()) {
    const [columnB, rowB] = spots[(i + 1) % spots.length]!;
    if (rowA > row === rowB > row) continue;
    const crossing = columnA + ((row - rowA) / (rowB - rowA)) * (columnB - columnA);
    if (crossing > column) isInside = !isInside;
  }
  return isInside;
}

import type { LonLat } from "../../shared/plan.ts";
import { isInside } from "../../shared/plane-polygon.ts";
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
  const polygon = { xM: spots.map(([column]) => column), yM: spots.map(([, row]) => row) };
  return cells.every((cell) => {
    return (
      isInside(polygon, columnOf(grid, cell), rowOf(grid, cell)) ===
      Number.isNaN(grid.heightM[cell]!)
    );
  });
}

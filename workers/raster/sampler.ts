import type { GroundSampler } from "../../shared/ground.ts";
import { bilinear } from "./bilinear.ts";
import type { Lattice } from "./lattice.ts";
import type { WindowCells } from "./window.ts";

/**
 * Heights over one box of the plan plane: about 30 ns a point. NaN outside the box, outside the raster
 * and wherever a cell that carries weight has no data. Within the outermost half cell of the raster the
 * edge cell's own height holds, as GDAL does it.
 * @param whole size of the whole raster, cells
 * @param cellSidesM shortest and longest side of the cells that heights come from, on the ground, metres
 */
export function makeSampler(
  lattice: Lattice,
  window: WindowCells,
  whole: { readonly columns: number; readonly rows: number },
  cellSidesM: readonly [number, number],
): GroundSampler {
  const { heightsM, columns, rows, column: left, row: top } = window;
  const { minX, minY, maxX, maxY } = lattice.box;
  const { across, up, coefficients } = lattice;
  const perMetre = 1 / lattice.spacingM;
  const lastColumn = whole.columns - 1;
  const lastRow = whole.rows - 1;

  const heightAt = (xM: number, yM: number): number => {
    if (!(xM >= minX && xM <= maxX && yM >= minY && yM <= maxY)) return Number.NaN;
    const gx = (xM - minX) * perMetre;
    const gy = (yM - minY) * perMetre;
    const i = gx >= across ? across - 1 : gx | 0;
    const j = gy >= up ? up - 1 : gy | 0;
    const u = gx - i;
    const v = gy - j;
    const uv = u * v;
    const at = 8 * (j * across + i);
    const column =
      coefficients[at]! +
      coefficients[at + 1]! * u +
      coefficients[at + 2]! * v +
      coefficients[at + 3]! * uv;
    const row =
      coefficients[at + 4]! +
      coefficients[at + 5]! * u +
      coefficients[at + 6]! * v +
      coefficients[at + 7]! * uv;
    const onColumn = onEdge(column, lastColumn) - left;
    return bilinear(heightsM, columns, rows, onColumn, onEdge(row, lastRow) - top);
  };
  return { heightAt, cellM: Math.min(...cellSidesM), longCellM: Math.max(...cellSidesM) };
}

/** Moves a place in the outermost half cell onto the edge cell's centre; NaN further out. */
export function onEdge(place: number, last: number): number {
  if (place >= 0 && place <= last) return place;
  if (place < 0) return place >= -0.5 ? 0 : Number.NaN;
  return place <= last + 0.5 ? last : Number.NaN;
}

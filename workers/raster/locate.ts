import type { LonLat } from "../../shared/plan.ts";
import { applyAffine, inverseAffine } from "./affine.ts";
import type { Mosaic } from "./mosaic.ts";

/** Between places on Earth and places in the grid, counted in cell centres (0 is the first cell's centre). */
export interface Locator {
  toCell(longitude: number, latitude: number): [number, number];
  toLonLat(column: number, row: number): [number, number];
}

export function makeLocator({ affine, reference, columns, rows }: Mosaic): Locator {
  const inverse = inverseAffine(affine);
  const [middleX] = applyAffine(affine, columns / 2, rows / 2);
  return {
    toCell(longitude, latitude) {
      const [x, y] = reference.fromLonLat(longitude, latitude);
      const turn = reference.isDegrees ? 360 * Math.round((middleX - x) / 360) : 0;
      const [column, row] = inverse(x + turn, y);
      return [column - 0.5, row - 0.5];
    },
    toLonLat(column, row) {
      const [x, y] = applyAffine(affine, column + 0.5, row + 0.5);
      const [longitude, latitude] = reference.toLonLat(x, y);
      return [longitude - 360 * Math.round(longitude / 360), latitude];
    },
  };
}

/** The outline of the grid: its corners from the upper left clockwise, and points along its edges. */
export function outlineOf(mosaic: Mosaic, locator: Locator): { corners: LonLat[]; edge: LonLat[] } {
  const { columns, rows } = mosaic;
  const corner = (u: number, v: number): LonLat =>
    locator.toLonLat(u * columns - 0.5, v * rows - 0.5);
  const corners = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
  const steps = Array.from({ length: 9 }, (_, i) => i / 8);
  const edge = steps.flatMap((t) => [corner(t, 0), corner(t, 1), corner(0, t), corner(1, t)]);
  return { corners, edge };
}

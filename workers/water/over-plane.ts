import type { PlanPlane } from "../../shared/plan-plane.ts";
import type { SurfaceAt } from "../../shared/stage.ts";
import { holesOf, type WaterGrid } from "./water-grid.ts";

/** Cells between the places where the water's plane is worked out; between them it is bilinear. */
const STEP = 64;

/**
 * The grid with its heights taken over a falling water surface instead of over the datum: the surface is
 * then one level everywhere. A surface that is level gives the grid itself.
 * @param dropAt how much higher the surface stands at a place of the plan plane than at the gauge, metres
 */
export function overPlane(grid: WaterGrid, dropAt: SurfaceAt, plane: PlanPlane): WaterGrid {
  const { columns, rows, width, place } = grid;
  const across = Math.ceil(columns / STEP) + 1;
  const up = Math.ceil(rows / STEP) + 1;
  const drops = new Float64Array(across * up);
  for (let j = 0; j < up; j++) {
    for (let i = 0; i < across; i++) {
      drops[j * across + i] = dropAt(...plane.toPlane(place.toLonLat(i * STEP, j * STEP)));
    }
  }
  if (drops.every((drop) => drop === 0)) return grid;

  const heightM = new Float32Array(grid.heightM.length).fill(Number.NaN);
  for (let row = 0; row < rows; row++) {
    const j = Math.floor(row / STEP);
    const v = row / STEP - j;
    for (let i = 0; i + 1 < across; i++) {
      const at = j * across + i;
      const left = drops[at]! + v * (drops[at + across]! - drops[at]!);
      const right = drops[at + 1]! + v * (drops[at + across + 1]! - drops[at + 1]!);
      const last = Math.min(columns, (i + 1) * STEP);
      for (let column = i * STEP; column < last; column++) {
        const cell = (row + 1) * width + column + 1;
        heightM[cell] = grid.heightM[cell]! - left - ((column - i * STEP) / STEP) * (right - left);
      }
    }
  }
  return { ...grid, heightM };
}

/** Makes holes hold water back, or lets it through again. Cells in `except` stay as they are. */
export function plugHoles(
  grid: WaterGrid,
  edge: boolean,
  plugged: boolean,
  except: ReadonlySet<number> = new Set(),
): void {
  const height = plugged ? Number.POSITIVE_INFINITY : Number.NaN;
  for (const cells of holesOf(grid, edge)) {
    for (let k = 0; k < cells.length; k++) {
      if (!except.has(cells[k]!)) grid.heightM[cells[k]!] = height;
    }
  }
}

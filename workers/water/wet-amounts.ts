import { HOLE_REACHED, LOW, WATER } from "../../shared/water-types.ts";
import type { WaterGrid } from "./water-grid.ts";

/** Cells, area and volume of water. */
export interface WetAmounts {
  readonly cells: number;
  readonly areaM2: number;
  readonly volumeM3: number;
}

/** Connected water and merely low ground of a traced grid. */
export interface WaterAmounts extends WetAmounts {
  readonly lowCells: number;
  readonly lowAreaM2: number;
  readonly holeCells: number;
}

/** Sums over the codes of a traced grid; depth is the level less the height. */
export function waterAmounts(grid: WaterGrid, codes: Uint8Array, levelM: number): WaterAmounts {
  const { width, rows, rowAreaM2, heightM } = grid;
  const sum = { cells: 0, areaM2: 0, volumeM3: 0, lowCells: 0, lowAreaM2: 0, holeCells: 0 };
  for (let row = 0; row < rows; row++) {
    const from = (row + 1) * width;
    let wet = 0;
    let low = 0;
    let depthM = 0;
    for (let cell = from + 1; cell < from + width - 1; cell++) {
      const code = codes[cell]!;
      if (code === WATER) {
        wet++;
        depthM += levelM - heightM[cell]!;
      } else if (code === LOW) low++;
      else if (code === HOLE_REACHED) sum.holeCells++;
    }
    sum.cells += wet;
    sum.areaM2 += wet * rowAreaM2[row]!;
    sum.volumeM3 += depthM * rowAreaM2[row]!;
    sum.lowCells += low;
    sum.lowAreaM2 += low * rowAreaM2[row]!;
  }
  return sum;
}

/**
 * What a levee keeps dry: connected water without it that is none with it, the cells under it left out.
 * @param wallCells cells of the levee; it must have been removed from the grid's heights
 */
export function behindLine(
  grid: WaterGrid,
  without: Uint8Array,
  withLevee: Uint8Array,
  wallCells: Int32Array,
  levelM: number,
): WetAmounts {
  const wall = new Set(wallCells);
  const { width, rows, rowAreaM2, heightM } = grid;
  const sum = { cells: 0, areaM2: 0, volumeM3: 0 };
  for (let row = 0; row < rows; row++) {
    const from = (row + 1) * width;
    for (let cell = from + 1; cell < from + width - 1; cell++) {
      if (without[cell] !== WATER || withLevee[cell] === WATER || wall.has(cell)) continue;
      sum.cells++;
      sum.areaM2 += rowAreaM2[row]!;
      sum.volumeM3 += (levelM - heightM[cell]!) * rowAreaM2[row]!;
    }
  }
  return sum;
}

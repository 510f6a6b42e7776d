import type { PlaneLine } from "../../shared/alignment.ts";
import type { PlanPlane } from "../../shared/plan-plane.ts";
import { cellsAlong, type GridSpot } from "./cells-along.ts";
import { cellIndex, type WaterGrid } from "./water-grid.ts";

/** A line on the grid: the cells it goes through, each once, with the chainage at which it enters them. */
export interface LeveeWall {
  readonly cells: Int32Array;
  readonly chainageM: Float64Array;
  /** Ground as it was, NaN in a hole. */
  readonly groundM: Float32Array;
  /** True where a part of the line lies off the grid. */
  readonly runsOff: boolean;
}

/** A straight leg is straight on the plan plane; in the raster's own grid it is followed in pieces this long. */
const PIECE_M = 50;

/** The cells under a line, with no gap that water could slip through corner to corner. */
export function leveeWall(grid: WaterGrid, line: PlaneLine, plane: PlanPlane): LeveeWall {
  const chainageOf = new Map<number, number>();
  let runsOff = false;
  const spotAt = (xM: number, yM: number): GridSpot => grid.place.toCell(...plane.toLonLat(xM, yM));
  for (let leg = 0; leg < line.legs; leg++) {
    const fromM = line.chainageM[leg]!;
    const lengthM = line.chainageM[leg + 1]! - fromM;
    const pieces = Math.max(1, Math.ceil(lengthM / PIECE_M));
    const x = (share: number) => line.xM[leg]! + share * (line.xM[leg + 1]! - line.xM[leg]!);
    const y = (share: number) => line.yM[leg]! + share * (line.yM[leg + 1]! - line.yM[leg]!);
    const spots = Array.from({ length: pieces + 1 }, (_, k) => {
      const share = k / pieces;
      return share === 1
        ? spotAt(line.xM[leg + 1]!, line.yM[leg + 1]!)
        : spotAt(x(share), y(share));
    });
    for (let k = 0; k < pieces; k++) {
      cellsAlong(spots[k]!, spots[k + 1]!, (column, row, share) => {
        const cell = cellIndex(grid, column, row);
        if (cell < 0) runsOff = true;
        if (cell < 0 || chainageOf.has(cell)) return;
        chainageOf.set(cell, fromM + ((k + share) / pieces) * lengthM);
      });
    }
  }
  const cells = Int32Array.from(chainageOf.keys());
  return {
    cells,
    chainageM: Float64Array.from(chainageOf.values()),
    groundM: Float32Array.from(cells, (cell) => grid.heightM[cell]!),
    runsOff,
  };
}

/** Whether the levee stands above the ground in a cell of the wall, at a crest over the heights of the grid. */
export function isRaised(wall: LeveeWall, k: number, crestM: number): boolean {
  return !(wall.groundM[k]! >= Math.fround(crestM));
}

/** Builds the levee: no cell of it is lower than the crest. A hole under it is filled to the crest. */
export function buildWall(grid: WaterGrid, wall: LeveeWall, crestM: number): void {
  for (let k = 0; k < wall.cells.length; k++) {
    if (isRaised(wall, k, crestM)) grid.heightM[wall.cells[k]!] = crestM;
  }
}

/** Takes the levee away again. */
export function removeWall(grid: WaterGrid, wall: LeveeWall): void {
  for (let k = 0; k < wall.cells.length; k++) grid.heightM[wall.cells[k]!] = wall.groundM[k]!;
}

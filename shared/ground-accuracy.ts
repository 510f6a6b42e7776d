import type { GroundSummary } from "./messages.ts";
import type { GroundSettings } from "./plan.ts";

/** How good the heights of elevation data are taken to be where nobody says so, and where that comes from. */
export interface TypicalAccuracy extends GroundAccuracy {
  /** Cells up to this size, metres. */
  readonly cellM: number;
  readonly kind: string;
}

/**
 * By cell size, because elevation data seldom states its accuracy. Published: 0.82 m for the seamless 1/3
 * arc-second grid of the United States (2022, almost 25,000 survey points) and 0.53 m for the mix of grids of
 * 1 m and coarser. The others are from memory.
 */
const TYPICAL: readonly [TypicalAccuracy, ...TypicalAccuracy[]] = [
  { cellM: 1, rmseM: 0.1, kind: "lidar", source: "3DEP lidar quality level 2, from memory" },
  { cellM: 2.9, rmseM: 0.2, kind: "lidar", source: "3DEP lidar quality level 3, from memory" },
  { cellM: 6, rmseM: 0.53, kind: "a mix of surveys", source: "USGS-3DEP, all resolutions mixed" },
  { cellM: 15, rmseM: 0.82, kind: "a mix of surveys", source: "USGS-3DEP, 1/3 arc-second grid" },
  {
    ...{ cellM: Number.POSITIVE_INFINITY, rmseM: 4, kind: "radar from orbit" },
    source:
      "1 arc-second grid over the United States, USGS Open-File Report 2014-1008, from memory",
  },
];

/** A grid of 1 m is a little more or less on the ground: map projections change lengths by up to 1 in 100. */
const CELL_SLACK = 1.01;

/** Longer side of the coarsest cells of elevation data on the ground, metres; 0 where none is open. */
export function longestCellM(
  summary: Pick<GroundSummary, "cellXM" | "cellYM" | "coarsestCellM"> | null,
): number {
  return summary ? (summary.coarsestCellM ?? Math.max(summary.cellXM, summary.cellYM)) : 0;
}

/** @param cellM longer side of a cell on the ground, metres */
export function typicalAccuracy(cellM: number): TypicalAccuracy {
  return TYPICAL.find((each) => cellM <= each.cellM * CELL_SLACK) ?? TYPICAL[0];
}

/** How good the heights of a ground are taken to be, metres, and where that comes from. */
export interface GroundAccuracy {
  readonly rmseM: number;
  readonly source: string;
}

/** Accuracy as the plan states it, or typical of the cell size. */
export function accuracyOf(
  { rmseM }: Pick<GroundSettings, "rmseM">,
  cellM: number,
): GroundAccuracy {
  return rmseM === null
    ? typicalAccuracy(cellM)
    : { rmseM, source: "as entered in Elevation data" };
}

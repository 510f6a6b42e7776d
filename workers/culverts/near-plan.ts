import type { CulvertCandidate } from "../../shared/pipes/candidates.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import type { PlanPlane } from "../../shared/plan-plane.ts";
import { emptyFrame } from "../water/frame-heights.ts";
import type { WaterGrid } from "../water/water-grid.ts";
import { type CulvertGround, candidatesIn } from "./candidates-in.ts";

/** How far from lines and buildings culverts are looked for, and how far beyond that their sags, metres. Judgement. */
const NEAR_M = 150;
const SAG_BEYOND_M = 100;
/** Larger cells do not show the bank of a road, metres. Judgement. */
const RESOLVING_CELL_M = 3;
/** The part of the ground looked at grows by so many cells at once: moving a corner seldom changes it. */
const QUANTUM = 128;
/** Most cells that are looked at. */
const MOST_CELLS = 4_000_000;

interface Box {
  readonly column: number;
  readonly row: number;
  readonly lastColumn: number;
  readonly lastRow: number;
}

const held = new WeakMap<
  WaterGrid,
  { readonly box: Box; readonly all: readonly CulvertCandidate[] }
>();

/**
 * Candidates near the lines and buildings of a plan, the nearest first; null where cells are too large to show a bank,
 * or there are too many. What was found on a part of the ground is kept with it.
 */
export function candidatesNear(
  { structures, alignments }: Plan,
  ground: WaterGrid,
  plane: PlanPlane,
): CulvertCandidate[] | null {
  const shapes = [
    ...structures.map(({ outline }) => outline),
    ...alignments.map(({ corners }) => corners),
  ];
  if (shapes.length === 0) return [];
  const box = boxOf(ground, shapes.flat());
  const all = ground.cellM > RESOLVING_CELL_M ? null : allIn(ground, box);
  if (!all) return null;
  const paths = shapes.map((shape) => shape.map((at) => plane.toPlane(at)));
  return all
    .map((each) => ({ each, awayM: awayOf(plane.toPlane(middleOf(each)), paths) }))
    .filter(({ awayM }) => awayM <= NEAR_M)
    .sort((a, b) => a.awayM - b.awayM)
    .map(({ each }) => each);
}

function boxOf({ place, columns, rows, cellM }: WaterGrid, around: readonly LonLat[]): Box {
  const spots = around.map(([longitude, latitude]) => place.toCell(longitude, latitude));
  const pad = (NEAR_M + SAG_BEYOND_M) / cellM;
  const clamp = (value: number, count: number) => Math.min(count - 1, Math.max(0, value));
  const down = (value: number) => QUANTUM * Math.floor(value / QUANTUM);
  const up = (value: number) => QUANTUM * Math.ceil(value / QUANTUM);
  const xs = spots.map(([x]) => x);
  const ys = spots.map(([, y]) => y);
  return {
    column: clamp(down(Math.min(...xs) - pad), columns),
    row: clamp(down(Math.min(...ys) - pad), rows),
    lastColumn: clamp(up(Math.max(...xs) + pad), columns),
    lastRow: clamp(up(Math.max(...ys) + pad), rows),
  };
}

/** All candidates of a part of the ground; null where it is too large. */
function allIn(ground: WaterGrid, box: Box): readonly CulvertCandidate[] | null {
  const kept = held.get(ground);
  if (kept && isSame(box, kept.box)) return kept.all;
  if ((box.lastColumn - box.column + 1) * (box.lastRow - box.row + 1) > MOST_CELLS) return null;
  const all = candidatesIn(cut(ground, box));
  held.set(ground, { box, all });
  return all;
}

function isSame(a: Box, b: Box): boolean {
  return (
    a.column === b.column &&
    a.row === b.row &&
    a.lastColumn === b.lastColumn &&
    a.lastRow === b.lastRow
  );
}

/** A part of the ground with a frame of its own, over which nothing is known. */
function cut(ground: WaterGrid, { column, row, lastColumn, lastRow }: Box): CulvertGround {
  const [columns, rows] = [lastColumn - column + 1, lastRow - row + 1];
  const heightM = emptyFrame(columns, rows);
  for (let k = 0; k < rows; k++) {
    const from = (row + k + 1) * ground.width + column + 1;
    heightM.set(ground.heightM.subarray(from, from + columns), (k + 1) * (columns + 2) + 1);
  }
  const { place } = ground;
  return {
    ...{ columns, rows, width: columns + 2, heightM },
    place: {
      toCell: (longitude, latitude) => {
        const [x, y] = place.toCell(longitude, latitude);
        return [x - column, y - row];
      },
      toLonLat: (x, y) => place.toLonLat(x + column, y + row),
    },
  };
}

function middleOf({ ends: [a, b] }: CulvertCandidate): LonLat {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

type Spot = readonly [number, number];

/** Distance to the nearest piece of any of some paths, closed or not. */
function awayOf([x, y]: Spot, paths: readonly (readonly Spot[])[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const path of paths) {
    for (const [i, [ax, ay]] of path.entries()) {
      const [bx, by] = path[i + 1] ?? path[0]!;
      const [dx, dy] = [bx - ax, by - ay];
      const square = dx * dx + dy * dy;
      const raw = square > 0 ? ((x - ax) * dx + (y - ay) * dy) / square : 0;
      const share = Math.min(1, Math.max(0, raw));
      least = Math.min(least, Math.hypot(x - ax - share * dx, y - ay - share * dy));
    }
  }
  return least;
}

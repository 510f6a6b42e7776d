import { HOLE_REACHED, LOW, WATER } from "../../shared/water-types.ts";
import { doubled } from "./int-list.ts";
import type { Link, WaterCells, WaterGrid } from "./water-grid.ts";

/** Room for runs at the start, as a share of the cells: enough for ground, doubled for noise. */
const RUNS_PER_CELL = 1 / 16;

/**
 * Which cells the water reaches at a level: those strictly below it that join a source below it, side by
 * side or corner to corner. Ground that is not known lets water pass. In one sweep over the rows the low
 * cells become runs, and runs that touch become one (union-find); in a second each run is written out.
 * Open pipes join what is low at their two ends when the level is above their own. The grid's edge must have been
 * set as the sources have it.
 * @param levelM surface, metres, over the heights of the grid
 * @returns codes of `shared/water-types.ts` for each cell of the framed grid; the frame is dry
 */
export function connectedWater(grid: WaterGrid, from: WaterCells, levelM: number): Uint8Array {
  const runs = findRuns(grid, levelM);
  for (const link of from.links ?? []) if (link.levelM < levelM) joinAcross(runs, link);
  for (let run = 0; run < runs.count; run++) runs.root[run] = runs.root[runs.root[run]!]!;
  const seeds = from.edge ? [0, ...from.cells] : from.cells;
  const wet = wetRoots(runs, seeds);
  return writeRuns(grid, runs, wet);
}

interface Runs {
  readonly count: number;
  readonly start: Int32Array;
  /** One past the last cell. */
  readonly end: Int32Array;
  /** The first run each run is joined with. */
  readonly root: Int32Array;
}

function findRuns({ heightM, width }: WaterGrid, levelM: number): Runs {
  let start = new Int32Array(Math.ceil(heightM.length * RUNS_PER_CELL) + 1024);
  let end = new Int32Array(start.length);
  let root = new Int32Array(start.length);
  let count = 0;
  let above = 0;
  for (let rowStart = 0; rowStart < heightM.length; rowStart += width) {
    const rowEnd = rowStart + width;
    const aboveEnd = count;
    for (let i = rowStart; i < rowEnd; ) {
      // `>=` is false for a hole, so that unknown ground counts as low.
      while (i < rowEnd && heightM[i]! >= levelM) i++;
      if (i === rowEnd) break;
      const first = i;
      i++;
      while (i < rowEnd && !(heightM[i]! >= levelM)) i++;
      if (count === start.length) {
        start = doubled(start);
        end = doubled(end);
        root = doubled(root);
      }
      start[count] = first;
      end[count] = i;
      root[count] = count;
      // A run of the row above touches when it reaches over [first - 1, i], one row up.
      while (above < aboveEnd && end[above]! < first - width) above++;
      for (let other = above; other < aboveEnd && start[other]! <= i - width; other++) {
        join(root, count, other);
      }
      count++;
    }
    above = aboveEnd;
  }
  return { count, start, end, root };
}

/** Joins what is low at the two ends of a pipe. */
function joinAcross(runs: Runs, { a, b }: Link): void {
  const [one, other] = [runAt(runs, a), runAt(runs, b)];
  if (one >= 0 && other >= 0) join(runs.root, one, other);
}

function join(root: Int32Array, a: number, b: number): void {
  const one = rootOf(root, a);
  const other = rootOf(root, b);
  if (one < other) root[other] = one;
  else root[one] = other;
}

function rootOf(root: Int32Array, run: number): number {
  let at = run;
  while (root[at] !== at) {
    root[at] = root[root[at]!]!;
    at = root[at]!;
  }
  return at;
}

function wetRoots(runs: Runs, seeds: readonly number[]): Uint8Array {
  const wet = new Uint8Array(runs.count);
  for (const seed of seeds) {
    const run = runAt(runs, seed);
    if (run >= 0) wet[runs.root[run]!] = 1;
  }
  return wet;
}

/** The run that a cell is in; -1 when it is above the level. */
function runAt({ count, start, end }: Runs, cell: number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (end[middle]! <= cell) low = middle + 1;
    else high = middle;
  }
  return low < count && start[low]! <= cell ? low : -1;
}

function writeRuns(
  grid: WaterGrid,
  { count, start, end, root }: Runs,
  wet: Uint8Array,
): Uint8Array {
  const { heightM, width, rows, holeCells, outsideCells } = grid;
  const codes = new Uint8Array(heightM.length);
  for (let run = 0; run < count; run++) {
    codes.fill(wet[root[run]!] === 1 ? WATER : LOW, start[run]!, end[run]!);
  }
  for (let k = 0; k < holeCells.length; k++) {
    const cell = holeCells[k]!;
    codes[cell] = codes[cell] === WATER ? HOLE_REACHED : 0;
  }
  for (let k = 0; k < outsideCells.length; k++) codes[outsideCells[k]!] = 0;
  codes.fill(0, 0, width);
  codes.fill(0, (rows + 1) * width);
  for (let row = 1; row <= rows; row++) {
    codes[row * width] = 0;
    codes[row * width + width - 1] = 0;
  }
  return codes;
}

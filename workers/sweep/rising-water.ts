import { doubled } from "../water/int-list.ts";
import { keyedHeap, popLeast, pushKeyed } from "../water/keyed-heap.ts";
import {
  acrossLink,
  linksByCell,
  neighbourSteps,
  type WaterCells,
  type WaterGrid,
} from "../water/water-grid.ts";

/**
 * The lowest level at which water from outside reaches each cell of the framed grid: it must rise above that. A
 * river that rises without end enters cell after cell, the lowest of those beside it first, so that each is entered
 * over the lowest way there is (Barnes, Lehman and Mulla 2014, priority-flood). Ground that is not known lets the
 * water pass at the level it has. Open pipes are ways too, above their own level. Infinity where none comes up to
 * `topM`. The grid's edge must have been set as the sources have it.
 */
export function risingWater(grid: WaterGrid, from: WaterCells, topM: number): Float32Array {
  const { heightM, width, rows, columns } = grid;
  const levels = new Float32Array(heightM.length).fill(Number.POSITIVE_INFINITY);
  const steps = neighbourSteps(width);
  const heap = keyedHeap();
  const linked = linksByCell(from);
  /** The other ends of a cell's pipes wait, marked by their sign: each may be entered over ground before. */
  const waitAcross = (cell: number, levelM: number) => {
    for (const link of linked?.get(cell) ?? []) {
      const next = acrossLink(link, cell);
      const height = heightM[next]!;
      const groundM = Number.isNaN(height) ? Number.NEGATIVE_INFINITY : height;
      const throughM = Math.max(levelM, link.levelM, groundM);
      if (throughM <= topM) pushKeyed(heap, ~next, throughM);
    }
  };
  const enterFrom = (cell: number) => {
    if (levels[cell] !== Number.POSITIVE_INFINITY) return;
    const height = heightM[cell]!;
    const levelM = Number.isNaN(height) ? Number.NEGATIVE_INFINITY : height;
    if (levelM > topM) return;
    levels[cell] = levelM;
    pushKeyed(heap, cell, levelM);
  };
  if (from.edge) {
    for (let column = 1; column <= columns; column++) {
      enterFrom(width + column);
      enterFrom(rows * width + column);
    }
    for (let row = 1; row <= rows; row++) {
      enterFrom(row * width + 1);
      enterFrom(row * width + columns);
    }
  }
  for (const cell of from.cells) enterFrom(cell);
  closeFrame(grid, levels);
  if (from.edge) {
    for (const cell of linked?.keys() ?? []) {
      if (levels[cell] === Number.NEGATIVE_INFINITY) waitAcross(cell, Number.NEGATIVE_INFINITY);
    }
  }

  let pool = new Int32Array(4096);
  while (heap.length > 0) {
    const popped = popLeast(heap);
    const levelM = heap.key;
    const first = popped < 0 ? ~popped : popped;
    if (popped < 0) {
      if (levels[first] !== Number.POSITIVE_INFINITY) continue;
      levels[first] = levelM;
    }
    pool[0] = first;
    let waiting = 1;
    while (waiting > 0) {
      const cell = pool[--waiting]!;
      if (linked) waitAcross(cell, levelM);
      for (let s = 0; s < 8; s++) {
        const next = cell + steps[s]!;
        if (levels[next] !== Number.POSITIVE_INFINITY) continue;
        const height = heightM[next]!;
        if (height > levelM) {
          if (height > topM) continue;
          levels[next] = height;
          pushKeyed(heap, next, height);
          continue;
        }
        levels[next] = levelM;
        if (waiting === pool.length) pool = doubled(pool);
        pool[waiting++] = next;
      }
    }
  }
  return levels;
}

/** The frame is never entered: it counts as entered already. */
function closeFrame({ width, rows }: WaterGrid, levels: Float32Array): void {
  const closed = Number.NEGATIVE_INFINITY;
  levels.fill(closed, 0, width);
  levels.fill(closed, (rows + 1) * width);
  for (let row = 1; row <= rows; row++) {
    levels[row * width] = closed;
    levels[row * width + width - 1] = closed;
  }
}

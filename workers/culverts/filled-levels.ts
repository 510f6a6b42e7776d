import { append, intList } from "../water/int-list.ts";
import { keyedHeap, popLeast, pushKeyed } from "../water/keyed-heap.ts";
import { neighbourSteps } from "../water/water-grid.ts";

/** Heights with a frame one cell wide round them; what is not finite (frame, hole, outside) is not ground. */
export interface FramedHeights {
  readonly columns: number;
  readonly rows: number;
  readonly width: number;
  readonly heightM: Float32Array;
}

/**
 * The level at which water would leave each cell, metres: its own height where it drains, the spill where it lies in a
 * sag. Water leaves over all that is not ground, so that a sag is one only where the ground all round it is known.
 * NaN where there is no ground.
 * Source: priority-flood with a plain queue for cells in sags (Barnes, Lehman, Mulla 2014, Computers & Geosciences 62).
 */
export function filledLevels({ columns, rows, width, heightM }: FramedHeights): Float32Array {
  const levels = new Float32Array(heightM.length).fill(Number.NaN);
  const steps = neighbourSteps(width);
  const heap = keyedHeap();
  for (let row = 1; row <= rows; row++) {
    for (let cell = row * width + 1; cell <= row * width + columns; cell++) {
      if (!Number.isFinite(heightM[cell]!) || !isBesideNothing(cell)) continue;
      levels[cell] = heightM[cell]!;
      pushKeyed(heap, cell, heightM[cell]!);
    }
  }
  function isBesideNothing(cell: number): boolean {
    for (let s = 0; s < 8; s++) if (!Number.isFinite(heightM[cell + steps[s]!]!)) return true;
    return false;
  }
  const inSag = intList();
  while (heap.length > 0 || inSag.length > 0) {
    const cell = inSag.length > 0 ? inSag.values[--inSag.length]! : popLeast(heap);
    const level = levels[cell]!;
    for (let s = 0; s < 8; s++) {
      const next = cell + steps[s]!;
      const height = heightM[next]!;
      if (!Number.isFinite(height) || !Number.isNaN(levels[next]!)) continue;
      levels[next] = Math.max(height, level);
      if (height > level) pushKeyed(heap, next, height);
      else append(inSag, next);
    }
  }
  return levels;
}

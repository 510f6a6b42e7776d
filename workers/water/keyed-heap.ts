import { doubled } from "./int-list.ts";

/** A binary heap of cells by height, lowest first, in flat arrays: millions of cells wait in it. */
export interface KeyedHeap {
  cells: Int32Array;
  keys: Float32Array;
  length: number;
  /** Key of the cell popped last. */
  key: number;
}

export function keyedHeap(capacity = 4096): KeyedHeap {
  return {
    cells: new Int32Array(capacity),
    keys: new Float32Array(capacity),
    length: 0,
    key: Number.NaN,
  };
}

export function pushKeyed(heap: KeyedHeap, cell: number, key: number): void {
  if (heap.length === heap.cells.length) grow(heap);
  const { cells, keys } = heap;
  let at = heap.length++;
  while (at > 0) {
    const above = (at - 1) >> 1;
    if (keys[above]! <= key) break;
    keys[at] = keys[above]!;
    cells[at] = cells[above]!;
    at = above;
  }
  keys[at] = key;
  cells[at] = cell;
}

/** Takes the cell with the least key, which is then in `key`. The heap must not be empty. */
export function popLeast(heap: KeyedHeap): number {
  const { cells, keys } = heap;
  const least = cells[0]!;
  heap.key = keys[0]!;
  const last = --heap.length;
  const cell = cells[last]!;
  const key = keys[last]!;
  let at = 0;
  for (let child = 1; child < last; child = 2 * at + 1) {
    if (child + 1 < last && keys[child + 1]! < keys[child]!) child++;
    if (keys[child]! >= key) break;
    keys[at] = keys[child]!;
    cells[at] = cells[child]!;
    at = child;
  }
  keys[at] = key;
  cells[at] = cell;
  return least;
}

function grow(heap: KeyedHeap): void {
  const keys = new Float32Array(2 * heap.keys.length);
  keys.set(heap.keys);
  heap.keys = keys;
  heap.cells = doubled(heap.cells);
}

import { HOLE_REACHED, WATER } from "../../shared/water-types.ts";
import { doubled } from "./int-list.ts";
import { type KeyedHeap, keyedHeap, popLeast, pushKeyed } from "./keyed-heap.ts";
import {
  acrossLink,
  linksByCell,
  neighbourSteps,
  type WaterCells,
  type WaterGrid,
} from "./water-grid.ts";

/** The lowest level at which water from outside reaches a place. */
export interface Sill {
  /** Over the heights of the grid; Infinity when it never does, -Infinity when only unknown ground is between. */
  readonly levelM: number;
  /** The cell it must rise above: where it would come in first. */
  readonly cell: number;
}

/** Finds sills on one state of a grid, whose heights must not change while it is used. */
export interface SillSearch {
  /** @param targets cells of the place, which hang together; water reaches it when it reaches one of them */
  find(targets: ArrayLike<number>): Sill;
  /** Whether the last search went over a cell: it floods when the sill is passed, or is on the way out. */
  passed(cell: number): boolean;
}

/** Marks of cells: the codes of traced water, then sources, then one for each search. */
const SOURCE = 8;
const FIRST_SEARCH = 9;
const LAST_SEARCH = 127;
/** Set while a cell waits in the heap of the search that is running. */
const WAITING = 128;

/**
 * A minimax path search from the place outward: cells no higher than the level so far are entered one after
 * the other, higher ones wait in a heap; the level rises only when nothing lower is left, so the level at
 * which a source is met is the least possible. A search also ends where it meets cells from which the way
 * out is known to be no higher: connected water, or what an earlier search went over.
 * @param wet connected water of this very state of the grid at a level, if it was traced
 */
export function sillSearch(
  grid: WaterGrid,
  from: WaterCells,
  wet: { readonly codes: Uint8Array; readonly levelM: number } | null,
): SillSearch {
  const { heightM: heights, width } = grid;
  const steps = neighbourSteps(width);
  const linked = linksByCell(from);
  const known = new Uint8Array(heights.length);
  const levelOf = new Float64Array(LAST_SEARCH + 1);
  const heap = keyedHeap();
  let queue = new Int32Array(4096);
  let search = LAST_SEARCH;

  const reset = () => {
    if (wet) known.set(wet.codes);
    else known.fill(0);
    if (from.edge) markFrame(grid, known);
    for (const cell of from.cells) known[cell] = SOURCE;
    levelOf.fill(Number.POSITIVE_INFINITY);
    levelOf[SOURCE] = Number.NEGATIVE_INFINITY;
    if (wet) levelOf[WATER] = levelOf[HOLE_REACHED] = wet.levelM;
    search = FIRST_SEARCH - 1;
  };

  /** The other ends of a cell's pipes wait for the level that these need, or for the ground there. */
  const waitAcross = (cell: number) => {
    const links = linked?.get(cell);
    if (!links) return;
    for (const link of links) {
      const next = acrossLink(link, cell);
      const mark = known[next]!;
      if (mark === search || mark >= WAITING) continue;
      pushKeyed(heap, next, Math.max(link.levelM, lowest(heights[next]!)));
    }
  };

  /** Enters all that is no higher than a level, from one cell on; true when it meets the way out. */
  const spread = (start: number, levelM: number): boolean => {
    let head = 0;
    let tail = 1;
    let mask = queue.length - 1;
    queue[0] = start;
    while (head !== tail) {
      const cell = queue[head]!;
      head = (head + 1) & mask;
      if (linked) waitAcross(cell);
      for (let s = 0; s < 8; s++) {
        const next = cell + steps[s]!;
        const mark = known[next]!;
        if (mark === search || mark >= WAITING) continue;
        const heightM = heights[next]!;
        // A hole is above no level: it is entered at once.
        if (heightM > levelM) {
          known[next] = mark | WAITING;
          pushKeyed(heap, next, heightM);
          continue;
        }
        if (mark > 0 && levelOf[mark]! <= levelM) return true;
        known[next] = search;
        queue[tail] = next;
        tail = (tail + 1) & mask;
        if (tail !== head) continue;
        // The ring is full: its cells stay, and their order does not matter.
        queue = doubled(queue);
        head = 0;
        tail = mask + 1;
        mask = queue.length - 1;
      }
    }
    return false;
  };

  const find = (targets: ArrayLike<number>): Sill => {
    if (search === LAST_SEARCH) reset();
    search++;
    for (let k = 0; k < targets.length; k++) wait(heap, known, heights, targets[k]!);
    const sill = { levelM: Number.NEGATIVE_INFINITY, cell: targets[0]! };
    let met = false;
    while (heap.length > 0 && !met) {
      const cell = popLeast(heap);
      if (known[cell] === search) continue;
      if (heap.key > sill.levelM) {
        sill.levelM = heap.key;
        sill.cell = cell;
      }
      const mark = known[cell]! & (WAITING - 1);
      known[cell] = mark;
      if (sill.levelM === Number.POSITIVE_INFINITY) break;
      met = mark > 0 && mark !== search && levelOf[mark]! <= sill.levelM;
      if (met) break;
      known[cell] = search;
      met = spread(cell, sill.levelM);
    }
    stopWaiting(heap, known);
    if (!met) sill.levelM = Number.POSITIVE_INFINITY;
    levelOf[search] = Math.max(sill.levelM, highestOf(heights, targets));
    return sill;
  };

  return { find, passed: (cell) => known[cell] === search };
}

/**
 * Cells that a search went over may have been entered from any of its targets, of which only one need have
 * the way out; the others join it at worst over the highest.
 */
function highestOf(heightM: Float32Array, targets: ArrayLike<number>): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < targets.length; k++) {
    if (heightM[targets[k]!]! > highest) highest = heightM[targets[k]!]!;
  }
  return highest;
}

function wait(heap: KeyedHeap, known: Uint8Array, heightM: Float32Array, cell: number): void {
  if (known[cell]! >= WAITING) return;
  known[cell]! |= WAITING;
  pushKeyed(heap, cell, lowest(heightM[cell]!));
}

/** A hole is above no level. */
function lowest(heightM: number): number {
  return Number.isNaN(heightM) ? Number.NEGATIVE_INFINITY : heightM;
}

function stopWaiting(heap: KeyedHeap, known: Uint8Array): void {
  for (let k = 0; k < heap.length; k++) known[heap.cells[k]!]! &= WAITING - 1;
  heap.length = 0;
}

function markFrame({ width, rows }: WaterGrid, known: Uint8Array): void {
  known.fill(SOURCE, 0, width);
  known.fill(SOURCE, (rows + 1) * width);
  for (let row = 1; row <= rows; row++) {
    known[row * width] = SOURCE;
    known[row * width + width - 1] = SOURCE;
  }
}

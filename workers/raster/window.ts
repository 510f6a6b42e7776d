import { refusal } from "../../shared/failure.ts";
import type { BlockStore } from "./block-store.ts";
import type { RasterLevel } from "./open-raster.ts";

/** A rectangle of cells; it may reach beyond the raster, where there is no data. */
export interface CellWindow {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
}

/** Heights of a window, row by row, metres, NaN where there is no data. */
export interface WindowCells extends CellWindow {
  readonly heightsM: Float32Array;
}

/** The largest window read at once: 64 million cells, 256 MB. */
export const MOST_CELLS = 64_000_000;

/** Blocks read and decoded at the same time, and the cells they may have together. */
const BLOCKS_AT_ONCE = 8;
const CELLS_AT_ONCE = 16_000_000;

/** A window full of no data. @throws Refusal `ground/window-too-large` above 64 million cells. */
export function emptyWindow(window: CellWindow): WindowCells {
  if (window.columns * window.rows > MOST_CELLS) {
    throw refusal("ground/window-too-large", { columns: window.columns, rows: window.rows });
  }
  return { ...window, heightsM: new Float32Array(window.columns * window.rows).fill(Number.NaN) };
}

export function contains(outer: CellWindow, inner: CellWindow): boolean {
  return (
    inner.column >= outer.column &&
    inner.row >= outer.row &&
    inner.column + inner.columns <= outer.column + outer.columns &&
    inner.row + inner.rows <= outer.row + outer.rows
  );
}

/**
 * Copies what a level has of the target's window into it. Cells that already hold a height keep it.
 * @param place where the target's first cell lies in the level, if not at its own column and row
 * @param isEmpty true when the target holds no height yet: quicker
 */
export async function fillFromLevel(
  target: WindowCells,
  level: RasterLevel,
  store: BlockStore,
  { column, row }: { readonly column: number; readonly row: number } = target,
  isEmpty = true,
): Promise<void> {
  const left = Math.max(0, column);
  const top = Math.max(0, row);
  const right = Math.min(level.columns, column + target.columns);
  const bottom = Math.min(level.rows, row + target.rows);
  if (left >= right || top >= bottom) return;

  const jobs: [number, number][] = [];
  const lastBlockRow = Math.floor((bottom - 1) / level.blockRows);
  const lastBlockColumn = Math.floor((right - 1) / level.blockColumns);
  for (let by = Math.floor(top / level.blockRows); by <= lastBlockRow; by++) {
    for (let bx = Math.floor(left / level.blockColumns); bx <= lastBlockColumn; bx++) {
      jobs.push([bx, by]);
    }
  }

  const copyBlock = async (bx: number, by: number): Promise<void> => {
    const block = await store.block(level, bx, by);
    const blockLeft = bx * level.blockColumns;
    const blockTop = by * level.blockRows;
    const from = Math.max(left, blockLeft);
    const count = Math.min(right, blockLeft + level.blockColumns) - from;
    const last = Math.min(bottom, blockTop + level.blockRows);
    for (let y = Math.max(top, blockTop); y < last; y++) {
      const source = (y - blockTop) * level.blockColumns + (from - blockLeft);
      const to = (y - row) * target.columns + (from - column);
      if (isEmpty) target.heightsM.set(block.subarray(source, source + count), to);
      else copyMissing(block, source, target.heightsM, to, count);
    }
  };

  let next = 0;
  const worker = async (): Promise<void> => {
    while (next < jobs.length) {
      const [bx, by] = jobs[next++]!;
      await copyBlock(bx, by);
    }
  };
  const fitting = Math.floor(CELLS_AT_ONCE / (level.blockColumns * level.blockRows));
  const atOnce = Math.min(BLOCKS_AT_ONCE, Math.max(1, fitting), jobs.length);
  await Promise.all(Array.from({ length: atOnce }, worker));
}

/** First data wins: only cells that are still NaN are written. */
function copyMissing(
  source: Float32Array,
  from: number,
  target: Float32Array,
  to: number,
  count: number,
): void {
  for (let i = 0; i < count; i++) {
    const held = target[to + i]!;
    if (Number.isNaN(held)) target[to + i] = source[from + i]!;
  }
}

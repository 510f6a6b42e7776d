import { type BlockStore, makeBlockStore } from "./block-store.ts";
import type { RasterLevel } from "./open-raster.ts";
import { emptyWindow, fillFromLevel } from "./window.ts";

/** Cells of the finer level along one side of a reduced cell. */
const FACTOR = 4;
/** A level no wider and higher than this needs no coarser one. */
const COARSEST = 1024;
/** Reduced cells kept apart from the others, because they are dear to make again. */
const KEPT_CELLS = 16_000_000;
const BLOCK = 256;
const STRIP_ROWS = 16;

/**
 * Adds coarser levels, made as they are needed, where a raster has no overviews small enough: for
 * pictures of the ground only, never for heights that are counted with.
 */
export function withReducedLevels(
  levels: readonly RasterLevel[],
  store: BlockStore,
): readonly RasterLevel[] {
  const all = [...levels];
  for (let last = all.at(-1)!; Math.max(last.columns, last.rows) > COARSEST; last = all.at(-1)!) {
    all.push(reducedLevel(last, store));
  }
  return all;
}

function reducedLevel(fine: RasterLevel, store: BlockStore): RasterLevel {
  const columns = Math.ceil(fine.columns / FACTOR);
  const rows = Math.ceil(fine.rows / FACTOR);
  const isStrips = fine.blockColumns >= fine.columns;
  const blockColumns = isStrips ? columns : BLOCK;
  const blockRows = isStrips ? STRIP_ROWS : BLOCK;

  const made: RasterLevel = {
    columns,
    rows,
    blockColumns,
    blockRows,
    async readBlock(blockColumn, blockRow) {
      const rowsHere = Math.min(blockRows, rows - blockRow * blockRows);
      const source = emptyWindow({
        column: blockColumn * blockColumns * FACTOR,
        row: blockRow * blockRows * FACTOR,
        columns: blockColumns * FACTOR,
        rows: rowsHere * FACTOR,
      });
      await fillFromLevel(source, fine, store);
      return average(source.heightsM, blockColumns, rowsHere);
    },
  };
  const kept = makeBlockStore(KEPT_CELLS);
  return { ...made, readBlock: (column, row) => kept.block(made, column, row) };
}

/** Mean of the cells with data; no data where half of them or more have none. */
function average(fine: Float32Array, columns: number, rows: number): Float32Array {
  const coarse = new Float32Array(columns * rows);
  const stride = columns * FACTOR;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      let sum = 0;
      let count = 0;
      for (let k = 0; k < FACTOR * FACTOR; k++) {
        const at = (row * FACTOR + (k >> 2)) * stride + column * FACTOR + (k & 3);
        const heightM = fine[at]!;
        if (!Number.isNaN(heightM)) {
          sum += heightM;
          count++;
        }
      }
      coarse[row * columns + column] = count * 2 > FACTOR * FACTOR ? sum / count : Number.NaN;
    }
  }
  return coarse;
}

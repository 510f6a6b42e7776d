import { type BlockStore, makeBlockStore } from "./block-store.ts";
import type { RasterLevel } from "./open-raster.ts";
import { emptyWindow, fillFromLevel, type WindowCells } from "./window.ts";

/** Cells of the finer level read at a time where that is possible: 4 MB. */
const PIECE_CELLS = 1_048_576;
const BLOCK = 256;
const STRIP_ROWS = 16;

/**
 * A coarser level made block by block as it is needed, for pictures of the ground only, never for heights that are
 * counted with.
 * @param factor cells of the finer level along one side of a reduced cell
 * @param store blocks of the finer level
 * @param made keeps what was reduced
 */
export function reducedLevel(
  fine: RasterLevel,
  factor: number,
  store: BlockStore,
  made: BlockStore,
): RasterLevel {
  const columns = Math.ceil(fine.columns / factor);
  const rows = Math.ceil(fine.rows / factor);
  const isStrips = fine.blockColumns >= fine.columns;
  const blockColumns = isStrips ? columns : BLOCK;
  const blockRows = isStrips ? STRIP_ROWS : BLOCK;
  const level: RasterLevel = {
    ...{ columns, rows, blockColumns, blockRows },
    async readBlock(blockColumn, blockRow) {
      const row = blockRow * blockRows;
      const rowsHere = Math.min(blockRows, rows - row);
      const target = emptyWindow({
        ...{ column: blockColumn * blockColumns, row },
        ...{ columns: blockColumns, rows: rowsHere },
      });
      const reduce = makeReducer(fine, factor, store);
      for (const piece of piecesOf(target, fine, factor)) await reduce(target, piece);
      return target.heightsM;
    },
  };
  return { ...level, readBlock: (column, row) => made.block(level, column, row) };
}

/** Reduced cells that are made from one read of the finer level. */
export interface Piece {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
}

/**
 * Cuts reduced cells into pieces, each made from at most about a million finer cells, and along the finer level's
 * own blocks so that none of them is decoded more often than it must be.
 */
export function piecesOf(wanted: Piece, fine: RasterLevel, factor: number): Piece[] {
  const blockRows = Math.max(1, Math.round(fine.blockRows / factor));
  const high = Math.min(wanted.rows, blockRows);
  const most = Math.max(1, Math.floor(PIECE_CELLS / (high * factor * factor)));
  const blockColumns = Math.max(1, Math.round(fine.blockColumns / factor));
  const aligned = Math.max(blockColumns, Math.floor(most / blockColumns) * blockColumns);
  const wide = Math.min(wanted.columns, aligned);
  const pieces: Piece[] = [];
  for (let row = 0; row < wanted.rows; row += high) {
    for (let column = 0; column < wanted.columns; column += wide) {
      pieces.push({
        ...{ column: wanted.column + column, row: wanted.row + row },
        columns: Math.min(wide, wanted.columns - column),
        rows: Math.min(high, wanted.rows - row),
      });
    }
  }
  return pieces;
}

/**
 * Returns what writes one piece of a window of reduced cells: the mean of the cells with data, none where half have
 * none. Pieces are to be written one after the other: they share the memory for the finer cells.
 */
export function makeReducer(
  fine: RasterLevel,
  factor: number,
  store: BlockStore,
): (target: WindowCells, piece: Piece) => Promise<void> {
  let held = new Float32Array(0);
  return async (target, piece) => {
    const columns = piece.columns * factor;
    const rows = piece.rows * factor;
    if (held.length < columns * rows) held = new Float32Array(columns * rows);
    const heightsM = held.subarray(0, columns * rows).fill(Number.NaN);
    const place = { column: piece.column * factor, row: piece.row * factor };
    const source = { ...place, columns, rows, heightsM };
    await fillFromLevel(source, fine, store);
    const first = (piece.row - target.row) * target.columns + (piece.column - target.column);
    for (let row = 0; row < piece.rows; row++) {
      averageRow(source, row, factor, target.heightsM, first + row * target.columns);
    }
  };
}

function averageRow(
  { heightsM, columns }: WindowCells,
  row: number,
  factor: number,
  into: Float32Array,
  to: number,
): void {
  const wide = columns / factor;
  const sums = new Float64Array(wide);
  const counts = new Uint32Array(wide);
  for (let line = row * factor; line < (row + 1) * factor; line++) {
    const start = line * columns;
    for (let column = 0; column < wide; column++) {
      const from = start + column * factor;
      for (let at = from; at < from + factor; at++) {
        const heightM = heightsM[at]!;
        if (!Number.isNaN(heightM)) {
          sums[column]! += heightM;
          counts[column]! += 1;
        }
      }
    }
  }
  const half = (factor * factor) / 2;
  for (let column = 0; column < wide; column++) {
    into[to + column] = counts[column]! > half ? sums[column]! / counts[column]! : Number.NaN;
  }
}

/** A store for reduced blocks, which are kept apart because they take long to make again. */
export function makeReducedStore(): BlockStore {
  return makeBlockStore(REDUCED_CELLS);
}

/** 64 MB. */
const REDUCED_CELLS = 16_000_000;

import type { GroundSampler } from "../../shared/ground.ts";
import { holdsBox, type PlaneBox } from "../../shared/site.ts";

/**
 * The ground of a site on a lattice of the search's own, read from the sampler only where it is asked
 * for, and kept: a search after a change of stage reads nothing again. It is a `GroundSampler` itself.
 * `heightM` holds heights less `baseM`: NaN where there is no data, Infinity where not yet read.
 */
export interface SearchGround extends GroundSampler {
  readonly source: GroundSampler;
  readonly box: PlaneBox;
  /** Spacing of the lattice, metres. */
  readonly spacingM: number;
  /** Plan-plane position of node (0, 0), metres; nodes run east, then north. */
  readonly x0M: number;
  readonly y0M: number;
  readonly columns: number;
  readonly rows: number;
  readonly baseM: number;
  readonly heightM: Float32Array;
  /** 1 for each block of 16 x 16 cells whose nodes have all been read. */
  readonly blockRead: Uint8Array;
  readonly blockColumns: number;
  /** Whether any node read so far has no data. */
  readonly seen: { holes: boolean };
}

/** Usual spacing of the lattice, metres. */
const FINE_M = 0.5;
/** Most nodes kept; the lattice is made coarser beyond it. */
const MOST_NODES = 9_000_000;
const BLOCK_SHIFT = 4;

/**
 * Prepares the ground in a box; reads only one height. Pass the result as a request's `ground` to keep what
 * is read.
 * @param finestM spacing of the lattice; doubled where the box is too large for it
 */
export function searchGround(source: GroundSampler, box: PlaneBox, finestM = FINE_M): SearchGround {
  let spacingM = finestM;
  while (((box.maxX - box.minX) * (box.maxY - box.minY)) / spacingM ** 2 > MOST_NODES)
    spacingM *= 2;
  const step = 2 * spacingM;
  const x0M = Math.floor(box.minX / step) * step - step;
  const y0M = Math.floor(box.minY / step) * step - step;
  const columns = 2 * Math.ceil((box.maxX - x0M) / step) + 3;
  const rows = 2 * Math.ceil((box.maxY - y0M) / step) + 3;
  const middle = source.heightAt((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
  const blockColumns = (columns >> BLOCK_SHIFT) + 1;
  const ground: SearchGround = {
    source,
    box,
    cellM: source.cellM,
    spacingM,
    x0M,
    y0M,
    columns,
    rows,
    baseM: Number.isFinite(middle) ? middle : 0,
    heightM: new Float32Array(columns * rows).fill(Infinity),
    blockRead: new Uint8Array(blockColumns * ((rows >> BLOCK_SHIFT) + 1)),
    blockColumns,
    seen: { holes: false },
    heightAt: (xM, yM) => heightBetween(ground, xM, yM),
  };
  return ground;
}

/** The ground of a request for a box: itself when it was prepared for at least that box, else prepared now. */
export function preparedGround(ground: GroundSampler, box: PlaneBox): SearchGround {
  if ("blockRead" in ground) {
    const prepared = ground as SearchGround;
    if (holdsBox(prepared.box, box)) return prepared;
    return searchGround(prepared.source, box);
  }
  return searchGround(ground, box);
}

/** Height of one node less `baseM`; NaN where there is no data. */
export function nodeHeight(ground: SearchGround, column: number, row: number): number {
  const at = row * ground.columns + column;
  const kept = ground.heightM[at]!;
  if (kept !== Infinity) return kept;
  const xM = ground.x0M + column * ground.spacingM;
  const yM = ground.y0M + row * ground.spacingM;
  const read = ground.source.heightAt(xM, yM) - ground.baseM;
  const height = Number.isFinite(read) ? read : Number.NaN;
  if (Number.isNaN(height)) ground.seen.holes = true;
  ground.heightM[at] = height;
  return ground.heightM[at]!;
}

/** Reads every node of one block, its far edges included. */
function readBlock(ground: SearchGround, block: number): void {
  const size = 1 << BLOCK_SHIFT;
  const column0 = (block % ground.blockColumns) * size;
  const row0 = Math.floor(block / ground.blockColumns) * size;
  const column1 = Math.min(column0 + size, ground.columns - 1);
  const row1 = Math.min(row0 + size, ground.rows - 1);
  for (let row = row0; row <= row1; row++) {
    for (let column = column0; column <= column1; column++) nodeHeight(ground, column, row);
  }
  ground.blockRead[block] = 1;
}

/** Reads the blocks that hold a leg between two places of the lattice, in cells. */
export function readAlong(
  ground: SearchGround,
  u1: number,
  v1: number,
  u2: number,
  v2: number,
): void {
  const { blockRead, blockColumns } = ground;
  const last = Math.max(u1, u2) >> BLOCK_SHIFT;
  const lastRow = Math.max(v1, v2) >> BLOCK_SHIFT;
  for (let row = Math.min(v1, v2) >> BLOCK_SHIFT; row <= lastRow; row++) {
    for (let column = Math.min(u1, u2) >> BLOCK_SHIFT; column <= last; column++) {
      const block = row * blockColumns + column;
      if (blockRead[block] === 0) readBlock(ground, block);
    }
  }
}

/** Bilinear height, metres; NaN outside the lattice or where a needed node has no data. */
function heightBetween(ground: SearchGround, xM: number, yM: number): number {
  const u = (xM - ground.x0M) / ground.spacingM;
  const v = (yM - ground.y0M) / ground.spacingM;
  const column = Math.floor(u);
  const row = Math.floor(v);
  if (!(column >= 0 && row >= 0 && column < ground.columns - 1 && row < ground.rows - 1)) {
    return Number.NaN;
  }
  const block = (row >> BLOCK_SHIFT) * ground.blockColumns + (column >> BLOCK_SHIFT);
  if (ground.blockRead[block] === 0) readBlock(ground, block);
  const at = row * ground.columns + column;
  const { heightM } = ground;
  const fx = u - column;
  const fy = v - row;
  const south = heightM[at]! + fx * (heightM[at + 1]! - heightM[at]!);
  const above = at + ground.columns;
  const north = heightM[above]! + fx * (heightM[above + 1]! - heightM[above]!);
  return ground.baseM + south + fy * (north - south);
}

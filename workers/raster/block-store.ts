import type { RasterLevel } from "./open-raster.ts";

/** Decoded cells kept for reuse: 24 million, 96 MB. */
const KEPT_CELLS = 24_000_000;

/** Decoded blocks of all levels, the least lately used dropped first; parallel calls share one read. */
export interface BlockStore {
  block(level: RasterLevel, blockColumn: number, blockRow: number): Promise<Float32Array>;
}

export function makeBlockStore(keptCells = KEPT_CELLS): BlockStore {
  const ids = new Map<RasterLevel, number>();
  const kept = new Map<string, Float32Array>();
  const reading = new Map<string, Promise<Float32Array>>();
  let cells = 0;

  const keyOf = (level: RasterLevel, blockColumn: number, blockRow: number): string => {
    let id = ids.get(level);
    if (id === undefined) {
      id = ids.size;
      ids.set(level, id);
    }
    return `${id}/${blockColumn}/${blockRow}`;
  };

  const keep = (key: string, block: Float32Array): void => {
    kept.set(key, block);
    cells += block.length;
    for (const [oldest, dropped] of kept) {
      if (cells <= keptCells || oldest === key) return;
      kept.delete(oldest);
      cells -= dropped.length;
    }
  };

  const read = async (key: string, work: () => Promise<Float32Array>): Promise<Float32Array> => {
    try {
      const block = await work();
      keep(key, block);
      return block;
    } finally {
      reading.delete(key);
    }
  };

  return {
    async block(level, blockColumn, blockRow) {
      const key = keyOf(level, blockColumn, blockRow);
      const known = kept.get(key);
      if (known) {
        kept.delete(key);
        kept.set(key, known);
        return known;
      }
      const pending = reading.get(key) ?? read(key, () => level.readBlock(blockColumn, blockRow));
      reading.set(key, pending);
      return pending;
    },
  };
}

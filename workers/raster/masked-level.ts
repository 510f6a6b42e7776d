import type { BlockStore } from "./block-store.ts";
import type { RasterLevel } from "./open-raster.ts";
import { emptyWindow, fillFromLevel } from "./window.ts";

/** A level whose cells have no data wherever the mask, of the same size, is 0. */
export function maskedLevel(level: RasterLevel, mask: RasterLevel, store: BlockStore): RasterLevel {
  const { columns, rows, blockColumns, blockRows } = level;
  return {
    columns,
    rows,
    blockColumns,
    blockRows,
    async readBlock(blockColumn, blockRow) {
      const heightsM = (await level.readBlock(blockColumn, blockRow)).slice();
      const window = emptyWindow({
        column: blockColumn * blockColumns,
        row: blockRow * blockRows,
        columns: blockColumns,
        rows: heightsM.length / blockColumns,
      });
      await fillFromLevel(window, mask, store);
      for (let i = 0; i < heightsM.length; i++) {
        if (window.heightsM[i] === 0) heightsM[i] = Number.NaN;
      }
      return heightsM;
    },
  };
}

import { roundingOf } from "../../shared/ground-marks.ts";
import type { RasterLevel } from "./open-raster.ts";

/** A level whose cells have no data wherever they hold one of the values, metres. */
export function withoutValues(level: RasterLevel, valuesM: readonly number[]): RasterLevel {
  return {
    ...level,
    async readBlock(blockColumn, blockRow) {
      const heightsM = (await level.readBlock(blockColumn, blockRow)).slice();
      for (const valueM of valuesM) {
        const [from, to] = [valueM - roundingOf(valueM), valueM + roundingOf(valueM)];
        for (let i = 0; i < heightsM.length; i++) {
          const heightM = heightsM[i]!;
          if (heightM >= from && heightM <= to) heightsM[i] = Number.NaN;
        }
      }
      return heightsM;
    },
  };
}

import { FOOT_M } from "../../shared/constants.ts";
import type { HeightRange, TerrainFile } from "../../shared/messages.ts";
import { makeBlockStore } from "./block-store.ts";
import { makeLocator } from "./locate.ts";
import { joinRasters } from "./mosaic.ts";
import type { OpenRaster } from "./open-raster.ts";
import { sortFiles } from "./sort-files.ts";
import { placeOf } from "./summary.ts";
import { surveyHeights } from "./survey-heights.ts";
import { openWanted, wantedRasters } from "./wanted-rasters.ts";

/**
 * Lowest and highest number of the rasters that state no vertical unit, as stored, and where all of them lie;
 * null when every one of them states its unit or none holds a height.
 * @throws Refusal when a file cannot be read or does not fit the others
 */
export async function heightRange(files: readonly TerrainFile[]): Promise<HeightRange | null> {
  const rasters: OpenRaster[] = [];
  for (const each of (await wantedRasters(sortFiles(files).rasters)).wanted) {
    rasters.push(await openWanted(each));
  }
  const silent = rasters.filter(({ vertical }) => vertical.unit === null);
  const [first, ...others] = rasters;
  if (!first || silent.length === 0) return null;
  const store = makeBlockStore();
  // Read as feet, so that no height in feet is taken for one that cannot be on Earth.
  const levels = silent.map((raster) => raster.levels(FOOT_M, store));
  const { heights } = await surveyHeights(levels, store);
  const { lowestM, highestM } = heights;
  if (!(lowestM <= highestM)) return null;
  const mosaic = joinRasters([first, ...others]);
  const { bounds } = placeOf(mosaic, makeLocator(mosaic));
  return { lowest: lowestM / FOOT_M, highest: highestM / FOOT_M, bounds };
}

import { statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileSlices } from "../../workers/command/file-slices.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { startGdal } from "../helpers/gdal.ts";
import { largeRaster } from "../helpers/large-raster.ts";
import type { BenchRow } from "./row.ts";

/*
 * The first picture of a raster without overviews: every cell is read once. The peer averages the same file down to
 * the same size in the same run.
 */

const SIDE = 16_384;
const REDUCED = SIDE / 16;

export async function rows(): Promise<readonly BenchRow[]> {
  const gdal = await startGdal();
  try {
    const path = join(gdal.folder, "large.tif");
    writeFileSync(path, largeRaster({ side: SIDE, tile: 256, deflate: false }));
    const { ms, mostMB } = await firstPicture(path);
    const options = ["-of", "ENVI", "-outsize", `${REDUCED}`, `${REDUCED}`, "-r", "average"];
    const peerMs = await gdal.translateMs("large.tif", options, "reduced");
    const name = `first picture of ${SIDE} x ${SIDE} without overviews (${mostMB} MB at most)`;
    return [{ name, ms, peer: "GDAL 3.8 (gdal3.js), average", peerMs, promisedMs: null }];
  } finally {
    gdal.remove();
  }
}

async function firstPicture(path: string): Promise<{ ms: number; mostMB: number }> {
  const blob = fileSlices(path, statSync(path).size);
  const terrain = await openTerrain([{ name: "large.tif", blob }], null);
  let most = 0;
  const watch = setInterval(() => {
    most = Math.max(most, process.memoryUsage().rss);
  }, 20);
  const startedAt = performance.now();
  const cellsPerPixel = SIDE / 512;
  await terrain.readGrid(
    (column, row) => terrain.cells.toLonLat(column * cellsPerPixel, row * cellsPerPixel),
    512,
    512,
  );
  clearInterval(watch);
  return { ms: performance.now() - startedAt, mostMB: Math.round(most / 1e6) };
}

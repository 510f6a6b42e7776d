import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { makeBlockStore } from "../../workers/raster/block-store.ts";
import { builtOverview } from "../../workers/raster/built-overview.ts";
import { openFile } from "../../workers/raster/open-file.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { largeRaster } from "../helpers/large-raster.ts";
import { madeFile } from "../helpers/raster-files.ts";

/* GDAL 3.8 (gdal3.js): gdal_translate -r average is the mean of the cells under each reduced cell. */

const SIDE = 1024;
const FACTOR = 16;

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
});
afterAll(() => gdal.remove());

it.each([
  ["tiles", { side: SIDE, tile: 128, deflate: false }],
  ["strips of one row", { side: SIDE, tile: null, deflate: true }],
])("a built overview of %s has GDAL's averages", async (_, kind) => {
  const bytes = largeRaster(kind);
  writeFileSync(join(gdal.folder, "large.tif"), bytes);
  const size = `${SIDE / FACTOR}`;
  await gdal.translate(
    "large.tif",
    ["-of", "ENVI", "-ot", "Float32", "-outsize", size, size, "-r", "average"],
    "reduced",
  );
  const reduced = readFileSync(join(gdal.folder, "reduced."));
  const theirs = new Float32Array(new Uint8Array(reduced).buffer);

  const sides = { projection: null, world: null, metadata: null, overviews: null, mask: null };
  const raster = await openFile({ file: madeFile("large.tif", bytes), sides });
  const store = makeBlockStore();
  const overview = builtOverview(raster.levels(1, store)[0]!, FACTOR, null);
  const ours = await overview.level.readBlock(0, 0);
  for (let i = 0; i < theirs.length; i++) {
    const at = Math.floor(i / (SIDE / FACTOR)) * 256 + (i % (SIDE / FACTOR));
    expect(Math.abs(ours[at]! - theirs[i]!)).toBeLessThan(2e-5);
  }
});

import { copyFileSync, openAsBlob, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readPlanFile } from "../../shared/plan-file.ts";
import { makeEngine } from "../../workers/engine.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { said } from "../helpers/said.ts";

/*
 * One ring on one sloping ground, in national references whose datum lies up to 324 m off WGS 84 though its
 * ellipsoid is the modern one, or whose projection is oblique (made for this test). The bags are those of the
 * same raster brought to a WGS 84 UTM zone by GDAL (gdalwarp, bilinear), up to the error of the shift.
 */

const FIXTURES = fileURLToPath(new URL("../fixtures/references/", import.meta.url));

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
}, 60_000);
afterAll(() => gdal.remove());

/** The one line of a plan, sized on a raster in metres. */
async function sized(planFile: string, raster: string) {
  const read = readPlanFile(readFileSync(planFile, "utf8"));
  if (!read.ok) throw new Error(said(read.failure).message);
  const engine = makeEngine();
  const files = [{ name: "ground.tif", blob: await openAsBlob(raster) }];
  const { crsNote } = await engine.openTerrain({ files, verticalUnit: "metre" });
  const { lines } = await engine.size({ plan: read.value.plan, live: false });
  const { bags, lengthNoDataM } = lines[0]!.totals;
  return {
    bags,
    withoutDataM: lengthNoDataM,
    errorM: crsNote && "errorM" in crsNote ? crsNote.errorM : null,
  };
}

test.each([
  [2100, 32_634, "Greece: GGRS87"],
  [2039, 32_636, "Israel 1993"],
  [3912, 32_633, "Slovenia: MGI 1901"],
  [3375, 32_647, "Malaysia: oblique Mercator"],
  [2326, 32_650, "Hong Kong 1980"],
])(
  "EPSG:%i takes the bags that GDAL's EPSG:%i takes (%s)",
  async (code, zone) => {
    const name = `epsg${code}.tif`;
    const plan = join(FIXTURES, `epsg${code}.geojson`);
    copyFileSync(join(FIXTURES, name), join(gdal.folder, name));
    const warped = join(gdal.folder, `${code}-utm.tif`);
    const options = [
      "-of",
      "GTiff",
      "-t_srs",
      `EPSG:${zone}`,
      "-r",
      "bilinear",
      "-et",
      "0",
      "-dstnodata",
      "-9999",
    ];
    await gdal.warp(name, [...options, "-tr", "2", "2"], `${code}-utm`);
    const judged = await sized(plan, warped);
    const ours = await sized(plan, join(FIXTURES, name));
    expect(judged.bags).toBeGreaterThan(10_000);
    expect(ours.withoutDataM).toBe(0);
    expect(Math.abs(ours.bags / judged.bags - 1)).toBeLessThan(0.03);
    expect(ours.errorM).toBeGreaterThan(0);
  },
  120_000,
);

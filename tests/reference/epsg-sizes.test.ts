import { spawnSync } from "node:child_process";
import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Gdal, startGdal } from "../fixtures/gdal.ts";

/*
 * One ring on one sloping ground, in national references whose datum lies up to 324 m off WGS 84 though its
 * ellipsoid is the modern one, or whose projection is oblique (made for this test). The bags are those of the
 * same raster brought to a WGS 84 UTM zone by GDAL (gdalwarp, bilinear), up to the error of the shift.
 */

const FIXTURES = fileURLToPath(new URL("../fixtures/references/", import.meta.url));
const PROGRAM = fileURLToPath(new URL("../../workers/command.ts", import.meta.url));

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
}, 60_000);
afterAll(() => gdal.remove());

interface Answer {
  readonly bags: number;
  readonly withoutDataM: number;
  readonly note: string;
}

function sized(plan: string, raster: string): Answer {
  const tsx = fileURLToPath(import.meta.resolve("tsx"));
  const words = ["size", plan, "--terrain", raster, "--vertical-unit", "m"];
  const { stdout, stderr } = spawnSync(process.execPath, ["--import", tsx, PROGRAM, ...words], {
    encoding: "utf8",
  });
  expect(stderr).toBe("");
  const { alternatives, terrain } = JSON.parse(stdout);
  const { bags, lengthNoDataM } = alternatives[0].totals;
  return { bags, withoutDataM: lengthNoDataM, note: terrain.crsNote };
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
    const options = ["-of", "GTiff", "-t_srs", `EPSG:${zone}`, "-r", "bilinear", "-et", "0"];
    await gdal.warp(name, [...options, "-tr", "2", "2"], `${code}-utm`);
    const judged = sized(plan, warped);
    const ours = sized(plan, join(FIXTURES, name));
    expect(judged.bags).toBeGreaterThan(10_000);
    expect(ours.withoutDataM).toBe(0);
    expect(Math.abs(ours.bags / judged.bags - 1)).toBeLessThan(0.03);
    expect(ours.note).toMatch(/about \d+ m\b/);
  },
  120_000,
);

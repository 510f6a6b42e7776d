import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { planPlane } from "../../shared/plan-plane.ts";
import { openTerrain, type Terrain } from "../../workers/raster/terrain.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { RASTERS, rasterFile } from "../helpers/raster-files.ts";
import { REFERENCES } from "../helpers/raster-matrix.ts";
import { seededRandom } from "../helpers/seeded-random.ts";

/* Known values, side-cars and tiles, with GDAL (gdal3.js) as the judge. */

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
});
afterAll(() => gdal.remove());

const openAll = async (...names: string[]) =>
  openTerrain(await Promise.all(names.map(rasterFile)), null);

async function samplerOf(terrain: Terrain) {
  const [west, south, east, north] = terrain.summary.bounds;
  const plane = planPlane([(west + east) / 2, (south + north) / 2]);
  const box = { minX: -60, minY: -60, maxX: 60, maxY: 60 };
  return { plane, sampler: await terrain.samplerFor(plane, box) };
}

test("the Olinda raster has the heights that GDAL finds", async () => {
  const terrain = await openTerrain([await rasterFile("olinda_dem_utm25s.tif")], "metre");
  expect(terrain.summary.verticalUnitFrom).toBe("person");
  const known: [number, number, number][] = [
    [292_000, 9_115_000, 10.800474664413],
    [290_123.4, 9_118_765.4, 68.491937159115],
    [296_500.5, 9_112_345.6, 0],
  ];
  const lonLats = await gdal.transform(
    known.map(([x, y]) => [x, y]),
    "EPSG:31985",
    "EPSG:4326",
  );
  for (const [i, [, , heightM]] of known.entries()) {
    const at = lonLats[i] as [number, number];
    expect(Math.abs((await terrain.probe(at)) - heightM)).toBeLessThan(0.001);
    const sampler = await terrain.samplerFor(planPlane(at), {
      minX: -9,
      minY: -9,
      maxX: 9,
      maxY: 9,
    });
    expect(Math.abs(sampler.heightAt(0, 0) - heightM)).toBeLessThan(0.001);
  }
});

test.each([
  ["side by side", ["tile-nw.tif", "tile-ne.tif", "tile-sw.tif", "tile-se.tif"]],
  ["in any order", ["tile-se.tif", "tile-nw.tif", "tile-sw.tif", "tile-ne.tif"]],
  ["overlapping", ["tile-nw.tif", "tile-ne.tif", "tile-sw.tif", "tile-se.tif", "tile-middle.tif"]],
  [
    "overlapping, the middle first",
    ["tile-middle.tif", "tile-nw.tif", "tile-ne.tif", "tile-sw.tif", "tile-se.tif"],
  ],
])("tiles %s are exactly the whole", async (_how, names) => {
  const whole = await openAll("f32-none-strips.tif");
  const tiles = await openAll(...names);
  expect(tiles.summary).toMatchObject({
    columns: whole.summary.columns,
    rows: whole.summary.rows,
    corners: whole.summary.corners,
    lowestM: whole.summary.lowestM,
    highestM: whole.summary.highestM,
  });
  expect(tiles.summary.notes.some((note) => note.kind === "tiles" && note.overlap)).toBe(
    names.length > 4,
  );
  const a = await samplerOf(whole);
  const b = await samplerOf(tiles);
  const random = seededRandom(7);
  let compared = 0;
  for (let i = 0; i < 20_000; i++) {
    const [x, y] = [random() * 76 - 38, random() * 60 - 30];
    const [found, expected] = [b.sampler.heightAt(x, y), a.sampler.heightAt(x, y)];
    if (!Object.is(found, expected)) expect(found, `at ${x} ${y}`).toBe(expected);
    if (!Number.isNaN(expected)) compared++;
  }
  expect(compared).toBeGreaterThan(10_000);
});

test("a gap between tiles is no ground", async () => {
  const tiles = await openAll("tile-nw.tif", "tile-se.tif");
  const { sampler } = await samplerOf(tiles);
  expect(sampler.heightAt(20, 10)).toBeNaN();
  expect(sampler.heightAt(-20, 10)).toBeGreaterThan(200);
});

test("a bare TIFF with its world file and .prj lies where GDAL puts it", async () => {
  const terrain = await openAll("bare.tif", "bare.tfw", "ascii.prj");
  expect(terrain.summary).toMatchObject({ verticalUnit: "metre", verticalDatum: "NAVD_1988" });
  const whole = await openAll("f32-none-strips.tif");
  const a = await samplerOf(whole);
  const b = await samplerOf(terrain);
  for (let x = -30; x < 30; x += 1.37) {
    const [expected, found] = [a.sampler.heightAt(x, x / 2), b.sampler.heightAt(x, x / 2)];
    if (Number.isNaN(expected)) expect(found).toBeNaN();
    else expect(Math.abs(found - expected)).toBeLessThan(0.001);
  }
});

/** A picture in the raster's own grid: GDAL places its corners, and the middle is bilinear between them. */
async function pictureOf(cell: number) {
  const { origin } = REFERENCES.utmMetre;
  const [columns, rows] = [Math.floor(250 / cell), Math.floor(200 / cell)];
  const grid = { x0: origin[0] + 11.3, y0: origin[1] - 12.7, cell, columns, rows };
  const corners = [0, 1, 2, 3].map((i) => [
    grid.x0 + (i & 1 ? columns : 0) * cell,
    grid.y0 - (i & 2 ? rows : 0) * cell,
  ]);
  const [a, b, c, d] = (await gdal.transform(corners, "EPSG:26915", "EPSG:4326")) as number[][];
  const project = (column: number, row: number): [number, number] => {
    const [u, v] = [(column + 0.5) / columns, (row + 0.5) / rows];
    const mix = (k: number) =>
      (1 - v) * ((1 - u) * a![k]! + u * b![k]!) + v * ((1 - u) * c![k]! + u * d![k]!);
    return [mix(0), mix(1)];
  };
  return { grid, project };
}

test.each([
  ["at full resolution equals", 0.83, 0.002],
  ["from an overview lies near", 4.1, 0.6],
])("a picture %s GDAL's bilinear", async (_how, cell, toleranceM) => {
  copyFileSync(join(RASTERS, "cog.tif"), join(gdal.folder, "cog.tif"));
  const terrain = await openAll("cog.tif");
  const { grid, project } = await pictureOf(cell);
  const judged = await gdal.bilinear("cog.tif", grid);
  const picture = await terrain.readGrid(project, grid.columns, grid.rows);
  const differences = Array.from(picture, (heightM, i) => Math.abs(heightM - judged[i]!)).filter(
    (difference) => !Number.isNaN(difference),
  );
  expect(differences.length).toBeGreaterThan(picture.length * 0.7);
  expect(Math.max(...differences.slice(0, 50_000))).toBeLessThan(toleranceM);
  const mean = differences.reduce((sum, difference) => sum + difference, 0) / differences.length;
  expect(mean).toBeLessThan(toleranceM / 5);
});

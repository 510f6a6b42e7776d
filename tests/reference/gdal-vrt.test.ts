import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { groundNoteWords } from "../../shared/words/ground-notes.ts";
import { openTerrain, type Terrain } from "../../workers/raster/terrain.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { madeFile, RASTERS } from "../helpers/raster-files.ts";
import { COLUMNS, REFERENCES, ROWS } from "../helpers/raster-matrix.ts";
import { vrtText } from "../helpers/vrt-text.ts";

/* Tiles by a VRT, with GDAL (gdal3.js) reading the same VRT as the judge. */

const [x0, y0] = REFERENCES.utmMetre.origin;
const WHOLE = { x0: x0 as number, y0: y0 as number, cell: 1, columns: COLUMNS, rows: ROWS };
const tile = (name: string, column: number, row: number, columns: number, rows: number) => ({
  ...{ file: `${name}.tif`, columns, rows },
  to: { column, row, columns, rows },
});
const TILES = [
  tile("tile-nw", 0, 0, 40, 30),
  tile("tile-ne", 40, 0, 30, 30),
  tile("tile-sw", 0, 30, 40, 23),
  tile("tile-se", 40, 30, 30, 23),
];

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
  for (const { file } of [...TILES, { file: "tile-middle.tif" }, { file: "f32-none-strips.tif" }]) {
    copyFileSync(join(RASTERS, file), join(gdal.folder, file));
  }
});
afterAll(() => gdal.remove());

async function openHere(...names: string[]): Promise<Terrain> {
  const files = names.map((name) => madeFile(name, readFileSync(join(gdal.folder, name))));
  return openTerrain(files, null);
}

/** Our heights at the cell centres of a grid; NaN where there is no data. */
async function heightsOn(terrain: Terrain, grid: typeof WHOLE): Promise<number[]> {
  const heights: number[] = [];
  for (let j = 0; j < grid.rows; j++) {
    for (let i = 0; i < grid.columns; i++) {
      const at = terrain.lonLatAt(grid.x0 + (i + 0.5) * grid.cell, grid.y0 - (j + 0.5) * grid.cell);
      heights.push(await terrain.probe(at));
    }
  }
  return heights;
}

/** Largest difference where both have a height, and on how many places that is. */
function compared(found: readonly number[], judged: Float64Array) {
  const differences = found
    .map((heightM, i) => Math.abs(heightM - judged[i]!))
    .filter((difference) => !Number.isNaN(difference));
  return { count: differences.length, worst: Math.max(...differences) };
}

test("tiles in a VRT are, across their seams, what GDAL interpolates in it", async () => {
  writeFileSync(join(gdal.folder, "tiles.vrt"), vrtText(WHOLE, TILES));
  const grid = { x0: x0 + 30.1, y0: y0 - 21.3, cell: 0.41, columns: 50, rows: 40 };
  const terrain = await openHere("tiles.vrt", ...TILES.map(({ file }) => file));
  const { count, worst } = compared(
    await heightsOn(terrain, grid),
    await gdal.bilinear("tiles.vrt", grid),
  );
  expect(count).toBeGreaterThan(1500);
  expect(worst).toBeLessThan(0.001);
});

test("of files with cells of one size the later in the VRT counts, as for GDAL", async () => {
  await gdal.translate(
    "tile-middle.tif",
    ["-of", "GTiff", "-scale", "0", "1000", "3", "1003"],
    "raised",
  );
  const raised = tile("raised", 25, 15, 30, 25);
  for (const order of [
    [...TILES, raised],
    [raised, ...TILES],
  ]) {
    writeFileSync(join(gdal.folder, "order.vrt"), vrtText(WHOLE, order));
    const terrain = await openHere("order.vrt", ...order.map(({ file }) => file));
    const judged = await gdal.bilinear("order.vrt", WHOLE);
    const { count, worst } = compared(await heightsOn(terrain, WHOLE), judged);
    expect(count).toBeGreaterThan(2000);
    expect(worst).toBeLessThan(0.001);
  }
});

test("a finer tile counts over a coarser, which is interpolated as GDAL does it", async () => {
  await gdal.translate(
    "f32-none-strips.tif",
    ["-of", "GTiff", "-tr", "2", "2", "-r", "average"],
    "coarse",
  );
  const coarse = {
    ...{ file: "coarse.tif", columns: 35, rows: 27 },
    to: { column: 0, row: 0, columns: 70, rows: 54 },
  };
  const fine = tile("tile-middle", 25, 15, 30, 25);
  writeFileSync(join(gdal.folder, "mixed.vrt"), vrtText({ ...WHOLE, rows: 54 }, [coarse, fine]));
  const judged = await gdal.bilinear("mixed.vrt", WHOLE);
  const terrain = await openHere("coarse.tif", "tile-middle.tif");
  expect(terrain.summary).toMatchObject({ columns: 70, rows: 54 });
  expect(terrain.summary.coarsestCellM).toBeCloseTo(2, 2);
  expect(terrain.summary.notes.map(groundNoteWords).join(" ")).toContain("the finer one");
  const found = await heightsOn(terrain, WHOLE);
  const { count, worst } = compared(found, judged);
  expect(count).toBeGreaterThan(1500);
  expect(worst).toBeLessThan(0.001);
});

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { TerrainFile } from "../../shared/messages.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { madeFile, rasterFile } from "../helpers/raster-files.ts";
import { SIDE, soundCells, soundTags, tiff, tiffBytes, tiffWith } from "../helpers/tiff-bytes.ts";

/*
 * Which cells have no data, against GDAL's own mask of the same files (gdal_translate -b mask, GDAL 3.8 as
 * gdal3.js). Files are made in the test.
 */

const { short, long, ascii } = tiff;

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
});
afterAll(() => gdal.remove());

let written = 0;

/** True where GDAL finds data in the first file. */
async function dataByGdal(files: Readonly<Record<string, Uint8Array | string>>) {
  for (const [name, bytes] of Object.entries(files)) writeFileSync(join(gdal.folder, name), bytes);
  const output = `mask${++written}`;
  await gdal.translate(Object.keys(files)[0]!, ["-of", "ENVI", "-b", "mask"], output);
  return Array.from(readFileSync(join(gdal.folder, `${output}.`)), (value) => value !== 0);
}

/** True where we find data, cell by cell. */
async function dataByUs(files: readonly TerrainFile[]) {
  const { cells, summary } = await openTerrain(files, "metre");
  const { columns, rows } = summary;
  const { heightsM } = await cells.read({ column: 0, row: 0, columns, rows });
  return Array.from(heightsM, (heightM) => !Number.isNaN(heightM));
}

/** The mark, then numbers one to sixteen steps of a 32-bit number above and below it, then ground. */
function aroundMark(mark: number): Float32Array {
  const cells = soundCells();
  const bits = new Uint32Array(Float32Array.of(mark).buffer)[0]!;
  for (let steps = 0; steps <= 16; steps++) {
    const near = (by: number) => new Float32Array(Uint32Array.of(bits + by).buffer)[0]!;
    cells[2 * steps] = near(steps);
    cells[2 * steps + 1] = near(-steps);
  }
  return cells;
}

describe("numbers that round to the declared mark count as the mark", () => {
  test.each(["-99", "-99.99", "-1.1", "0.1", "12.345", "-340.2823", "255", "-499.99", "8888.8"])(
    "%s in 32-bit cells",
    async (mark) => {
      const cells = new Uint8Array(aroundMark(Number(mark)).buffer);
      const bytes = tiffWith({ 42113: ascii(mark) }, {}, cells);
      const expected = await dataByGdal({ "near.tif": bytes });
      expect(expected.filter((isData) => !isData).length).toBeGreaterThan(4);
      expect(await dataByUs([madeFile("near.tif", bytes)])).toEqual(expected);
    },
  );

  test.each(["-99", "0.5", "70000", "-99.0"])("%s in 16-bit cells", async (mark) => {
    const numbers = Int16Array.from({ length: SIDE * SIDE }, (_, i) =>
      i < 40 ? i - 100 : 3 * (i - 60),
    );
    const tags = { 42113: ascii(mark), 258: short(16), 339: short(2) };
    const bytes = tiffWith(tags, {}, new Uint8Array(numbers.buffer));
    const expected = await dataByGdal({ "whole.tif": bytes });
    expect(await dataByUs([madeFile("whole.tif", bytes)])).toEqual(expected);
  });

  test("in a text grid whose cells were 32-bit numbers once", async () => {
    const head = "ncols 3\nnrows 2\nxllcorner 482000\nyllcorner 4983000\ncellsize 2\n";
    const text = `${head}NODATA_value -99.99\n1.5 2 3\n4 -99.99 -99.98999786376953\n`;
    const prj = await rasterFile("ascii.prj");
    const expected = await dataByGdal({ "near.asc": text });
    expect(expected).toEqual([true, true, true, true, false, false]);
    const files = [madeFile("near.asc", text), { ...prj, name: "near.prj" }];
    expect(await dataByUs(files)).toEqual(expected);
  });
});

describe("a mask beside the raster (.msk)", () => {
  const pattern = Uint8Array.from({ length: SIDE * SIDE }, (_, i) => (i % 7 < 2 ? 0 : 255));
  const flagged = (columns = SIDE, rows = SIDE) =>
    tiffBytes(
      {
        ...soundTags(columns * rows),
        ...{ 256: short(columns), 257: short(rows), 278: short(rows) },
        ...{ 254: long(4), 258: short(8), 339: short(1) },
        42112: ascii('<GDALMetadata><Item name="INTERNAL_MASK_FLAGS_1">2</Item></GDALMetadata>'),
      },
      pattern.slice(0, columns * rows),
    );

  test("hides the cells that GDAL hides", async () => {
    const files = { "masked.tif": tiffWith({}), "masked.tif.msk": flagged() };
    const expected = await dataByGdal(files);
    expect(expected).toEqual(Array.from(pattern, (value) => value !== 0));
    const ours = Object.entries(files).map(([name, bytes]) => madeFile(name, bytes));
    expect(await dataByUs(ours)).toEqual(expected);
  });

  test("hides the cells of a text grid that GDAL hides", async () => {
    const text =
      "ncols 3\nnrows 2\nxllcorner 482000\nyllcorner 4983000\ncellsize 2\n1.5 2 3\n4 5 6\n";
    const mask = flagged(3, 2);
    const expected = await dataByGdal({ "masked.asc": text, "masked.asc.msk": mask });
    expect(expected).toEqual(Array.from(pattern.slice(0, 6), (value) => value !== 0));
    const prj = { ...(await rasterFile("ascii.prj")), name: "masked.prj" };
    const files = [madeFile("masked.asc", text), prj, madeFile("masked.asc.msk", mask)];
    expect(await dataByUs(files)).toEqual(expected);
  });
});

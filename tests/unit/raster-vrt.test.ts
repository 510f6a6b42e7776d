import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { asFailure } from "../../shared/failure.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { madeFile, rasterFile } from "../helpers/raster-files.ts";
import { REFERENCES } from "../helpers/raster-matrix.ts";
import { said } from "../helpers/said.ts";
import { drystead, ROOT } from "../helpers/terminal.ts";
import { vrtText } from "../helpers/vrt-text.ts";

const [x0, y0] = REFERENCES.utmMetre.origin;
const GRID = { x0: x0 as number, y0: y0 as number, cell: 1, columns: 40, rows: 30 };
const TILE = {
  ...{ file: "tile-nw.tif", columns: 40, rows: 30 },
  to: { column: 0, row: 0, columns: 40, rows: 30 },
};
const SOUND = vrtText(GRID, [TILE]);

async function opened(text: string, ...names: string[]) {
  const rasters = await Promise.all(names.map(rasterFile));
  return openTerrain([madeFile("tiles.vrt", text), ...rasters], null);
}

async function refused(text: string, ...names: string[]) {
  try {
    await opened(text, ...names);
  } catch (thrown) {
    return said(asFailure(thrown));
  }
  throw new Error("The VRT was opened.");
}

const withSource = (from: string, to: string) => SOUND.replace(from, to);

describe("a VRT that is not of simple sources is refused by name", () => {
  test.each([
    ["warped", withSource("<VRTDataset ", '<VRTDataset subClass="VRTWarpedDataset" '), /VRTWarped/],
    [
      "with a pixel function",
      withSource(
        '<VRTRasterBand dataType="Float32" band="1">',
        '<VRTRasterBand dataType="Float32" band="1" subClass="VRTDerivedRasterBand"><PixelFunctionType>os.system</PixelFunctionType>',
      ),
      /VRTDerivedRasterBand, pixel function os.system/,
    ],
    ["with a filter", SOUND.replaceAll("ComplexSource", "KernelFilteredSource"), /KernelFiltered/],
    ["with a table of values", withSource("<NODATA>", "<LUT>0:0,9:1</LUT><NODATA>"), /LUT/],
    ["that scales", withSource("<NODATA>", "<ScaleRatio>2</ScaleRatio><NODATA>"), /ScaleRatio 2/],
    [
      "with a mask",
      withSource("<VRTRasterBand", "<MaskBand></MaskBand><VRTRasterBand"),
      /MaskBand/,
    ],
    ["of a VRT", SOUND.replace("tile-nw.tif", "tiles.vrt"), /a VRT inside a VRT/],
    ["of an address", SOUND.replace("tile-nw.tif", "https://h.example/a.tif"), /no plain file/],
    [
      "of GDAL's own file system",
      SOUND.replace("tile-nw.tif", "/vsicurl/http://h/a.tif"),
      /vsicurl/,
    ],
    ["of a second band", withSource("<SourceBand>1", "<SourceBand>2"), /band 2/],
    ["cut off", SOUND.slice(0, 400), /well-formed/],
    ["with entities", `<!DOCTYPE a [<!ENTITY b "c">]>${SOUND}`, /entities/],
    ["without a size", SOUND.replace('rasterXSize="40"', 'rasterXSize="1e999"'), /rasterXSize/],
    ["of no file", SOUND.replace(/<ComplexSource[\s\S]*<\/ComplexSource>/, ""), /names no file/],
    ["deeper than any", `<VRTDataset>${"<a>".repeat(50_000)}`, /well-formed|which is not read/],
    ["of something else", "just text", /well-formed|VRTDataset/],
  ])("%s", async (_how, text, named) => {
    const { code, message, remedy } = await refused(text, "tile-nw.tif");
    expect(code).toMatch(/^raster\/vrt-(kind|damaged|source)$/);
    expect(message).toMatch(named);
    expect(remedy).toMatch(/open/i);
  });
});

test("what a VRT names and did not come is named, and a path out of the folder reads nothing else", async () => {
  const out = SOUND.replace("tile-nw.tif", "../../../etc/passwd");
  expect(await refused(out, "tile-nw.tif")).toMatchObject({
    code: "raster/vrt-missing",
    message: expect.stringContaining('"passwd"'),
    remedy: expect.stringContaining("together"),
  });
  const terrain = await opened(SOUND.replace("tile-nw.tif", "..\\far\\TILE-NW.TIF"), "tile-nw.tif");
  expect(terrain.summary.files).toMatchObject([{ name: "tile-nw.tif" }]);
});

test("files that a VRT does not name are not read, and it says so", async () => {
  const { summary } = await opened(SOUND, "tile-nw.tif", "tile-se.tif");
  expect(summary).toMatchObject({ columns: 40, rows: 30 });
  expect(summary.notes).toMatchObject([{ kind: "vrt", unnamed: ["tile-se.tif"] }]);
});

test("a VRT that puts a file elsewhere than the file itself is refused", async () => {
  const moved = vrtText({ ...GRID, x0: GRID.x0 + 3 }, [TILE]);
  const failure = await refused(moved, "tile-nw.tif");
  expect(failure).toMatchObject({ code: "raster/vrt-place" });
  expect(failure.message).toContain("3 of its cells");
});

test("the part of a file that a VRT takes is all that counts of it", async () => {
  const part = vrtText({ ...GRID, columns: 20 }, [
    { ...TILE, columns: 20, to: { column: 0, row: 0, columns: 20, rows: 30 } },
  ]);
  const terrain = await opened(part, "tile-nw.tif");
  const at = (column: number) => terrain.lonLatAt(GRID.x0 + column, GRID.y0 - 10.5);
  expect(await terrain.probe(at(18.5))).toBeGreaterThan(200);
  expect(await terrain.probe(at(22.5))).toBeNaN();
});

test("two files of one name are refused: side-car files belong to rasters by their names", async () => {
  const twins = [await rasterFile("tile-nw.tif"), await rasterFile("tile-nw.tif")];
  await expect(openTerrain(twins, null)).rejects.toMatchObject({ code: "raster/same-name" });
});

describe("in the terminal", () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "drystead-vrt-"));
    mkdirSync(join(folder, "tiles"));
    copyFileSync(join(ROOT, "sample-terrain/demo.tif"), join(folder, "tiles/demo.tif"));
    writeFileSync(join(folder, "tiles/readme.txt"), "Tiles of the county.");
  });
  afterAll(() => rmSync(folder, { recursive: true }));
  const size = (terrain: string) =>
    drystead(["size", join(ROOT, "sample-terrain/demo.geojson"), "--terrain", terrain], folder);

  test("a folder stands for the rasters in it, and a VRT for the files it names", async () => {
    const bags = ({ out }: { out: string }) =>
      JSON.parse(out).alternatives.map((each: { totals: { bags: number } }) => each.totals.bags);
    const byFolder = await size("tiles");
    expect(bags(byFolder)).toEqual([17_879, 14_276, 14_863]);
    const { columns, rows } = JSON.parse(byFolder.out).terrain;
    const place = await demoPlace(join(folder, "tiles/demo.tif"));
    const to = { column: 0, row: 0, columns, rows };
    const tile = { file: "tiles/demo.tif", columns, rows, to };
    writeFileSync(join(folder, "county.vrt"), vrtText({ ...place, columns, rows }, [tile]));
    const byVrt = await size("county.vrt");
    expect(byVrt.said).toMatch(/^Note: "county.vrt" says which files count[^\n]*\n$/);
    expect(bags(byVrt)).toEqual(bags(byFolder));
  });

  test("a folder without rasters, and a VRT whose files are gone, are refused", async () => {
    mkdirSync(join(folder, "empty"));
    expect(await size("empty")).toMatchObject({
      code: 1,
      said: expect.stringContaining("none in it"),
    });
    writeFileSync(join(folder, "gone.vrt"), vrtText(GRID, [TILE]));
    expect(await size("gone.vrt")).toMatchObject({
      code: 1,
      said: expect.stringContaining('"tile-nw.tif"'),
    });
  });
});

/** Where a north-up raster lies, in the terms of a VRT. */
async function demoPlace(path: string) {
  const { openFile } = await import("../../workers/raster/open-file.ts");
  const { openAsBlob } = await import("node:fs");
  const sides = { projection: null, world: null, metadata: null, overviews: null, mask: null };
  const raster = await openFile({
    file: { name: "demo.tif", blob: await openAsBlob(path) },
    sides,
  });
  const { x0: left, y0: top, xPerColumn } = raster.affine;
  return { x0: left, y0: top, cell: xPerColumn };
}

import { describe, expect, test } from "vitest";
import type { LonLat, VerticalUnit } from "../../shared/plan.ts";
import { openTerrain, type Terrain } from "../../workers/raster/terrain.ts";
import { madeFile, rasterFile } from "../helpers/raster-files.ts";
import { SIDE, soundCells, soundTags, tiff, tiffBytes, tiffWith } from "../helpers/tiff-bytes.ts";

const { short, long, double, ascii } = tiff;
const NO_UNIT = short(1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 26915);

const open = (changed: Parameters<typeof tiffWith>[0], unit: VerticalUnit | null = null) =>
  openTerrain([madeFile("dem.tif", tiffWith(changed))], unit);

describe("the vertical unit", () => {
  test("of the file counts, and a contradiction is noted", async () => {
    const { summary } = await open({}, "foot");
    expect(summary).toMatchObject({
      verticalUnit: "metre",
      verticalUnitFrom: "file",
      lowestM: 100,
    });
    expect(summary.notes).toEqual([
      {
        ...{ kind: "of-files", names: expect.anything() },
        note: { kind: "unit-stated", stated: "metre", chosen: "foot" },
      },
    ]);
  });

  test("of the person counts where the file states none", async () => {
    const { summary } = await open({ 34735: NO_UNIT }, "us-survey-foot");
    expect(summary).toMatchObject({
      verticalUnit: "us-survey-foot",
      verticalUnitFrom: "person",
      notes: [],
    });
    expect(summary.lowestM).toBeCloseTo((100 * 1200) / 3937, 5);
  });

  test("is asked for where nobody states it", async () => {
    await expect(open({ 34735: NO_UNIT })).rejects.toMatchObject({ code: "ground/unit-unknown" });
  });

  test.each([
    [6360, "us-survey-foot", "NAVD88"],
    [8228, "foot", "NAVD88"],
    [5703, "metre", "NAVD88"],
    [5701, "metre", "Ordnance Datum Newlyn"],
    [5702, "us-survey-foot", "NGVD29"],
  ])("follows from the vertical code %i", async (code, unit, datum) => {
    const keys = short(
      1,
      1,
      0,
      4,
      1024,
      0,
      1,
      1,
      1025,
      0,
      1,
      1,
      3072,
      0,
      1,
      26915,
      4096,
      0,
      1,
      code,
    );
    const { summary } = await open({ 34735: keys });
    expect(summary).toMatchObject({
      verticalUnit: unit,
      verticalUnitFrom: "file",
      verticalDatum: datum,
    });
  });
});

describe("holes", () => {
  const withCell = (value: number) => {
    const cells = soundCells();
    cells[0] = value;
    return new Uint8Array(cells.buffer);
  };
  const holeShare = async (value: number, mark?: string) => {
    const tags = mark === undefined ? {} : { 42113: ascii(mark) };
    const file = madeFile("dem.tif", tiffWith(tags, {}, withCell(value)));
    return (await openTerrain([file], null)).summary.holeShare * SIDE * SIDE;
  };

  test.each([
    ["-9999", -9999],
    ["-3.4028234663852886e+38", -3.4028234663852886e38],
    ["-3.4028230607370965e+38", -3.4028230607370965e38],
    ["1.70141e+38", 1.70141e38],
    ["0.1", 0.1],
    [" nan ", Number.NaN],
  ])("marked %s are found", async (mark, value) => {
    expect(await holeShare(value, mark)).toBe(1);
  });

  test.each([-9999, -32_768, -3.4e38, 1e20, Number.NaN, Number.POSITIVE_INFINITY])(
    "of %d are found without a mark",
    async (value) => {
      expect(await holeShare(value)).toBe(1);
    },
  );

  test.each([
    ["-32768", -9999, "metre"],
    ["-9999", -10_000, "metre"],
    ["-9999", -999, "metre"],
    ["-9999", -500, "metre"],
    ["-9999", -32_767, "foot"],
    ["-9999", 32_767, "foot"],
    ["-9999", -9999.5, "us-survey-foot"],
  ] as const)(
    "declared %s are found where %d stands too, in %s, and that is said",
    async (mark, value, unit) => {
      const tags = { 34735: NO_UNIT, 42113: ascii(mark) };
      const file = madeFile("dem.tif", tiffWith(tags, {}, withCell(value)));
      const { summary } = await openTerrain([file], unit);
      expect(summary.holeShare).toBe(1 / 64);
      expect(summary.notes).toMatchObject([{ note: { kind: "strays", values: [value] } }]);
    },
  );

  test("are not made of odd but possible heights", async () => {
    for (const lowestM of [-430.5, 8840]) {
      const cells = soundCells().map((heightM) => heightM - 100 + lowestM);
      const tags = { 42113: ascii("-9999") };
      const file = madeFile("dem.tif", tiffWith(tags, {}, new Uint8Array(cells.buffer)));
      expect((await openTerrain([file], null)).summary.holeShare).toBe(0);
    }
  });

  test("in a side-car's mark are found beside the file's own", async () => {
    const aux =
      '<PAMDataset><PAMRasterBand band="1"><NoDataValue>100</NoDataValue></PAMRasterBand></PAMDataset>';
    const files = [
      madeFile("dem.tif", tiffWith({ 42113: ascii("107.875") })),
      madeFile("dem.tif.aux.xml", aux),
    ];
    expect((await openTerrain(files, null)).summary.holeShare).toBe(2 / 64);
  });
});

test("a side-car may state the unit, and what is not used is noted", async () => {
  const aux =
    '<PAMDataset><PAMRasterBand band="1"><UnitType>ft</UnitType></PAMRasterBand></PAMDataset>';
  const files = [
    madeFile("dem.tif", tiffWith({ 34735: NO_UNIT })),
    madeFile("dem.tif.aux.xml", aux),
    madeFile("other.tfw", "1"),
  ];
  const { summary } = await openTerrain(files, null);
  expect(summary.verticalUnit).toBe("foot");
  expect(summary.notes).toEqual([{ kind: "loose", name: "other.tfw" }]);
});

test("of several bands the first is read, and that is noted", async () => {
  const cells = Float32Array.from({ length: SIDE * SIDE * 2 }, (_, i) => (i % 2 ? 5 : 300));
  const tags = { 277: short(2), 258: short(32, 32), 339: short(3, 3), 338: short(0) };
  const file = madeFile("dem.tif", tiffWith(tags, {}, new Uint8Array(cells.buffer)));
  const { summary } = await openTerrain([file], null);
  expect(summary).toMatchObject({ lowestM: 300, highestM: 300 });
  expect(summary.notes).toEqual([
    { kind: "of-files", names: ["dem.tif"], note: { kind: "bands", bands: 2, vrt: null } },
  ]);
});

test("an external mask is applied", async () => {
  const mask = Uint8Array.from({ length: SIDE * SIDE }, (_, i) => (i < 5 ? 0 : 255));
  const tags = { ...soundTags(mask.length), 254: long(4), 258: short(8), 339: short(1) };
  const files = [madeFile("dem.tif", tiffWith({})), madeFile("dem.tif.msk", tiffBytes(tags, mask))];
  const { summary } = await openTerrain(files, null);
  expect(summary).toMatchObject({ holeShare: 5 / 64, lowestM: 100 + 5 / 8 });
});

describe("Esri ASCII grids", () => {
  const CELLS = "1 2 3 4 5 -9999";
  const head = (...lines: string[]) => `${lines.join("\n")}\n`;
  const plain = head("ncols 3", "nrows 2", "xllcorner 482000", "yllcorner 4983000", "cellsize 2");
  const openGrid = async (text: string) =>
    openTerrain([madeFile("dem.asc", text), await rasterFile("ascii.prj")], null);

  test.each([
    ["as usual", `${plain}NODATA_value -9999\n1 2 3\n4 5 -9999\n`],
    ["without a no-data mark", `${plain}1 2 3\n4 5 -9999`],
    [
      "with other line ends",
      `${plain}nodata_value -9999\n1 2 3\n4 5 -9999\n`.replaceAll("\n", "\r\n"),
    ],
    ["with rows broken anywhere", `${plain}NODATA_value -9999\n1 2\n3 4 5\n-9999`],
    [
      "in capitals, by centres",
      `${head("NCOLS 3", "NROWS 2", "XLLCENTER 482001", "YLLCENTER 4983001", "CELLSIZE 2")}${CELLS}`,
    ],
    [
      "with dx and dy",
      `${head("nrows 2", "ncols 3", "yllcorner 4983000", "xllcorner 482000", "dx 2", "dy 2.0")}${CELLS}`,
    ],
    ["in powers of ten", `${plain}1e0 20E-1 .3e+1 4 5. -9.999e3`],
  ])("%s", async (_how, text) => {
    const { summary, probe } = await openGrid(text);
    const usual = (await openGrid(`${plain}${CELLS}`)).summary;
    expect(summary).toMatchObject({
      corners: usual.corners,
      columns: 3,
      rows: 2,
      lowestM: 1,
      highestM: 5,
      holeShare: 1 / 6,
      verticalUnit: "metre",
      verticalDatum: "NAVD_1988",
    });
    const [west, south, east, north] = summary.bounds;
    const middle = await probe([(west + east) / 2, south + 0.75 * (north - south)]);
    expect(middle).toBeCloseTo(2, 2);
  });

  test("with cells that are not square", async () => {
    const text = `${head("ncols 3", "nrows 2", "xllcorner 482000", "yllcorner 4983000", "dx 2", "dy 5")}${CELLS}`;
    const { summary } = await openGrid(text);
    expect(summary.cellXM).toBeCloseTo(2, 2);
    expect(summary.cellYM).toBeCloseTo(5, 2);
  });
});

test("longitudes beyond 180 are the same places", async () => {
  const keys = short(1, 1, 0, 4, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326, 4099, 0, 1, 9001);
  const tags = { 34735: keys, 33550: double(0.01, 0.01, 0), 33922: double(0, 0, 0, 266.7, 45, 0) };
  const terrain = await open(tags);
  expect(terrain.summary.bounds[0]).toBeCloseTo(-93.3, 9);
  expect(await terrain.probe([-93.3 + 0.005, 45 - 0.005])).toBeCloseTo(100, 6);
});

/** 3,000 x 2,000 cells without overviews: a slope to the east with a wide hole, in strips. */
function slope(): Uint8Array<ArrayBuffer> {
  const [columns, rows] = [3000, 2000];
  const cells = Float32Array.from({ length: columns * rows }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    return column > 2000 && row < 800 ? -9999 : 100 + column / 50;
  });
  const tags = {
    ...soundTags(cells.byteLength),
    256: short(columns),
    257: short(rows),
    278: short(rows),
  };
  return tiffBytes({ ...tags, 42113: ascii("-9999") }, new Uint8Array(cells.buffer));
}

const picture = async (terrain: Terrain, columns: number, rows: number) => {
  const [nw, ne, , sw] = terrain.summary.corners;
  const mix = (u: number, v: number, k: 0 | 1) => nw[k] + u * (ne[k] - nw[k]) + v * (sw[k] - nw[k]);
  const project = (column: number, row: number): LonLat => {
    const [u, v] = [(column + 0.5) / columns, (row + 0.5) / rows];
    return [mix(u, v, 0), mix(u, v, 1)];
  };
  return terrain.readGrid(project, columns, rows);
};

test("a raster without overviews is shown whole, its holes as holes", async () => {
  const terrain = await openTerrain([madeFile("slope.tif", slope())], null);
  const heightsM = await picture(terrain, 300, 200);
  expect(heightsM[150 * 300 + 100]).toBeCloseTo(100 + 1005 / 50, 0);
  expect(heightsM[40 * 300 + 250]).toBeNaN();
  expect(heightsM[150 * 300 + 250]).toBeCloseTo(100 + 2505 / 50, 0);
  expect(terrain.summary.holeShare).toBeCloseTo((999 * 800) / 6_000_000, 1);
});

test("pictures of more than 16.7 million pixels are refused", async () => {
  const terrain = await open({});
  await expect(picture(terrain, 5000, 5000)).rejects.toMatchObject({
    code: "ground/picture-too-large",
  });
});

test("a small compressed file that unpacks to much is read no further than its cells", async () => {
  const { deflateSync } = await import("node:zlib");
  const bomb = new Uint8Array(deflateSync(Buffer.alloc(64_000_000, 66)));
  const file = madeFile("dem.tif", tiffWith({ 259: short(8), 279: long(bomb.length) }, {}, bomb));
  const { summary } = await openTerrain([file], null);
  expect(summary.highestM).toBe(new Float32Array(Uint8Array.of(66, 66, 66, 66).buffer)[0]);
});

test("external overviews are found by name", async () => {
  const files = await Promise.all(
    ["f32-none-strips.tif", "f32-none-strips.tif.ovr"].map(rasterFile),
  );
  const { summary } = await openTerrain(files, null);
  expect(summary.files).toHaveLength(1);
  expect(summary.files[0]!.format).toBe("GeoTIFF with overviews");
});

test("the floating point predictor in big-endian order is read as it is written", async () => {
  const cells = soundCells();
  const bytes = new Uint8Array(cells.buffer);
  const packed = new Uint8Array(bytes.length);
  for (let row = 0; row < SIDE; row++) {
    const planes = Array.from({ length: 4 * SIDE }, (_, i) => {
      const [plane, column] = [Math.floor(i / SIDE), i % SIDE];
      return bytes[(row * SIDE + column) * 4 + (3 - plane)]!;
    });
    packed.set(
      planes.map((byte, i) => (byte - (planes[i - 1] ?? 0)) & 255),
      row * SIDE * 4,
    );
  }
  const { deflateSync } = await import("node:zlib");
  const strip = new Uint8Array(deflateSync(packed));
  const tags = { 259: short(8), 317: short(3), 279: long(strip.length) };
  const file = madeFile("dem.tif", tiffWith(tags, { bigEndian: true }, strip));
  expect((await openTerrain([file], null)).summary).toMatchObject({
    lowestM: 100,
    highestM: 107.875,
  });
});

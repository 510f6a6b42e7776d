import { readFileSync } from "node:fs";
import { join } from "node:path";
import { deflateSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { asFailure } from "../../shared/failure.ts";
import type { TerrainFile } from "../../shared/messages.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { madeFile, RASTERS, rasterFile } from "../helpers/raster-files.ts";
import { said } from "../helpers/said.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import { SIDE, soundTags, tiff, tiffBytes, tiffWith } from "../helpers/tiff-bytes.ts";

/*
 * Damaged and hostile rasters: each must end in a refusal that says what is wrong and what to do. The
 * runner's limit of 5 s a test bounds the time; the last test bounds the memory.
 */

const { short, long, double, ascii } = tiff;
type Made = TerrainFile[] | Promise<TerrainFile[]>;

/** Opens, and if that succeeds reads everything: heights for lines, a picture and a probe. */
async function useAll(files: TerrainFile[]): Promise<void> {
  const terrain = await openTerrain(files, null);
  const [west, south, east, north] = terrain.summary.bounds;
  const middle = [(west + east) / 2, (south + north) / 2] as const;
  await terrain.samplerFor(planPlane(middle), { minX: -200, minY: -200, maxX: 200, maxY: 200 });
  const place = (c: number, r: number) =>
    [west + ((c + 0.5) / 64) * (east - west), north - ((r + 0.5) / 64) * (north - south)] as const;
  await terrain.readGrid(place, 64, 64);
  await terrain.probe(middle);
}

async function refusalOf(made: Made) {
  try {
    await useAll(await made);
  } catch (thrown) {
    return said(asFailure(thrown));
  }
  return null;
}

const one = (bytes: Uint8Array<ArrayBuffer> | string, name = "dem.tif"): TerrainFile[] => [
  madeFile(name, bytes),
];
const fixture = (name: string) => new Uint8Array(readFileSync(join(RASTERS, name)));
const cut = (name: string, length: number) => one(fixture(name).slice(0, length));
const bytesOf = (...values: number[]) => Uint8Array.from(values);

function noise(length: number, seed: number): Uint8Array<ArrayBuffer> {
  const random = seededRandom(seed);
  return Uint8Array.from({ length }, () => Math.floor(random() * 256));
}

/** A sound head of a block, then noise. */
function packedNoise(compression: number, head: number[] = []) {
  const data = new Uint8Array([...head, ...noise(200, compression)]);
  return one(tiffWith({ 259: short(compression) }, {}, data));
}

const keys = (...entries: number[][]) => short(1, 1, 0, entries.length, ...entries.flat());
const METRES = [4099, 0, 1, 9001];
const PROJECTED = [1024, 0, 1, 1];
const UTM = [3072, 0, 1, 26915];
const place = (...scaleAndTie: number[]) => ({
  33550: double(...scaleAndTie.slice(0, 3)),
  33922: double(0, 0, 0, ...scaleAndTie.slice(3), 0),
});

/** A grid by its matrix, beside that of the other file: one column goes this far in x, and in y. */
const turned = (x: number, y: number) => ({
  33550: undefined,
  33922: undefined,
  34264: double(x, y, 0, 482_008, y, -x, 0, 4_983_000, 0, 0, 0, 0, 0, 0, 0, 1),
});

const sampleName = "f32-deflate-p3-tiles.tif";
const sampleBytes = fixture(sampleName).length;

const CUT_AT: [string, () => Made][] = [
  ["nothing at all", () => one(new Uint8Array(0))],
  ["after 1 byte", () => cut(sampleName, 1)],
  ["within the magic number", () => cut(sampleName, 3)],
  ["after the magic number", () => cut(sampleName, 4)],
  ["within the place of the directory", () => cut(sampleName, 6)],
  ["before the directory", () => cut(sampleName, 8)],
  ["within the directory", () => cut(sampleName, 60)],
  ["at the end of the directory", () => cut(sampleName, 200)],
  ["within the lists of the directory", () => cut(sampleName, 330)],
  ["after the directory", () => cut(sampleName, 700)],
  ["in the middle of the cells", () => cut(sampleName, Math.floor(sampleBytes / 2))],
  ["one byte before the end", () => cut(sampleName, sampleBytes - 1)],
  ["a BigTIFF within its header", () => cut("f32-bigtiff-tiles.tif", 12)],
  ["a BigTIFF within its directory", () => cut("f32-bigtiff-tiles.tif", 100)],
  ["a cloud-optimised file after its header", () => cut("cog.tif", 1200)],
  ["a big-endian file in its cells", () => cut("f32-big-endian-deflate-tiles.tif", 3000)],
];

const OTHER_KINDS: [string, () => Made][] = [
  ["a ZIP renamed .tif", () => one(bytesOf(0x50, 0x4b, 3, 4, ...noise(300, 1)))],
  ["a gzip renamed .tif", () => one(bytesOf(0x1f, 0x8b, 8, 0, ...noise(300, 2)))],
  [
    "a PNG renamed .tif",
    () => one(bytesOf(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, ...noise(300, 3))),
  ],
  ["a point cloud", () => one("LASF\0\0\0\0")],
  ["a web page", () => one("<!doctype html><script>alert(1)</script>", '=HYPERLINK("x")<b>.tif')],
  ["noise", () => one(noise(100_000, 4))],
  ["a byte order that is none", () => one(bytesOf(0x49, 0x4d, 42, 0, 8, 0, 0, 0))],
  ["a TIFF version that is none", () => one(tiffWith({}, { magic: 44 }))],
  ["only side-car files", () => [madeFile("dem.prj", "x"), madeFile("dem.tfw", "1")]],
  ["no file", () => []],
];

const STRUCTURE: [string, () => Made][] = [
  ["no directory", () => one(tiffWith({}, { directoryAt: 0 }))],
  ["a directory beyond the end", () => one(tiffWith({}, { directoryAt: 4_000_000_000 }))],
  ["a directory that leads to itself", () => one(tiffWith({}, { next: "self" }))],
  ["a next directory beyond the end", () => one(tiffWith({}, { next: 3_000_000_000 }))],
  ["a next directory in the cells", () => one(tiffWith({}, { next: 9 }))],
  ["65,535 entries", () => one(tiffWith({}, { entries: 65_535 }))],
  ["2^52 entries", () => one(tiffWith({}, { bigTiff: true, entries: 2 ** 52 }))],
  [
    "a list of 4 billion numbers",
    () => one(tiffWith({ 34736: { ...double(1, 2), count: 4_294_967_295 } })),
  ],
  [
    "a text of 4 GB",
    () => one(tiffWith({ 42112: { ...ascii("<GDALMetadata/>"), count: 4_000_000_000 } })),
  ],
  ["a list beyond the end", () => one(tiffWith({ 33550: { ...double(1, 1, 0), at: 900_000 } }))],
  [
    "a list over the header",
    () => one(tiffWith({ 33922: { ...double(0, 0, 0, 1, 1, 0), at: 0 } })),
  ],
  [
    "a size given twice, once absurd",
    () => one(tiffWith({}, { again: { 256: long(4_000_000_000) } })),
  ],
  ["a size in letters", () => one(tiffWith({ 256: ascii("eight") }))],
  ["a size that is not a number", () => one(tiffWith({ 256: double(Number.NaN) }))],
  ["a size that is half a cell", () => one(tiffWith({ 256: double(0.5) }))],
  ["a size of nothing", () => one(tiffWith({ 256: short(0) }))],
  [
    "4 billion by 4 billion cells",
    () => one(tiffWith({ 256: long(4_294_967_295), 257: long(4_294_967_295) })),
  ],
  [
    "3 million by 3 million cells in one strip",
    () => one(tiffWith({ 256: long(3_000_000), 257: long(3_000_000), 278: long(3_000_000) })),
  ],
  ["3 million rows", () => one(tiffWith({ 257: long(3_000_000) }))],
  [
    "a compressed strip of 3 billion cells",
    () => one(tiffWith({ 256: long(60_000), 257: long(50_000), 278: long(50_000), 259: short(8) })),
  ],
  ["no bands", () => one(tiffWith({ 277: short(0) }))],
  ["more bands than cells hold", () => one(tiffWith({ 277: short(60_000) }))],
  ["a strip that ends beyond the file", () => one(tiffWith({ 279: long(4_000_000_000) }))],
  [
    "a strip of 10 GB",
    () => one(tiffWith({ 279: { type: "long8", values: [10_000_000_000] } }, { bigTiff: true })),
  ],
  ["a strip that starts beyond the file", () => one(tiffWith({ 273: long(4_000_000_000) }))],
  ["a strip too short for its cells", () => one(tiffWith({ 279: long(100) }))],
  ["no strips", () => one(tiffWith({ 273: undefined, 279: undefined }))],
  ["fewer strips than rows need", () => one(tiffWith({ 278: short(1) }))],
  [
    "tiles without a size",
    () =>
      one(
        tiffWith({
          273: undefined,
          279: undefined,
          322: short(0),
          323: short(0),
          324: long(0),
          325: long(256),
        }),
      ),
  ],
  [
    "tiles of 65,535 x 65,535",
    () =>
      one(
        tiffWith({
          273: undefined,
          279: undefined,
          322: short(65_535),
          323: short(65_535),
          324: long(0),
          325: long(256),
        }),
      ),
  ],
  ["only a mask", () => one(tiffWith({ 254: long(4) }))],
  ["a mask of another size", () => one(twoImages({ 254: long(4), 256: short(4) }))],
  ["a planar configuration that is none", () => one(tiffWith({ 284: short(9), 277: short(2) }))],
];

/** A sound image followed by another of its kind, changed. */
function twoImages(changed: Parameters<typeof tiffWith>[0]): Uint8Array<ArrayBuffer> {
  const first = tiffWith({});
  const second = tiffBytes({ ...soundTags(), ...changed }, new Uint8Array(SIDE * SIDE * 4));
  const joined = new Uint8Array(first.length + second.length);
  joined.set(first);
  joined.set(second, first.length);
  const view = new DataView(joined.buffer);
  const firstDirectory = view.getUint32(4, true);
  const entries = view.getUint16(firstDirectory, true);
  const secondDirectory = first.length + view.getUint32(first.length + 4, true);
  view.setUint32(firstDirectory + 2 + 12 * entries, secondDirectory, true);
  return joined;
}

const CELLS: [string, () => Made][] = [
  ["JPEG", () => packedNoise(7)],
  ["an unknown compression", () => packedNoise(65_000)],
  ["a fax compression", () => packedNoise(3)],
  ["Deflate noise", () => packedNoise(8)],
  ["Deflate noise after a sound head", () => packedNoise(8, [0x78, 0x9c])],
  [
    "a Deflate strip that is too short",
    () => one(tiffWith({ 259: short(8) }, {}, new Uint8Array(deflateSync(new Uint8Array(40))))),
  ],
  ["LZW noise", () => packedNoise(5)],
  ["PackBits noise", () => packedNoise(32_773, [0x81])],
  ["Zstandard noise", () => packedNoise(50_000)],
  [
    "Zstandard noise after a sound head",
    () => packedNoise(50_000, [0x28, 0xb5, 0x2f, 0xfd, 0xe0, 255, 255, 255, 255, 0, 0, 0, 0]),
  ],
  ["LERC noise", () => packedNoise(34_887)],
  [
    "LERC of 4 billion cells",
    () =>
      packedNoise(34_887, [
        ...Array.from("Lerc2 ", (letter) => letter.charCodeAt(0)),
        4,
        0,
        0,
        0,
        1,
        2,
        3,
        4,
        255,
        255,
        255,
        255,
        255,
        255,
        255,
        255,
      ]),
  ],
  ["LERC in big-endian order", async () => [await rasterFile("f32-big-endian-lerc.tif")]],
  ["a predictor that is none", () => one(tiffWith({ 317: short(9) }))],
  [
    "a floating point predictor on whole numbers",
    () => one(tiffWith({ 317: short(3), 339: short(1) })),
  ],
  ["complex numbers", () => one(tiffWith({ 258: short(64), 339: short(6) }))],
  ["12-bit cells", () => one(tiffWith({ 258: short(12), 339: short(1) }))],
  ["24-bit floating point", () => one(tiffWith({ 258: short(24) }))],
  [
    "a color picture",
    () => one(tiffWith({ 262: short(2), 277: short(3), 258: short(8, 8, 8), 339: short(1, 1, 1) })),
  ],
  [
    "a picture with a palette",
    () => one(tiffWith({ 262: short(3), 258: short(8), 339: short(1) })),
  ],
  [
    "nothing but holes",
    () =>
      one(
        tiffWith(
          { 42113: ascii("nan") },
          {},
          new Uint8Array(new Float32Array(SIDE * SIDE).fill(Number.NaN).buffer),
        ),
      ),
  ],
  [
    "nothing but infinities",
    () =>
      one(
        tiffWith(
          {},
          {},
          new Uint8Array(new Float32Array(SIDE * SIDE).fill(Number.POSITIVE_INFINITY).buffer),
        ),
      ),
  ],
  ["a no-data mark in words", () => one(tiffWith({ 42113: ascii("none of your business") }))],
];

const PLACE: [string, () => Made][] = [
  ["no place", () => one(tiffWith({ 33550: undefined, 33922: undefined }))],
  [
    "a cell size that is not a number",
    () => one(tiffWith(place(Number.NaN, 1, 0, 482_000, 4_983_000))),
  ],
  ["a cell size of nothing", () => one(tiffWith(place(0, 0, 0, 482_000, 4_983_000)))],
  [
    "an infinite cell size",
    () => one(tiffWith(place(Number.POSITIVE_INFINITY, 1, 0, 482_000, 4_983_000))),
  ],
  ["an origin that is not a number", () => one(tiffWith(place(1, 1, 0, Number.NaN, 4_983_000)))],
  ["an origin off the Earth", () => one(tiffWith(place(1, 1, 0, 4e30, 5e30)))],
  [
    "a collapsed matrix",
    () =>
      one(
        tiffWith({
          33550: undefined,
          33922: undefined,
          34264: double(...new Array<number>(16).fill(1)),
        }),
      ),
  ],
  [
    "ground control points",
    () => one(tiffWith({ 33550: undefined, 33922: double(...new Array<number>(18).fill(5)) })),
  ],
  [
    "heights scaled to one value",
    () => one(tiffWith({ 33922: double(0, 0, 0, 482_000, 4_983_000, 200) })),
  ],
  ["no reference", () => one(tiffWith({ 34735: undefined }))],
  [
    "a reference that is not known",
    () => one(tiffWith({ 34735: keys(PROJECTED, [3072, 0, 1, 60_001], METRES) })),
  ],
  [
    "a user-defined reference without parts",
    () => one(tiffWith({ 34735: keys(PROJECTED, [3072, 0, 1, 32_767], METRES) })),
  ],
  [
    "a projection that is not known",
    () =>
      one(tiffWith({ 34735: keys(PROJECTED, [3072, 0, 1, 32_767], [3074, 0, 1, 31_998], METRES) })),
  ],
  [
    "GeoKeys that point nowhere",
    () => one(tiffWith({ 34735: keys(PROJECTED, UTM, [4099, 34_736, 1, 70]) })),
  ],
  ["GeoKeys cut short", () => one(tiffWith({ 34735: short(1, 1, 0, 60, 1024, 0) }))],
  ["heights in fathoms", () => one(tiffWith({ 34735: keys(PROJECTED, UTM, [4099, 0, 1, 9014]) }))],
  ["no unit of height", () => one(tiffWith({ 34735: keys(PROJECTED, UTM) }))],
];

const PRJ = readFileSync(join(RASTERS, "ascii.prj"), "utf8");
const GRID_HEAD =
  "ncols 3\nnrows 2\nxllcorner 482000\nyllcorner 4983000\ncellsize 1\nNODATA_value -9999\n";
const grid = (text: string, prj: string | null = PRJ): TerrainFile[] => [
  madeFile("dem.asc", text),
  ...(prj === null ? [] : [madeFile("dem.prj", prj)]),
];
const headWith = (line: string, by: string) => grid(`${GRID_HEAD.replace(line, by)}1 2 3\n4 5 6\n`);

const GRIDS: [string, () => Made][] = [
  ["only a head", () => grid(GRID_HEAD)],
  ["a head cut short", () => grid("ncols 3\nnrows")],
  ["no ncols", () => headWith("ncols 3\n", "")],
  ["ncols in letters", () => headWith("ncols 3", "ncols three")],
  ["ncols below zero", () => headWith("ncols 3", "ncols -3")],
  ["ncols of 10^15", () => headWith("ncols 3", "ncols 1000000000000000")],
  [
    "3 million columns and rows",
    () => grid(GRID_HEAD.replace("ncols 3", "ncols 3000000").replace("nrows 2", "nrows 3000000")),
  ],
  ["a cell size of nothing", () => headWith("cellsize 1", "cellsize 0")],
  ["a cell size with a comma", () => headWith("cellsize 1", "cellsize 0,5")],
  ["an origin that is not a number", () => headWith("xllcorner 482000", "xllcorner NaN")],
  ["a keyword that is none", () => headWith("cellsize 1", "cellsize 1\nformula =1+1")],
  ["too few cells", () => grid(`${GRID_HEAD}1 2 3\n4 5\n`)],
  ["too many cells", () => grid(`${GRID_HEAD}1 2 3\n4 5 6 7\n`)],
  ["letters among the cells", () => grid(`${GRID_HEAD}1 2 3\n4 five 6\n`)],
  ["a script among the cells", () => grid(`${GRID_HEAD}1 2 3\n4 <script> 6\n`)],
  ["commas for points", () => grid(`${GRID_HEAD}1,5 2,5 3,5\n4,5 5,5 6,5\n`)],
  ["two points in a number", () => grid(`${GRID_HEAD}1 2 3\n4 5.1.2 6\n`)],
  ["a word of a million letters", () => grid(`${GRID_HEAD}1 2 3\n4 ${"7".repeat(1_000_000)}x 6\n`)],
  [
    "noise after the head",
    () => [madeFile("dem.asc", GRID_HEAD, noise(5000, 9)), madeFile("dem.prj", PRJ)],
  ],
  ["nothing but holes", () => grid(`${GRID_HEAD}-9999 -9999 -9999\n-9999 -9999 -9999\n`)],
  ["no .prj", () => grid(`${GRID_HEAD}1 2 3\n4 5 6\n`, null)],
  ["an empty .prj", () => grid(`${GRID_HEAD}1 2 3\n4 5 6\n`, "")],
  [
    "a .prj of noise",
    () => [madeFile("dem.asc", `${GRID_HEAD}1 2 3\n4 5 6\n`), madeFile("dem.prj", noise(3000, 5))],
  ],
  [
    "a .prj whose brackets do not close",
    () => grid(`${GRID_HEAD}1 2 3\n4 5 6\n`, PRJ.slice(0, 200)),
  ],
  [
    "a .prj of the old kind",
    () => grid(`${GRID_HEAD}1 2 3\n4 5 6\n`, "Projection UTM\nZone 15\nUnits METERS\n"),
  ],
  [
    "a .prj with a projection that is none",
    () =>
      grid(`${GRID_HEAD}1 2 3\n4 5 6\n`, PRJ.replace("Transverse_Mercator", "Wishful_Thinking")),
  ],
  [
    "a .prj with heights in yards",
    () =>
      grid(
        `${GRID_HEAD}1 2 3\n4 5 6\n`,
        PRJ.replace(/UNIT\["Meter",1.0\]\]$/, 'UNIT["Yard",0.9144]]'),
      ),
  ],
];

const TOGETHER: [string, () => Made][] = [
  ["a grid that is turned", () => pair(turned(0.8, 0.6))],
  ["a grid that is mirrored", () => pair(turned(-1, 0))],
  ["another zone", () => pair({ 34735: keys(PROJECTED, [3072, 0, 1, 26_916], METRES) })],
  [
    "another vertical datum",
    () => pair({ 34735: keys(PROJECTED, UTM, [4096, 0, 1, 5703], METRES) }),
  ],
  [
    "one of them damaged",
    () => [...one(tiffWith({})), madeFile("b.tif", tiffWith({}, { next: "self" }))],
  ],
  [
    "a bad world file",
    () => [
      madeFile("a.tif", tiffWith({ 33550: undefined, 33922: undefined })),
      madeFile("a.tfw", "1 0 0 x 5 6"),
    ],
  ],
  [
    "external overviews that are noise",
    () => [madeFile("a.tif", tiffWith({})), madeFile("a.tif.ovr", noise(500, 6))],
  ],
];

function pair(changed: Parameters<typeof tiffWith>[0]): TerrainFile[] {
  return [madeFile("a.tif", tiffWith({})), madeFile("b.tif", tiffWith(changed))];
}

const ALL = [
  ["cut short", CUT_AT],
  ["of another kind", OTHER_KINDS],
  ["of broken structure", STRUCTURE],
  ["with bad cells", CELLS],
  ["without a place", PLACE],
  ["as an ASCII grid", GRIDS],
  ["that do not fit together", TOGETHER],
] as const;

const mostMemoryKB = () => process.resourceUsage().maxRSS;
let memoryBeforeKB = 0;
beforeAll(async () => {
  await useAll([await rasterFile("f32-zstd-p3-tiles.tif")]);
  memoryBeforeKB = mostMemoryKB();
});

describe.each(ALL)("rasters %s are refused", (_kind, cases) => {
  test.each(cases)("%s", async (_name, make) => {
    const failure = await refusalOf(make());
    expect(failure, "was accepted").not.toBeNull();
    expect(failure!.code).toMatch(/^(raster|ground)\/[a-z-]+$/);
    expect(failure!.message.length).toBeGreaterThan(20);
    expect(failure!.remedy.length).toBeGreaterThan(10);
  });
});

test("a file that goes away is refused", async () => {
  const blob = new Blob([tiffWith({})]);
  const gone = {
    size: blob.size,
    slice: () => ({ arrayBuffer: () => Promise.reject("NotReadableError") }),
  };
  const failure = await refusalOf([{ name: "dem.tif", blob: gone as unknown as Blob }]);
  expect(failure?.code).toBe("raster/unreadable");
});

test("a byte of a sound file made 255 ends in heights or a refusal", async () => {
  const sound = tiffWith({});
  const codes = new Set<string>();
  for (let at = 0; at < sound.length; at += at < 300 ? 4 : 1) {
    const broken = sound.slice();
    broken[at] = 255;
    codes.add((await refusalOf(one(broken)))?.code ?? "accepted");
  }
  expect(codes).toContain("accepted");
  expect(codes).toContain("raster/truncated");
  expect([...codes].filter((code) => !/^(accepted|raster\/|ground\/)/.test(code))).toEqual([]);
});

afterAll(() => {
  const grownMB = (mostMemoryKB() - memoryBeforeKB) / 1024;
  expect(grownMB, "memory grew by this many MB").toBeLessThan(400);
});

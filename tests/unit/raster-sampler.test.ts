import { expect, test } from "vitest";
import { planPlane } from "../../shared/plan-plane.ts";
import { bilinear } from "../../workers/raster/bilinear.ts";
import { referenceFromKeys } from "../../workers/raster/geotiff/reference-keys.ts";
import { makeLattice } from "../../workers/raster/lattice.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { countedFile, rasterFile } from "../helpers/raster-files.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import { soundTags, tiff, tiffBytes } from "../helpers/tiff-bytes.ts";

const { short, long } = tiff;

test.each([
  ["UTM", 26_915, [-93.3, 44.9], 1],
  ["the edge of a UTM zone", 32_633, [17.9, 69.5], 1],
  ["a state plane in feet", 2249, [-71.2, 42.3], 0.3048],
  ["web mercator far north", 3857, [25, 68], 0.37],
  ["an average-shifted datum", 27_700, [-1.5, 52.3], 1],
] as const)(
  "the lattice is within 0.1 mm of the exact projection: %s",
  (_name, code, origin, unitM) => {
    const plane = planPlane(origin);
    const reference = referenceFromKeys("dem.tif", {
      GTModelTypeGeoKey: 1,
      ProjectedCSTypeGeoKey: code,
    });
    const toCell = (x: number, y: number) => reference.fromLonLat(...plane.toLonLat(x, y));
    const box = { minX: -1200, minY: -700, maxX: 900, maxY: 1500 };
    const lattice = makeLattice(box, toCell, unitM);
    expect(lattice.errorM).toBeLessThan(1e-4);
    const random = seededRandom(code);
    let worst = 0;
    for (let k = 0; k < 3000; k++) {
      const [x, y] = [box.minX + random() * 2100, box.minY + random() * 2200];
      const [gx, gy] = [(x - box.minX) / lattice.spacingM, (y - box.minY) / lattice.spacingM];
      const [i, j] = [Math.floor(gx), Math.floor(gy)];
      const [u, v] = [gx - i, gy - j];
      const c = lattice.coefficients.subarray(8 * (j * lattice.across + i));
      const [column, row] = toCell(x, y);
      const dc = c[0]! + c[1]! * u + c[2]! * v + c[3]! * u * v - column;
      const dr = c[4]! + c[5]! * u + c[6]! * v + c[7]! * u * v - row;
      worst = Math.max(worst, unitM * Math.hypot(dc, dr));
    }
    expect(worst).toBeLessThan(1.5e-4);
  },
);

test("bilinear takes nothing from cells without weight", () => {
  const holed = Float32Array.of(1, Number.NaN, 3, 4);
  expect(bilinear(holed, 2, 2, 0, 0)).toBe(1);
  expect(bilinear(holed, 2, 2, 0, 1)).toBe(3);
  expect(bilinear(holed, 2, 2, 0, 0.5)).toBe(2);
  expect(bilinear(holed, 2, 2, 0.25, 1)).toBe(3.25);
  expect(bilinear(holed, 2, 2, 0.01, 0.5)).toBeNaN();
  expect(bilinear(holed, 2, 2, 1, 1)).toBe(4);
  expect(bilinear(holed, 2, 2, 1.01, 1)).toBeNaN();
  expect(bilinear(holed, 2, 2, -0.01, 0)).toBeNaN();
});

test("a request inside ground already read reads nothing, and parallel ones read once", async () => {
  const { file, bytesRead } = await countedFile("f32-deflate-p2-tiles.tif");
  const terrain = await openTerrain([file], null);
  const [west, south, east, north] = terrain.summary.bounds;
  const plane = planPlane([(west + east) / 2, (south + north) / 2]);
  const box = { minX: -12, minY: -12, maxX: 12, maxY: 12 };
  const small = { minX: -10, minY: -12, maxX: 12, maxY: 9 };
  const before = bytesRead();
  const both = await Promise.all([
    terrain.samplerFor(plane, box),
    terrain.samplerFor(plane, small),
  ]);
  expect(both[0]).toBe(both[1]);
  expect(await terrain.samplerFor(plane, small)).toBe(both[0]);
  const again = await terrain.samplerFor(planPlane(plane.origin), box);
  expect(again).toBe(both[0]);
  expect(bytesRead()).toBe(before);
});

test("a sampler knows its cell size on the ground, and nothing outside its raster", async () => {
  const terrain = await openTerrain([await rasterFile("crs-web-mercator.tif")], "metre");
  const [west, south, east, north] = terrain.summary.bounds;
  const plane = planPlane([(west + east) / 2, (south + north) / 2]);
  const sampler = await terrain.samplerFor(plane, { minX: -500, minY: -500, maxX: 500, maxY: 500 });
  expect(sampler.cellM).toBeCloseTo(1.5 * Math.cos((45 * Math.PI) / 180), 2);
  expect(terrain.summary.cellXM).toBeCloseTo(sampler.cellM, 2);
  expect(sampler.heightAt(400, 0)).toBeNaN();
  expect(await terrain.probe([0, 0])).toBeNaN();
  const far = await terrain.samplerFor(planPlane([10, 50]), {
    minX: -9,
    minY: -9,
    maxX: 9,
    maxY: 9,
  });
  expect(far.heightAt(0, 0)).toBeNaN();
});

/** A raster of 10,000 x 10,000 cells of 123.25 in 256 x 256 tiles, made as it is read: 400 MB. */
function bigFile() {
  const across = Math.ceil(10_000 / 256);
  const bytes = 256 * 256 * 4;
  const places = Array.from({ length: across * across }, (_, i) => 1_048_576 + i * bytes);
  const tags = {
    ...soundTags(),
    256: long(10_000),
    257: long(10_000),
    273: undefined,
    278: undefined,
    279: undefined,
    322: short(256),
    323: short(256),
    324: long(...places.map((place) => place - 8)),
    325: long(...places.map(() => bytes)),
  };
  const head = tiffBytes(tags, new Uint8Array(0));
  const size = places.at(-1)! + bytes;
  let read = 0;
  const slice = (from: number, to: number) => ({
    async arrayBuffer() {
      const end = Math.min(size, to);
      read += end - from;
      if (from < head.length) return head.slice(from, end).buffer;
      return new Float32Array((end - from) / 4).fill(123.25).buffer;
    },
  });
  const blob = { size, slice } as unknown as Blob;
  return { file: { name: "big.tif", blob }, bytesRead: () => read };
}

test("10,000 x 10,000 cells are opened and used without loading them", async () => {
  const { file, bytesRead } = bigFile();
  const terrain = await openTerrain([file], null);
  expect(terrain.summary).toMatchObject({
    columns: 10_000,
    rows: 10_000,
    fromOverview: true,
    lowestM: 123.25,
  });
  expect(bytesRead()).toBeLessThan(20_000_000);
  const [west, south, east, north] = terrain.summary.bounds;
  const plane = planPlane([(west + east) / 2, (south + north) / 2]);
  const before = bytesRead();
  const sampler = await terrain.samplerFor(plane, { minX: -250, minY: -250, maxX: 250, maxY: 250 });
  expect(sampler.heightAt(13, -200)).toBe(123.25);
  expect(bytesRead() - before).toBeLessThan(6_000_000);
});

test("a line too long for full resolution is refused, and says what to do", async () => {
  const { file } = bigFile();
  const terrain = await openTerrain([file], null);
  const [west, south, east, north] = terrain.summary.bounds;
  const plane = planPlane([(west + east) / 2, (south + north) / 2]);
  const box = { minX: -4500, minY: -4500, maxX: 4500, maxY: 4500 };
  await expect(terrain.samplerFor(plane, box)).rejects.toMatchObject({
    code: "ground/window-too-large",
  });
});

test("a failed read is refused and not kept", async () => {
  const { file } = bigFile();
  let fails = false;
  const slice = (from: number, to: number) =>
    fails ? { arrayBuffer: () => Promise.reject(new Error("locked")) } : file.blob.slice(from, to);
  const blob = { size: file.blob.size, slice };
  const terrain = await openTerrain([{ name: "dem.tif", blob }], null);
  const [west, , , north] = terrain.summary.bounds;
  const plane = planPlane([west + 0.01, north - 0.01]);
  const box = { minX: -20, minY: -20, maxX: 20, maxY: 20 };
  fails = true;
  await expect(terrain.samplerFor(plane, box)).rejects.toMatchObject({ code: "raster/unreadable" });
  fails = false;
  expect((await terrain.samplerFor(plane, box)).heightAt(0, 3)).toBe(123.25);
});

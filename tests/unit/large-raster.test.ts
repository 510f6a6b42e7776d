import {
  closeSync,
  mkdtempSync,
  openSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { fileSlices } from "../../workers/command/file-slices.ts";
import { makeBlockStore } from "../../workers/raster/block-store.ts";
import { builtOverview, UNREAD_M } from "../../workers/raster/built-overview.ts";
import type { RasterLevel } from "../../workers/raster/open-raster.ts";
import { piecesOf } from "../../workers/raster/reduced-level.ts";
import { shownLevels } from "../../workers/raster/shown-levels.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { largeRaster } from "../helpers/large-raster.ts";
import { soundCells, soundTags, tiffBytes } from "../helpers/tiff-bytes.ts";

const folder = mkdtempSync(join(tmpdir(), "drystead-large-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A level from a formula that counts its cells in flight. */
function formulaLevel(
  columns: number,
  rows: number,
  block: number,
  heightAt: (c: number, r: number) => number,
) {
  let inFlight = 0;
  const seen = { mostInFlight: 0, blocks: 0 };
  const level: RasterLevel = {
    ...{ columns, rows, blockColumns: block, blockRows: block },
    async readBlock(bx, by) {
      inFlight += block * block;
      seen.mostInFlight = Math.max(seen.mostInFlight, inFlight);
      seen.blocks++;
      await new Promise((resolve) => setImmediate(resolve));
      inFlight -= block * block;
      return Float32Array.from({ length: block * block }, (_, i) =>
        heightAt(bx * block + (i % block), by * block + Math.floor(i / block)),
      );
    },
  };
  return { level, seen };
}

describe("an overview built of a raster that has none", () => {
  it("is the mean of the cells under each reduced cell, and NaN where half have no data", async () => {
    const { level } = formulaLevel(40, 24, 8, (c, r) => (c < 6 && r < 4 ? Number.NaN : 10 * r + c));
    const overview = builtOverview(level, 4, null);
    const block = await overview.level.readBlock(0, 0);
    const at = (c: number, r: number) => block[r * 256 + c]!;
    expect([overview.level.columns, overview.level.rows]).toEqual([10, 6]);
    expect(at(0, 0)).toBeNaN();
    expect(at(1, 0)).toBeNaN();
    expect(at(2, 0)).toBeCloseTo(10 * 1.5 + 9.5, 5);
    expect(at(9, 5)).toBeCloseTo(10 * 21.5 + 37.5, 4);
    expect(at(10, 0)).toBeNaN();
  });

  it("averages the cells that are there where the raster ends within a reduced cell", async () => {
    const { level } = formulaLevel(10, 10, 4, (c, r) => 10 * r + c);
    const overview = builtOverview(level, 4, null);
    const block = await overview.level.readBlock(0, 0);
    expect(block[1]).toBeCloseTo(10 * 1.5 + 5.5, 5);
    expect(block[2]).toBeNaN();
  });

  it("reads every block once for all who wait, and says how far it is", async () => {
    const { level, seen } = formulaLevel(2048, 2048, 256, () => 5);
    const overview = builtOverview(level, 4, null);
    const shares: number[] = [];
    await Promise.all([
      overview.build((share) => shares.push(share)),
      overview.build(),
      overview.level.readBlock(1, 1),
    ]);
    expect(seen.blocks).toBe(64);
    expect(shares.length).toBeGreaterThan(2);
    expect(shares.at(-1)).toBe(1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(seen.mostInFlight).toBeLessThanOrEqual(16 * 256 * 256);
  });

  it("tries again after a read that failed", async () => {
    let fails = true;
    const { level } = formulaLevel(512, 512, 256, () => 5);
    const flaky: RasterLevel = {
      ...level,
      readBlock: (c, r) => (fails ? Promise.reject(new Error("locked")) : level.readBlock(c, r)),
    };
    const overview = builtOverview(flaky, 4, null);
    await expect(overview.build()).rejects.toThrow("locked");
    fails = false;
    await overview.build();
    expect(overview.isBuilt()).toBe(true);
  });

  it("is taken from the shelf without reading the raster, and put there after a sweep", async () => {
    const kept = new Map<string, Float32Array>();
    const shelf = {
      get: async (key: string) => kept.get(key) ?? null,
      put: async (key: string, heightsM: Float32Array) => void kept.set(key, heightsM.slice()),
    };
    const first = formulaLevel(512, 512, 256, (c) => c);
    await builtOverview(first.level, 4, { shelf, key: "k" }).build();
    const second = formulaLevel(512, 512, 256, () => 0);
    const again = builtOverview(second.level, 4, { shelf, key: "k" });
    expect((await again.level.readBlock(0, 0))[1]).toBeCloseTo(5.5, 5);
    expect(second.seen.blocks).toBe(0);
  });

  it("is made once where two read the same raster at the same time and work on it in turns", async () => {
    const kept = new Map<string, Float32Array>();
    let turn: Promise<void> = Promise.resolve();
    const shelf = {
      get: async (key: string) => kept.get(key) ?? null,
      put: async (key: string, heightsM: Float32Array) => void kept.set(key, heightsM.slice()),
      alone: (_: string, work: () => Promise<void>) => {
        turn = turn.then(work);
        return turn;
      },
    };
    const readers = [1, 2].map(() => formulaLevel(512, 512, 256, (c) => c));
    const builds = readers.map(({ level }) => builtOverview(level, 4, { shelf, key: "k" }));
    await Promise.all(builds.map((each) => each.build()));
    expect(readers.map(({ seen }) => seen.blocks)).toEqual([4, 0]);
    expect(builds.every((each) => each.isBuilt())).toBe(true);
  });
});

/** A large level whose first blocks come at once and the rest when they are let go. */
function gatedLevel(side: number, freeBlocks: number, after: () => Float32Array) {
  let read = 0;
  let letGo = () => {};
  const gate = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const level: RasterLevel = {
    ...{ columns: side, rows: side, blockColumns: 256, blockRows: 256 },
    async readBlock() {
      read += 1;
      if (read <= freeBlocks) return new Float32Array(256 * 256).fill(5);
      await gate;
      return after();
    },
  };
  return { level, letGo: () => letGo() };
}

describe("an overview of which a part is read", () => {
  const holes = () => new Float32Array(256 * 256).fill(Number.NaN);

  it("gives what is read before the rest is, the rest as not read, and null once it is made", async () => {
    const { level, letGo } = gatedLevel(4608, 3 * 18, holes);
    const overview = builtOverview(level, 4, null);
    const part = (await overview.soFar())!;
    expect(overview.isBuilt()).toBe(false);
    expect(part.share).toBeGreaterThan(0);
    expect(part.share).toBeLessThan(0.5);
    expect(part.cells.heightsM[0]).toBe(5);
    expect(part.cells.heightsM.at(-1)).toBe(UNREAD_M);
    letGo();
    await overview.build();
    expect(await overview.soFar()).toBeNull();
    const last = await overview.level.readBlock(4, 4);
    expect(last.some((heightM) => heightM === UNREAD_M)).toBe(false);
    expect(last[0]).toBeNaN();
  });

  it("is made first where the raster is read quickly", async () => {
    const { level } = formulaLevel(2048, 2048, 256, () => 5);
    const overview = builtOverview(level, 4, null);
    expect(await overview.soFar()).toBeNull();
    expect(overview.isBuilt()).toBe(true);
  });

  it("fails for who asks again after a sweep that failed, until it is built", async () => {
    let fails = true;
    const { level, letGo } = gatedLevel(4608, 3 * 18, () => {
      if (fails) throw new Error("damaged");
      return holes();
    });
    const overview = builtOverview(level, 4, null);
    expect(await overview.soFar()).not.toBeNull();
    letGo();
    await expect(overview.build()).rejects.toThrow("damaged");
    await expect(overview.soFar()).rejects.toThrow("damaged");
    fails = false;
    await overview.build();
    expect(await overview.soFar()).toBeNull();
  });
});

describe("a picture of a raster of 4,608 x 4,608 cells without overviews", () => {
  it("shows what is read before the raster is read to its end, and then all of it", async () => {
    const bytes = new Blob([largeRaster({ side: 4608, tile: 256, deflate: false })]);
    let slices = Number.POSITIVE_INFINITY;
    let letGo = () => {};
    const gate = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    const slice = (from: number, to: number) => {
      const part = bytes.slice(from, to);
      const held = --slices < 0;
      return {
        arrayBuffer: () => (held ? gate : Promise.resolve()).then(() => part.arrayBuffer()),
      };
    };
    const blob = { size: bytes.size, slice };
    const terrain = await openTerrain([{ name: "county.tif", blob }], null);
    const place = (column: number, row: number) =>
      terrain.cells.toLonLat(36 * column + 18, 36 * row + 18);
    slices = 5 * 18;
    const shares: number[] = [];
    const read = () =>
      terrain.readGrid(place, 128, 128, { onPart: (share) => void shares.push(share) });
    const first = await read();
    const count = (heightsM: Float32Array) => ({
      ground: heightsM.filter((heightM) => heightM > 99 && heightM < 103).length,
      unread: heightsM.filter((heightM) => heightM === UNREAD_M).length,
    });
    expect(shares.length).toBe(1);
    expect(count(first).ground).toBeGreaterThan(128);
    expect(count(first).unread).toBeGreaterThan(128 * 64);
    expect(count(first).ground + count(first).unread).toBe(128 * 128);
    letGo();
    const whole = await terrain.readGrid(place, 128, 128);
    expect(count(whole)).toEqual({ ground: 128 * 128, unread: 0 });
    expect(await read()).toEqual(whole);
    expect(shares.length).toBe(1);
  });
});

describe("pieces that a reduced level is made from", () => {
  it.each([
    [256, 256, 16],
    [65536, 4, 16],
    [512, 512, 4],
    [65536, 1, 64],
  ])(
    "of blocks of %i x %i by a factor of %i cover every cell once, a few million cells each",
    (blockColumns, blockRows, factor) => {
      const side = 65_536;
      const fine = { columns: side, rows: side, blockColumns, blockRows } as RasterLevel;
      const whole = { column: 0, row: 0, columns: side / factor, rows: side / factor };
      const pieces = piecesOf(whole, fine, factor);
      expect(pieces.reduce((sum, piece) => sum + piece.columns * piece.rows, 0)).toBe(
        whole.columns * whole.rows,
      );
      for (const { columns, rows } of pieces) {
        expect(columns * rows * factor * factor).toBeLessThanOrEqual(4_194_304);
      }
    },
  );
});

describe("a raster of 65,536 x 65,536 cells without overviews", () => {
  it("opens, and a line's ground and a picture close by read a small part of it", async () => {
    const path = join(folder, "large.tif");
    writeFileSync(path, largeRaster({ side: 65_536, tile: 256, deflate: false }));
    const blob = fileSlices(path, statSync(path).size);
    const terrain = await openTerrain([{ name: "large.tif", blob }], null);
    expect(terrain.summary.columns).toBe(65_536);
    expect(terrain.summary.fromOverview).toBe(true);
    const [longitude, latitude] = terrain.cells.toLonLat(30_000.5, 30_000.5);
    expect(await terrain.probe([longitude, latitude])).toBeGreaterThan(99);
    const place = (column: number, row: number) =>
      terrain.cells.toLonLat(30_000 + 4 * column, 30_000 + 4 * row);
    const heightsM = await terrain.readGrid(place, 64, 64);
    expect(heightsM.every((heightM) => heightM > 99 && heightM < 103)).toBe(true);
  });

  it("shares one budget for built overviews among all files", () => {
    const { level } = formulaLevel(8192, 8192, 256, () => 0);
    const rasters = new Map(Array.from({ length: 1000 }, () => [{} as never, [level]]));
    const shown = [...shownLevels(rasters, makeBlockStore(), () => null).values()];
    const cells = shown.reduce(
      (sum, { built }) => sum + built!.level.columns * built!.level.rows,
      0,
    );
    expect(cells).toBeLessThanOrEqual(16_000_000);
  });
});

describe("a raster of more than 4 GiB", () => {
  it("is read where its offsets say, beyond the first 4 GiB", async () => {
    const path = join(folder, "beyond.tif");
    const start = 5 * 2 ** 30;
    const cells = new Uint8Array(soundCells().buffer);
    const tags = {
      ...soundTags(cells.length),
      273: { type: "long8" as const, values: [start - 16] },
    };
    writeFileSync(path, tiffBytes(tags, new Uint8Array(), { bigTiff: true }));
    truncateSync(path, start);
    const handle = openSync(path, "r+");
    writeSync(handle, cells, 0, cells.length, start);
    closeSync(handle);
    const blob = fileSlices(path, statSync(path).size);
    const terrain = await openTerrain([{ name: "beyond.tif", blob }], null);
    const { heightsM } = await terrain.cells.read({ column: 0, row: 0, columns: 8, rows: 8 });
    expect(Array.from(heightsM)).toEqual(Array.from(soundCells()));
  });
});

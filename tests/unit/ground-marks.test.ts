import { describe, expect, test } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { asFailure } from "../../shared/failure.ts";
import type { MarkChoice } from "../../shared/ground-marks.ts";
import type { LonLat, Plan, VerticalUnit } from "../../shared/plan.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { makeEngine } from "../../workers/engine.ts";
import { openTerrain } from "../../workers/raster/terrain.ts";
import { madeFile, rasterFile } from "../helpers/raster-files.ts";
import { said } from "../helpers/said.ts";
import { seededRandom } from "../helpers/seeded-random.ts";
import { soundTags, tiff, tiffBytes } from "../helpers/tiff-bytes.ts";

/* Rasters made in the test: rough ground with numbers in it that no other height comes near. */

const { short, long, ascii } = tiff;
const NO_UNIT = short(1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 26915);
const SIDE = 100;

type HeightAt = (column: number, row: number) => number;

function raster(heightAt: HeightAt, [columns, rows] = [SIDE, SIDE], stripRows = rows) {
  const cells = Float32Array.from({ length: columns * rows }, (_, i) =>
    heightAt(i % columns, Math.floor(i / columns)),
  );
  const strips = Math.ceil(rows / stripRows);
  const bytes = (strip: number) => 4 * columns * Math.min(stripRows, rows - strip * stripRows);
  const tags = {
    ...soundTags(),
    256: short(columns),
    257: short(rows),
    273: long(...Array.from({ length: strips }, (_, strip) => 4 * columns * stripRows * strip)),
    278: short(stripRows),
    279: long(...Array.from({ length: strips }, (_, strip) => bytes(strip))),
    34735: NO_UNIT,
    42113: ascii("-32768"),
  };
  return madeFile("dem.tif", tiffBytes(tags, new Uint8Array(cells.buffer)));
}

const random = seededRandom(7);
const ROUGH = Float64Array.from({ length: SIDE * SIDE }, () => random());

/** Rough ground from `lowest` to four more. */
const ground =
  (lowest: number): HeightAt =>
  (column, row) =>
    lowest + (column + row) / 100 + 2 * ROUGH[(row % SIDE) * SIDE + (column % SIDE)]!;

const isPond: HeightAt = (column, row) => Number(Math.hypot(column - 60, row - 40) < 12);
const POND = 437;

/** Ground with a pond of another number. */
const withPond =
  (lowest: number, value: number): HeightAt =>
  (column, row) =>
    isPond(column, row) ? value : ground(lowest)(column, row);

const open = (heightAt: HeightAt, unit: VerticalUnit = "metre", choices: MarkChoice[] = []) =>
  openTerrain([raster(heightAt)], unit, undefined, null, { choices, asked: [] });

describe("a number that no other height comes near is asked about", () => {
  test.each([
    ["0", 0, 100, "metre", "below"],
    ["-99", -99, 330, "foot", "below"],
    ["-500", -500, 330, "foot", "below"],
    ["-999", -999, 800, "us-survey-foot", "below"],
    ["0 close under low ground", 0, 1.5, "metre", "below"],
    ["255", 255, 240, "metre", "above"],
    ["9999", 9999, 330, "foot", "above"],
    ["123.25", 123.25, 300, "metre", "below"],
  ] as const)("%s", async (_words, value, lowest, unit, side) => {
    const { summary } = await open(withPond(lowest, value), unit);
    expect(summary.marksAsked).toHaveLength(1);
    expect(summary.marksAsked[0]).toMatchObject({
      ...{ value, unit, side, cells: POND, looked: "all", share: POND / SIDE ** 2 },
      file: { name: "dem.tif", bytes: expect.any(Number) },
    });
    expect(summary.holeShare).toBe(POND / SIDE ** 2);
  });

  test("with its gap to the next height", async () => {
    const { summary } = await open(withPond(100, 0));
    const all = Array.from(
      { length: SIDE ** 2 },
      (_, i) => [i % SIDE, Math.floor(i / SIDE)] as const,
    );
    const nextM = Math.min(...all.map(([c, r]) => (isPond(c, r) ? 999 : ground(100)(c, r))));
    expect(summary.marksAsked[0]!.gapM).toBeCloseTo(nextM, 4);
    expect(summary.lowestM).toBeCloseTo(nextM, 4);
  });

  test("each of several", async () => {
    const marks = [0, -99, -1];
    const heightAt: HeightAt = (column, row) => (row < 3 ? marks[row]! : ground(100)(column, row));
    const { summary } = await open(heightAt);
    expect(summary.marksAsked.map(({ value }) => value).sort((a, b) => a - b)).toEqual([
      -99, -1, 0,
    ]);
  });

  test("even when one cell alone has it, far off", async () => {
    const { summary } = await open((c, r) => (c === 3 && r === 4 ? 20 : ground(100)(c, r)));
    expect(summary.marksAsked).toMatchObject([{ value: 20, cells: 1 }]);
  });

  test("even when it covers most of the raster", async () => {
    const { summary } = await open((c, r) => (c < 90 ? 0 : ground(100)(c, r)));
    expect(summary.marksAsked).toMatchObject([{ value: 0, side: "below", share: 0.9 }]);
  });
});

describe("what may well be ground is not asked about", () => {
  const bank: HeightAt = (column, row) => Math.max(0, Math.hypot(column - 60, row - 40) - 12);
  test.each<[string, HeightAt]>([
    ["a lake made flat, with its banks", (c, r) => Math.max(101.4, 101.4 + bank(c, r) / 4)],
    [
      "the sea at 0 before a hilly coast",
      (c, r) => Math.max(0, (c - 40) * 1.7 + ground(0)(c, r) - 2),
    ],
    ["a lake above all else", (c, r) => Math.min(108, ground(100)(c, r) + c / 10)],
    ["steps of 5", (c) => 100 + 5 * Math.floor(c / 12)],
    ["whole metres", (c, r) => Math.round(ground(0)(c, r))],
    ["flat ground alone", () => 0],
    ["a quay 2 m over flat water", (c, r) => (c < 50 ? 176.4 : ground(178.4)(c, r))],
    ["a flat roof among trees", (c, r) => (c < 5 && r < 5 ? 112 : ground(100)(c, r) + (c % 9))],
    ["one low cell, a ditch", (c, r) => (c === 3 && r === 4 ? 95 : ground(100)(c, r))],
  ])("%s", async (_words, heightAt) => {
    expect((await open(heightAt)).summary.marksAsked).toEqual([]);
  });

  test("a real raster", async () => {
    const file = await rasterFile("olinda_dem_utm25s.tif");
    expect((await openTerrain([file], "metre")).summary.marksAsked).toEqual([]);
  });
});

describe("what the person says counts", () => {
  test("missing data is a hole", async () => {
    const { summary } = await open(withPond(330, -99), "foot", [{ value: -99, is: "hole" }]);
    expect(summary).toMatchObject({ marksAsked: [], holeShare: POND / SIDE ** 2 });
    expect(summary.lowestM).toBeGreaterThan(100);
  });

  test("ground is ground", async () => {
    const { summary } = await open(withPond(330, -99), "foot", [{ value: -99, is: "ground" }]);
    expect(summary).toMatchObject({ marksAsked: [], holeShare: 0 });
    expect(summary.lowestM).toBeCloseTo(-99 * 0.3048, 4);
  });

  test("of one value and not of another", async () => {
    const heightAt: HeightAt = (c, r) => (r < 2 ? [0, -99][r]! : ground(100)(c, r));
    const { summary } = await open(heightAt, "metre", [{ value: 0, is: "ground" }]);
    expect(summary.marksAsked).toMatchObject([{ value: -99 }]);
  });

  test("of a value that would not be asked about", async () => {
    const heightAt: HeightAt = (c) => 100 + Math.floor(c / 10);
    const { summary } = await open(heightAt, "metre", [{ value: 104, is: "hole" }]);
    expect(summary.holeShare).toBe(0.1);
  });
});

/** A ring over the middle of the raster that starts outside the pond and crosses it. */
async function planOn(terrain: { corners: readonly LonLat[] }): Promise<Plan> {
  const [nw, , se] = terrain.corners as [LonLat, LonLat, LonLat];
  const at = (u: number, v: number): LonLat => [
    nw[0] + u * (se[0] - nw[0]),
    nw[1] + v * (se[1] - nw[1]),
  ];
  return {
    ...EMPTY_PLAN,
    water: { ...EMPTY_PLAN.water, elevationM: 104 },
    alignments: [
      {
        ...{ id: "a", name: "A", kind: "ring" as const, reachBreaksM: [] },
        corners: [at(0.3, 0.3), at(0.3, 0.6), at(0.6, 0.6), at(0.6, 0.3)],
      },
    ],
  };
}

describe("nothing is counted before the person has said it", () => {
  const files = [raster(withPond(100, 0))];
  const opened = async (marks: MarkChoice[] = []) => {
    const engine = makeEngine();
    const summary = await engine.openTerrain({ files, verticalUnit: "metre", marks });
    return { engine, summary, plan: await planOn(summary) };
  };

  test("no line is sized or cut, and no water traced", async () => {
    const { engine, plan } = await opened();
    const refusal = {
      failure: { code: "ground/mark-unknown", given: { mark: { value: 0, cells: POND } } },
    };
    const refused = await engine.size({ plan }).then(() => null, asFailure);
    expect(said(refused!, "metric").message).toMatch(
      /^"dem\.tif": 437 cells \(4\.4 %\) have exactly 0 m, 100\.\d\d m below all other heights\.$/,
    );
    await expect(engine.size({ plan })).rejects.toMatchObject(refusal);
    await expect(engine.size({ plan, live: true })).rejects.toMatchObject(refusal);
    const cut = { plan, id: "a", chainageM: 1, marginM: 5 };
    await expect(engine.crossSection(cut)).rejects.toMatchObject(refusal);
    await expect(engine.traceWater({ plan })).rejects.toMatchObject(refusal);
  });

  test("and its cells are shown as holes", async () => {
    const { engine, summary } = await opened();
    const [nw, , se] = summary.corners;
    const at: LonLat = [nw[0] + 0.6 * (se[0] - nw[0]), nw[1] + 0.4 * (se[1] - nw[1])];
    expect(await engine.probe({ at })).toEqual({ groundM: null });
  });

  test("then a hole is left out of the totals and ground is in them", async () => {
    const hole = await opened([{ value: 0, is: "hole" }]);
    const kept = await opened([{ value: 0, is: "ground" }]);
    const [left] = (await hole.engine.size({ plan: hole.plan })).lines;
    const [all] = (await kept.engine.size({ plan: kept.plan })).lines;
    expect(left!.totals.lengthNoDataM).toBeGreaterThan(20);
    expect(left!.totals.greatestHeightM).toBeLessThan(5);
    expect(all!.totals.lengthNoDataM).toBe(0);
    expect(all!.totals.greatestHeightM).toBeGreaterThan(100);
  });
});

describe("on a raster too large to read whole", () => {
  const SIZE: [number, number] = [3000, 2400];
  const wide = ground(100);
  /** A hole of few cells in a strip that the sample passes over. */
  const small: HeightAt = (c, r) => (r >= 100 && r < 130 && c < 40 ? 0 : wide(c, r));

  const plane = (bounds: readonly number[]) => planPlane([bounds[0]!, bounds[3]!]);
  const around = { minX: 5, minY: -160, maxX: 90, maxY: -60 };

  test("a value that the survey did not see is asked about when the plan's ground is read", async () => {
    const { summary, samplerFor } = await openTerrain([raster(small, SIZE, 20)], "metre");
    expect(summary).toMatchObject({ marksAsked: [], fromOverview: true });
    await expect(samplerFor(plane(summary.bounds), around)).rejects.toMatchObject({
      failure: {
        code: "ground/mark-unknown",
        given: { mark: { value: 0, cells: 1200, looked: "plan", side: "below" } },
      },
    });
    const said = { choices: [{ value: 0, is: "hole" as const }], asked: [] };
    const again = await openTerrain([raster(small, SIZE, 20)], "metre", undefined, null, said);
    const sampler = await again.samplerFor(plane(summary.bounds), around);
    expect(sampler.heightAt(20, -115)).toBeNaN();
  });

  test("a value that an overview has made into means is found under them", async () => {
    const factor = 5;
    const mean: HeightAt = (column, row) => {
      let sum = 0;
      for (let k = 0; k < factor ** 2; k++) {
        sum += small(column * factor + (k % factor), row * factor + Math.floor(k / factor) - 3);
      }
      return sum / factor ** 2;
    };
    const overview = raster(mean, [SIZE[0] / factor, SIZE[1] / factor]);
    const files = [raster(small, SIZE, 20), { ...overview, name: "dem.tif.ovr" }];
    const { summary } = await openTerrain(files, "metre");
    expect(summary.marksAsked).toMatchObject([{ value: 0, looked: "sample" }]);
    expect(summary.lowestM).toBeGreaterThan(99);
  });
});

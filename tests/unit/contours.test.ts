import { featureCollection, point, isolines as turfIsolines } from "@turf/turf";
import { describe, expect, it } from "vitest";
import type { LonLat } from "../../shared/plan.ts";
import type { Terrain } from "../../workers/raster/terrain.ts";
import { contours } from "../../workers/tiles/contours.ts";
import { type Isoline, isolines } from "../../workers/tiles/isolines.ts";
import { soften } from "../../workers/tiles/soften.ts";
import { seededRandom } from "../helpers/seeded-random.ts";

const COLUMNS = 40;
const ROWS = 30;

function gridOf(heightAt: (column: number, row: number) => number): Float32Array {
  return Float32Array.from({ length: COLUMNS * ROWS }, (_, i) =>
    heightAt(i % COLUMNS, Math.floor(i / COLUMNS)),
  );
}

function lengthOf(lines: readonly Isoline[]): number {
  let length = 0;
  for (const line of lines) {
    for (let i = 2; i < line.length; i += 2) {
      length += Math.hypot(line[i]! - line[i - 2]!, line[i + 1]! - line[i - 1]!);
    }
  }
  return length;
}

describe("level lines", () => {
  it("are as long as those of @turf/isolines on a rough grid", () => {
    const random = seededRandom(7);
    const heights = gridOf(() => 5 + 3 * random());
    const points = Array.from(heights, (elevation, i) =>
      point([i % COLUMNS, Math.floor(i / COLUMNS)], { elevation }),
    );
    for (const level of [5.5, 6.25, 7.9]) {
      const oracle = turfIsolines(featureCollection(points), [level]).features[0]!.geometry;
      const theirs = lengthOf(oracle.coordinates.map((line) => line.flatMap(([x, y]) => [x!, y!])));
      expect(theirs).toBeGreaterThan(15);
      expect(lengthOf(isolines(heights, COLUMNS, ROWS, level)) / theirs).toBeCloseTo(1, 6);
    }
  });

  it("close round a cone at its radius", () => {
    const heights = gridOf((column, row) => 20 - Math.hypot(column - 20, row - 14));
    const [line, ...others] = isolines(heights, COLUMNS, ROWS, 12);
    expect(others).toEqual([]);
    expect([line!.at(-2), line!.at(-1)]).toEqual([line![0], line![1]]);
    for (let i = 0; i < line!.length; i += 2) {
      const radius = Math.hypot(line![i]! - 20, line![i + 1]! - 14);
      expect(Math.abs(radius - 8)).toBeLessThan(0.03);
    }
    expect(lengthOf([line!])).toBeCloseTo(2 * Math.PI * 8, 0);
  });

  it("stop at a hole and never touch it", () => {
    const hole = (column: number, row: number) => Math.hypot(column - 20, row - 15) < 5;
    const heights = gridOf((column, row) => (hole(column, row) ? Number.NaN : row + column / 100));
    const lines = isolines(heights, COLUMNS, ROWS, 15.1);
    expect(lines).toHaveLength(2);
    for (const line of lines) {
      for (let i = 0; i < line.length; i += 2) {
        const corners = [Math.floor, Math.ceil].flatMap((a) =>
          [Math.floor, Math.ceil].map((b) => heights[b(line[i + 1]!) * COLUMNS + a(line[i]!)]!),
        );
        expect(corners.some(Number.isNaN)).toBe(false);
      }
    }
    expect(isolines(heights, COLUMNS, ROWS, Number.NaN)).toEqual([]);
  });

  it("draw nothing on level ground or on ground without data", () => {
    expect(
      isolines(
        gridOf(() => 12),
        COLUMNS,
        ROWS,
        12,
      ),
    ).toEqual([]);
    expect(
      isolines(
        gridOf(() => Number.NaN),
        COLUMNS,
        ROWS,
        12,
      ),
    ).toEqual([]);
  });
});

describe("softening", () => {
  it("leaves a plane as it is inside, and no data as no data", () => {
    const plane = gridOf((column, row) =>
      column === 9 && row === 9 ? Number.NaN : 2 * column - row,
    );
    const softened = soften(plane, COLUMNS, ROWS, 1);
    expect(softened[20 * COLUMNS + 20]).toBe(20);
    expect(softened[9 * COLUMNS + 9]).toBeNaN();
    expect(softened.filter(Number.isNaN)).toHaveLength(1);
  });
});

describe("contours of a view", () => {
  const bounds: [number, number, number, number] = [-93.98, 42.98, -93.96, 43];
  const slope = ([lon, lat]: LonLat) => 260 + (lon - bounds[0]) * 500 + (lat - bounds[1]) * 200;
  const terrain = {
    summary: { bounds, cellXM: 1, cellYM: 1 },
    readGrid: async (place: (c: number, r: number) => LonLat, columns: number, rows: number) =>
      Float32Array.from({ length: columns * rows }, (_, i) =>
        slope(place(i % columns, Math.floor(i / columns))),
      ),
  } as unknown as Terrain;
  const inner: [number, number, number, number] = [-93.974, 42.986, -93.966, 42.994];

  it("lie at whole multiples of the interval, feet too, where the ground has that height", async () => {
    for (const intervalM of [0.5, 0.3048]) {
      const { lines } = await contours(terrain, { bounds: inner, intervalM, widthPx: 600 });
      expect(lines.length).toBeGreaterThan(8);
      for (const { elevationM, path } of lines) {
        expect(elevationM / intervalM).toBeCloseTo(Math.round(elevationM / intervalM), 9);
        const middle = path[Math.floor(path.length / 2)]!;
        expect(Math.abs(slope(middle) - elevationM)).toBeLessThan(0.005);
      }
    }
  });

  it("stay where they are when the view moves", async () => {
    const moved: typeof inner = [inner[0] + 0.0011, inner[1], inner[2] + 0.0011, inner[3]];
    const request = { intervalM: 0.5, widthPx: 600 };
    const before = await contours(terrain, { ...request, bounds: inner });
    const after = await contours(terrain, { ...request, bounds: moved });
    const known = new Set(before.lines.flatMap((line) => line.path.map(String)));
    const seen = after.lines.flatMap((line) => line.path.map(String));
    const shared = seen.filter((at) => known.has(at));
    expect(shared.length / seen.length).toBeGreaterThan(0.8);
  });

  it("are none outside the raster, and not endless on steep ground", async () => {
    const away: typeof inner = [10, 42.98, 10.01, 42.99];
    const request = { intervalM: 0.001, widthPx: 600 };
    expect((await contours(terrain, { ...request, bounds: away })).lines).toEqual([]);
    const { lines } = await contours(terrain, { ...request, bounds: inner });
    expect(new Set(lines.map((line) => line.elevationM)).size).toBeLessThanOrEqual(121);
  });
});

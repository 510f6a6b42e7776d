import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ownFolder } from "../helpers/own-folder.ts";
import { ROOT } from "../helpers/terminal.ts";

const PLAN = join(ROOT, "sample-terrain/tilted.geojson");
const RASTER = join(ROOT, "sample-terrain/tilted.tif");

const { drystead, written } = ownFolder();

/** The first feature of the teaching plan with this geometry: its house, or its line. */
function found(type: string) {
  const plan = JSON.parse(readFileSync(PLAN, "utf8"));
  return plan.features.find((each: { geometry: { type: string } }) => each.geometry.type === type);
}

function planOf(...features: readonly unknown[]): string {
  const drystead = { version: 1, water: { elevationM: 101.6952 } };
  return JSON.stringify({ type: "FeatureCollection", drystead, features });
}

const place = [expect.any(Number), expect.any(Number)];

describe("trace", () => {
  it("prints water, structures and alternatives as JSON and nothing else on standard output", async () => {
    const { code, out, said } = await drystead(["trace", PLAN, "--terrain", RASTER]);
    expect(said).toBe("");
    expect(code).toBe(0);
    const trail = JSON.parse(out);
    const waterM = 102 - 0.3048;
    expect(trail.water.elevationM).toBeCloseTo(waterM, 4);
    for (const key of ["cells", "areaM2", "volumeM3"]) {
      expect(trail.water[key]).toBeGreaterThan(0);
    }
    expect(trail.structures).toMatchObject([{ name: "House", wet: true, sillAt: place }]);
    expect(trail.structures[0].sillM).toBeLessThan(waterM);
    expect(trail.alternatives).toMatchObject([
      { name: "Rectangle", dry: true, entersAt: null, firstOverAt: place },
      { name: "Tied to the slope", dry: true, entersAt: null, firstOverAt: place },
    ]);
    for (const { firstOverM } of trail.alternatives) expect(firstOverM).toBeCloseTo(102, 4);
    expect(Object.keys(trail.alternatives[0]).slice(0, 5)).toEqual([
      "name",
      "dry",
      "entersAt",
      "firstOverM",
      "firstOverAt",
    ]);
    expect(trail).not.toHaveProperty("mask");
    for (const check of [...trail.checks, ...trail.alternatives[0].checks]) {
      expect(check).toMatchObject({
        id: expect.any(String),
        severity: expect.stringMatching(/^(stop|caution|note)$/),
        message: expect.any(String),
        remedy: expect.any(String),
        rule: expect.any(String),
        source: expect.any(String),
      });
    }
  });

  it("takes sources from the plan, and names where a short line lets water in", async () => {
    const line = found("LineString");
    const [, west, second] = line.geometry.coordinates;
    const short = { ...line, geometry: { type: "LineString", coordinates: [west, second] } };
    const river = {
      type: "Feature",
      properties: { role: "source", name: "River" },
      geometry: { type: "Point", coordinates: [west[0] - 0.0005, west[1]] },
    };
    const marked = written("marked.geojson", planOf(found("Polygon"), short, river));
    const { code, out } = await drystead(["trace", marked, "--terrain", RASTER]);
    expect(code).toBe(0);
    const trail = JSON.parse(out);
    expect(trail.water.from).toBe("sources");
    expect(trail.sources).toMatchObject([{ name: "River", state: "wet" }]);
    expect(trail.alternatives).toMatchObject([{ dry: false, entersAt: place }]);
    expect(trail.alternatives[0].checks[0].id).toBe("water-gets-in");
    expect(trail.alternatives[0].wayIn.path.length).toBeGreaterThan(1);
  });

  it("needs no line", async () => {
    const noLine = written("no-line.geojson", planOf(found("Polygon")));
    const { code, out } = await drystead(["trace", noLine, "--terrain", RASTER]);
    expect(code).toBe(0);
    const trail = JSON.parse(out);
    expect(trail.alternatives).toEqual([]);
    expect(trail.structures).toMatchObject([{ wet: true }]);
  });

  it("ends with 1 and a reason for input that is refused", async () => {
    const { code, out, said } = await drystead(["trace", PLAN, "--terrain", PLAN]);
    expect(out).toBe("");
    expect(said).toMatch(/raster|GeoTIFF/i);
    expect(code).toBe(1);
  });

  it.each([
    [["trace"], /needs a plan file/],
    [["trace", "plan.geojson"], /needs --terrain/],
    [["trace", "a.geojson", "b.geojson", "--terrain", "a.tif"], /one too many/],
    [["trace", "a.geojson", "--terrain", "a.tif", "--vertical-unit", "yd"], /m, ft, us-ft/],
  ])("ends with 2 and its usage for %j", async (words, reason) => {
    const { code, out, said } = await drystead(words);
    expect(out).toBe("");
    expect(said).toMatch(reason);
    expect(said).toMatch(/drystead trace/);
    expect(code).toBe(2);
  });

  it("gives help", async () => {
    const { code, out } = await drystead(["trace", "--help"]);
    expect(out).toMatch(/^drystead trace/);
    expect(code).toBe(0);
  });
});

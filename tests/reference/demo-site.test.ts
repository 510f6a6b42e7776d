import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { SIZE_M } from "../../sample-terrain/layout.ts";
import { demoPlan, steppedPlan, tiltedPlan } from "../../sample-terrain/plans.ts";
import { siteGrid } from "../../sample-terrain/site.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { freshGdal } from "../helpers/gdal.ts";
import { drystead, ROOT } from "../helpers/terminal.ts";

const NO_DATA = -9999;

/** The raster as GDAL reads it: what is said about it, and its heights row by row. */
async function gdalReading(path: string) {
  const gdal = await freshGdal({});
  const { datasets } = await gdal.open(path);
  const info = (await gdal.gdalinfo(datasets[0]!, [])) as Record<string, unknown>;
  const raw = await gdal.gdal_translate(datasets[0]!, ["-of", "ENVI"], "heights");
  const bytes = await gdal.getFileBytes(raw);
  return { info: JSON.stringify(info), heights: new Float32Array(bytes.slice().buffer) };
}

/** For GDAL, and for the terminal program, to start on a busy machine. */
const STARTING_MS = 60_000;

describe("the demo raster, read by GDAL", () => {
  let reading: Awaited<ReturnType<typeof gdalReading>>;
  beforeAll(async () => {
    reading = await gdalReading(`${ROOT}sample-terrain/demo.tif`);
  }, STARTING_MS);

  it("holds what the script computes, cell by cell", () => {
    const computed = siteGrid();
    expect(reading.heights).toHaveLength(SIZE_M * SIZE_M);
    const differing = computed.reduce(
      (count, height, cell) =>
        count + ((Number.isNaN(height) ? NO_DATA : height) === reading.heights[cell] ? 0 : 1),
      0,
    );
    expect(differing).toBe(0);
  });

  it("is a cloud optimised GeoTIFF in UTM zone 15N with overviews and a vertical datum", () => {
    expect(reading.info).toContain("COG");
    expect(reading.info).toContain("NAD83 / UTM zone 15N");
    expect(reading.info).toContain("Oxlip Bend local height (invented)");
    expect(reading.info).toContain('"overviews":[{');
  });

  it("has one hole, the pond, of less than half a percent", () => {
    const holes = reading.heights.filter((height) => height === NO_DATA).length;
    expect(holes).toBeGreaterThan(800);
    expect(holes / reading.heights.length).toBeLessThan(0.005);
  });
});

describe("the plans beside the rasters", () => {
  it.each([
    ["demo", demoPlan],
    ["tilted", tiltedPlan],
    ["stepped", steppedPlan],
  ])("%s opens as the plan of the script, without a note", (name, planFor) => {
    const raster = readFileSync(`${ROOT}sample-terrain/${name}.tif`);
    const text = readFileSync(`${ROOT}sample-terrain/${name}.geojson`, "utf8");
    const plan = planFor(raster.byteLength);
    expect(readPlanFile(text)).toEqual({ ok: true, value: { plan, waterStated: true, notes: [] } });
  });
});

describe("what the demo is there to show", () => {
  let drawn: SizedLine;
  let high: SizedLine;
  let tied: SizedLine;
  beforeAll(async () => {
    const files = ["sample-terrain/demo.geojson", "--terrain", "sample-terrain/demo.tif"];
    const { out } = await drystead(["size", ...files]);
    [drawn, high, tied] = JSON.parse(out).alternatives;
  }, STARTING_MS);

  it("the drawn ring is of a real size, and the one by high ground needs a fifth less", () => {
    expect(drawn.totals.lengthM).toBeGreaterThan(250);
    expect(drawn.totals.lengthM).toBeLessThan(350);
    expect(drawn.totals.bags).toBeGreaterThan(10_000);
    expect(drawn.totals.bags).toBeLessThan(22_000);
    expect(high.totals.lengthM).toBeGreaterThan(drawn.totals.lengthM + 20);
    expect(drawn.totals.bags / high.totals.bags).toBeGreaterThan(1.2);
    expect(drawn.totals.bags / high.totals.bags).toBeLessThan(1.4);
  });

  it("the drawn ring passes the limit in the ditch, and nowhere else", () => {
    expect(drawn.totals.lengthOverLimitM).toBeGreaterThan(3);
    expect(drawn.totals.lengthOverLimitM).toBeLessThan(15);
    expect(drawn.totals.greatestHeightM).toBeLessThan(1.6);
    const stops = drawn.checks.filter(({ severity }) => severity === "stop");
    expect(new Set(stops.map(({ id }) => id))).toEqual(new Set(["over-limit"]));
  });

  it("the two others have nothing that must stop the work", () => {
    for (const line of [high, tied]) {
      expect(line.checks.filter(({ severity }) => severity === "stop")).toEqual([]);
    }
  });

  it("the line tied to the road bank is a rival, and its ends stand above the crest", () => {
    expect(tied.kind).toBe("line");
    expect(tied.totals.bags / high.totals.bags).toBeGreaterThan(0.9);
    expect(tied.totals.bags / high.totals.bags).toBeLessThan(1.2);
    expect(tied.stations[0]?.heightM).toBe(0);
    expect(tied.stations.at(-1)?.heightM).toBe(0);
  });

  it("the drawn ring is late at the slow pace, the two cheaper lines are in time", () => {
    expect(drawn.time?.inTime).toBe(false);
    expect(high.time?.inTime).toBe(true);
    expect(tied.time?.inTime).toBe(true);
    const { people, peopleDayAndNight, bagsAtMost } = drawn.time!.waysOut!;
    expect(people).toBeGreaterThan(60);
    expect(peopleDayAndNight).toBeLessThan(60);
    expect(bagsAtMost).toBeGreaterThan(0.7 * drawn.totals.bags);
    expect(bagsAtMost).toBeLessThan(drawn.totals.bags);
  });

  it("the likely crest of its forecast is the stage it is sized for", () => {
    const { water, time } = demoPlan(1);
    const stages = time!.forecast!.rows.map(({ levelM }) => levelM);
    expect(Math.max(...stages)).toBeCloseTo(water.stageM, 9);
    const high = drawn.time!.crests.find(({ band }) => band === "high")!;
    expect(high.riseM).toBeLessThan(water.freeboardM);
  });

  it("no line touches the pond", () => {
    for (const line of [drawn, high, tied]) expect(line.totals.lengthNoDataM).toBe(0);
  });
});

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { anyPlan } from "../helpers/arbitrary-plan.ts";
import { freshGdal } from "../helpers/gdal.ts";
import { said } from "../helpers/said.ts";

/*
 * The plan file as an independent reader sees it: the GeoJSON driver of GDAL/OGR 3.8 (gdal3.js). Here OGR says
 * which layer, features, geometry types, coordinates and fields a written plan holds.
 */

interface Layer {
  readonly featureCount: number;
  readonly geometryFields: readonly { readonly coordinateSystem: { readonly wkt: string } }[];
  readonly fields: readonly { readonly name: string; readonly type: string }[];
  readonly features: readonly {
    readonly properties: { readonly [name: string]: unknown };
    readonly geometry: { readonly type: string; readonly coordinates: unknown };
  }[];
}

let gdal: Awaited<ReturnType<typeof freshGdal>>;
let folder: string;
let written = 0;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "drystead-plan-"));
  gdal = await freshGdal({ dest: folder });
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function opened(text: string) {
  written += 1;
  const path = join(folder, `plan-${written}.geojson`);
  writeFileSync(path, text);
  const { datasets } = await gdal.open(path);
  const dataset = datasets[0];
  if (!dataset) throw new Error("OGR does not open the file");
  return dataset;
}

async function layersOf(text: string): Promise<readonly Layer[]> {
  const dataset = await opened(text);
  const info = (await gdal.ogrinfo(dataset, ["-al", "-json", "-features"])) as unknown as {
    readonly driverShortName: string;
    readonly layers: readonly Layer[];
  };
  gdal.close(dataset);
  expect(info.driverShortName).toBe("GeoJSON");
  return info.layers;
}

async function rewrittenByGdal(text: string): Promise<string> {
  const dataset = await opened(text);
  const options = ["-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=9"];
  const output = await gdal.ogr2ogr(dataset, [...options, "-noNativeData"], `again-${written}`);
  gdal.close(dataset);
  return new TextDecoder().decode(await gdal.getFileBytes(output));
}

function planFrom(text: string): Plan {
  const read = readPlanFile(text);
  if (!read.ok) throw new Error(said(read.failure).message);
  return read.value.plan;
}

const WHOLE = readFileSync(new URL("../fixtures/plans/whole.geojson", import.meta.url), "utf8");

describe("a written plan, opened by GDAL's GeoJSON driver", () => {
  it("is one layer in WGS 84 with every feature, its type, its role and its name", async () => {
    const layers = await layersOf(writePlanFile(planFrom(WHOLE)));
    expect(layers.length).toBe(1);
    const [layer] = layers as [Layer];
    expect(layer.featureCount).toBe(8);
    expect(layer.geometryFields[0]?.coordinateSystem.wkt).toContain('ID["EPSG",4326]');
    expect(
      layer.features.map(({ properties, geometry }) => [
        properties.role,
        geometry.type,
        properties.name,
      ]),
    ).toEqual([
      ["structure", "Polygon", "Cottage"],
      ["alignment", "Polygon", "Close ring"],
      ["alignment", "LineString", "To the bank"],
      ["no-go", "Polygon", "Septic field"],
      ["source", "Point", "Above the weir"],
      ["gauge", "Point", "Weir"],
      ["flow", "LineString", undefined],
      ["culvert", "Point", undefined],
    ]);
    const types = Object.fromEntries(layer.fields.map(({ name, type }) => [name, type]));
    expect(types).toMatchObject({ role: "String", floorM: "Real", reachBreaksM: "RealList" });
  });

  it("has the plan's own coordinates, whatever the plan", async () => {
    const plans = fc.sample(anyPlan, { numRuns: 25, seed: 47 });
    for (const { carried: _, ...plan } of plans) {
      const [layer] = (await layersOf(writePlanFile(plan))) as [Layer];
      const { alignments, structures, noGo, gauge, flow } = plan;
      const lists = [
        structures,
        alignments,
        noGo,
        plan.sources,
        plan.culverts,
        plan.drains,
        plan.possibleCulverts,
        plan.roads,
        plan.workPlaces,
      ];
      const shapes = lists.reduce((sum, list) => sum + (list?.length ?? 0), 0);
      const expected = shapes + (gauge ? 1 : 0) + (flow ? 1 : 0);
      expect(layer?.featureCount ?? 0).toBe(expected);
      const seen = (layer?.features ?? []).filter(
        ({ properties }) => properties.role === "alignment",
      );
      expect(seen.map(({ geometry }) => places(geometry.coordinates))).toEqual(
        alignments.map(({ corners }) => places(corners)),
      );
    }
  });

  it("reads the same again after GDAL has written it, once its settings are put back", async () => {
    const plans = fc.sample(anyPlan, { numRuns: 25, seed: 48 });
    for (const { carried: _, ...plan } of plans.filter(({ structures }) => structures.length > 0)) {
      const text = writePlanFile(plan);
      const again = await rewrittenByGdal(text);
      expect(readPlanFile(again)).toMatchObject({ ok: false, failure: { code: "plan/foreign" } });
      const { drystead } = JSON.parse(text);
      const read = planFrom(JSON.stringify({ ...JSON.parse(again), drystead }));
      expect(blurred(read)).toEqual(blurred(plan));
    }
  });
});

/** Features with coordinates to 1e-6 degrees: GDAL's writer takes a run of zeros or nines for the end of a number. */
function blurred({ structures, alignments, noGo, sources, gauge, flow, water }: Plan): unknown {
  const features = { structures, alignments, noGo, sources, gauge, flow, water };
  return JSON.parse(JSON.stringify(features), (_key, value) =>
    isPlace(value) ? value.map((degrees) => degrees.toFixed(6)) : value,
  );
}

function isPlace(value: unknown): value is number[] {
  return Array.isArray(value) && value.length === 2 && value.every((n) => typeof n === "number");
}

function places(coordinates: unknown): string[] {
  const flat = (coordinates as unknown[]).flat(4) as number[];
  const pairs = flat.flatMap((lon, index): LonLat[] =>
    index % 2 === 0 ? [[lon, flat[index + 1] as number]] : [],
  );
  return [...new Set(pairs.map(String))].sort();
}

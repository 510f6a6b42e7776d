import { copyFileSync, mkdtempSync, openAsBlob, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { GroundSummary } from "../../shared/messages.ts";
import { makeEngine } from "../../workers/engine.ts";
import { drystead, ROOT } from "../helpers/terminal.ts";

const RASTER = join(ROOT, "tests/fixtures/rasters/unit-none.tif");

let folder = "";
let other = "";
let bounds: GroundSummary["bounds"];
let range = "";
beforeAll(async () => {
  const files = [{ name: "unit-none.tif", blob: await openAsBlob(RASTER) }];
  const summary = await makeEngine().openTerrain({ files, verticalUnit: "metre" });
  bounds = summary.bounds;
  range = [summary.lowestM, summary.highestM].map((m) => m.toFixed(0)).join(" to ");
  folder = mkdtempSync(join(tmpdir(), "drystead-ground-"));
  other = join(folder, "other.tif");
  copyFileSync(RASTER, other);
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** Sizes a line across the middle of the raster, with what the plan says of the raster it names. */
function sized(raster: string, words: readonly string[] = []) {
  const [lon, lat] = [(bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2];
  const coordinates = [
    [lon - (lon - bounds[0]) / 4, lat],
    [lon + (lon - bounds[0]) / 4, lat],
  ];
  const plan = {
    type: "FeatureCollection",
    drystead: {
      ...{ version: 1, water: { elevationM: 32 } },
      ground: { verticalUnit: "us-survey-foot", rmseM: 0.4, datumNote: "NGVD 29" },
      terrain: [{ name: "unit-none.tif", bytes: statSync(RASTER).size }],
    },
    features: [
      {
        type: "Feature",
        properties: { role: "alignment" },
        geometry: { type: "LineString", coordinates },
      },
    ],
  };
  const path = join(folder, "plan.geojson");
  writeFileSync(path, JSON.stringify(plan));
  return drystead(["size", path, "--terrain", raster, ...words]);
}

describe("a raster that states no vertical unit", () => {
  it("takes the plan's own answer when the plan names this very file, with its accuracy", async () => {
    const { code, out, said } = await sized(RASTER);
    expect(said).not.toContain("other elevation data");
    expect(code).toBe(0);
    const { terrain, alternatives } = JSON.parse(out);
    expect(terrain).toMatchObject({ verticalUnit: "us-survey-foot", verticalUnitFrom: "person" });
    expect(alternatives[0].groundAccuracy).toEqual({
      rmseM: 0.4,
      source: "as entered in Elevation data",
    });
  });

  it("asks when the plan names another file, with what each unit makes of the heights", async () => {
    const { code, out, said } = await sized(other);
    expect(code).toBe(1);
    expect(out).toBe("");
    expect(said).toContain("ground/unit-unknown");
    expect(said).toContain(`--vertical-unit ft: ${range} ft; your water 105.0 ft`);
    expect(said).toContain(`--vertical-unit m: ${range} m; your water 32.0 m`);
    expect(said).toMatch(/No longer used: accuracy 1.31 ft, vertical datum "NGVD 29"/);
  });

  it("takes the accuracy typical of its cells when the plan's was said of another file", async () => {
    const { out } = await sized(other, ["--vertical-unit", "m"]);
    const [{ groundAccuracy }] = JSON.parse(out).alternatives;
    expect(groundAccuracy.source).not.toBe("as entered in Elevation data");
  });
});

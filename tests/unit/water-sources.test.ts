import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { validateChange, validatePlan } from "../../shared/plan-check.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { said } from "../helpers/said.ts";

function file(...features: readonly unknown[]): string {
  return JSON.stringify({
    type: "FeatureCollection",
    drystead: { version: 1, water: { elevationM: 5 } },
    features,
  });
}

const source = (geometry: unknown, properties: object = {}, id?: string) => ({
  type: "Feature",
  ...(id === undefined ? {} : { id }),
  properties: { role: "source", ...properties },
  geometry,
});

function read(text: string) {
  const found = readPlanFile(text);
  if (!found.ok) throw new Error(said(found.failure).message);
  return found.value;
}

describe("sources in a plan file", () => {
  it("are Point features of the role source, named where the file names none", () => {
    const point = (coordinates: readonly number[]) => ({ type: "Point", coordinates });
    const { plan, notes } = read(
      file(
        source(point([12.3, 51.2, 99]), { name: "River" }, "r"),
        source(point([12.31, 51.21])),
        source(
          {
            type: "MultiPoint",
            coordinates: [
              [12.4, 51.3],
              [12.5, 51.4],
            ],
          },
          { name: "Pools" },
        ),
      ),
    );
    expect(plan.sources).toEqual([
      { id: "r", name: "River", at: [12.3, 51.2] },
      { id: "source-1", name: "Source 1", at: [12.31, 51.21] },
      { id: "source-2", name: "Pools", at: [12.4, 51.3] },
      { id: "source-3", name: "Source 2", at: [12.5, 51.4] },
    ]);
    expect(notes).toEqual([]);
    expect(read(writePlanFile(plan)).plan).toEqual(plan);
  });

  it("are left out of a plan whose file holds none", () => {
    expect(read(file()).plan).not.toHaveProperty("sources");
    expect(read(writePlanFile({ ...EMPTY_PLAN, sources: [] })).plan).not.toHaveProperty("sources");
  });

  it("keep what else their features hold", () => {
    const text = readFileSync(new URL("../fixtures/plans/whole.geojson", import.meta.url), "utf8");
    const { plan } = read(text);
    expect(plan.sources).toEqual([{ id: "river", name: "Above the weir", at: [12.291, 51.209] }]);
    const written = JSON.parse(writePlanFile(plan)) as {
      features: { id?: unknown; properties: object }[];
    };
    expect(written.features.find(({ id }) => id === "river")?.properties).toEqual({
      role: "source",
      name: "Above the weir",
      bank: "left",
    });
  });

  it.each([
    [
      "a line",
      {
        type: "LineString",
        coordinates: [
          [12, 51],
          [13, 51],
        ],
      },
      "plan/bad-geometry",
    ],
    ["no point at all", { type: "MultiPoint", coordinates: [] }, "plan/bad-geometry"],
    ["swapped beyond the pole", { type: "Point", coordinates: [51, 123] }, "plan/bad-geometry"],
    [
      "too many points",
      { type: "MultiPoint", coordinates: Array.from({ length: 51 }, (_, i) => [12, 51 + i / 1e4]) },
      "plan/bad-feature",
    ],
  ])("that are %s are refused, with the feature named", (_, geometry, code) => {
    const found = readPlanFile(file(source(geometry, { name: "Weir" })));
    expect(found).toMatchObject({ ok: false, failure: { code } });
    if (!found.ok) expect(said(found.failure).message).toMatch(/Weir|at most 50 sources/);
  });
});

describe("sources in a plan", () => {
  const river = { id: "r", name: "River", at: [12.3, 51.2] as const };

  it("may be left out, none, or some", () => {
    expect(validatePlan(EMPTY_PLAN).ok).toBe(true);
    expect(validatePlan({ ...EMPTY_PLAN, sources: [] }).ok).toBe(true);
    const marked = { ...EMPTY_PLAN, sources: [river] };
    expect(validatePlan(marked).ok).toBe(true);
    expect(validateChange(marked, EMPTY_PLAN).ok).toBe(true);
    expect(validateChange(EMPTY_PLAN, marked).ok).toBe(true);
  });

  it.each([
    ["no list", "river", /sources as a list/],
    ["null", null, /sources as a list/],
    ["a place off the globe", [{ ...river, at: [190, 51] }], /Source "River".*longitude/],
    ["an unknown entry", [{ ...river, depthM: 3 }], /Source "River".*unknown entry/],
    ["one identifier twice", [river, river], /came twice/],
    ["too many", Array.from({ length: 51 }, (_, i) => ({ ...river, id: `${i}` })), /at most 50/],
  ])("are refused as %s", (_, sources, reason) => {
    const found = validatePlan({ ...EMPTY_PLAN, sources });
    expect(found).toMatchObject({ ok: false });
    if (!found.ok) expect(said(found.failure).message).toMatch(reason);
  });
});

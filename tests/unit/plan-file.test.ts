import { readFileSync } from "node:fs";
import { booleanClockwise } from "@turf/turf";
import fc from "fast-check";
import type { FeatureCollection } from "geojson";
import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Alignment, LonLat, Plan } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { isWaterGiven } from "../../shared/stage.ts";
import { anyPlan } from "../helpers/arbitrary-plan.ts";
import { said } from "../helpers/said.ts";

function fixture(name: string): string {
  return readFileSync(new URL(`../fixtures/plans/${name}`, import.meta.url), "utf8");
}

function read(text: string): { plan: Plan; notes: readonly string[] } {
  const outcome = readPlanFile(text);
  if (!outcome.ok) throw new Error(said(outcome.failure).message);
  const { plan, notes } = outcome.value;
  return { plan, notes: notes.map((note) => said(note).message) };
}

function collection(features: unknown[], settings: object = { water: { elevationM: 5 } }): string {
  return JSON.stringify({
    type: "FeatureCollection",
    drystead: { version: 1, ...settings },
    features,
  });
}

function feature(
  role: string,
  type: string,
  coordinates: unknown,
  more: object = {},
  id?: unknown,
) {
  return { type: "Feature", id, properties: { role, ...more }, geometry: { type, coordinates } };
}

const SQUARE: [number, number][] = [
  [12.1, 51.1],
  [12.101, 51.1],
  [12.101, 51.101],
  [12.1, 51.101],
  [12.1, 51.1],
];

describe("a plan file without the level of its water", () => {
  it.each([
    ["nothing", {}, false],
    ["an unknown key", { water: { elevation: 262.5 } }, false],
    ["the kind only", { water: { by: "stage" } }, false],
    ["the other kind's level", { water: { by: "stage", elevationM: 262.5 } }, false],
    ["a level that nobody gave", { water: { elevationM: 262.5, given: false } }, false],
    ["an elevation", { water: { elevationM: 0 } }, true],
    ["a stage", { water: { stageM: 3, gaugeZeroM: 260 } }, true],
  ])("opens and says so: %s", (_, settings, stated) => {
    const outcome = readPlanFile(collection([], settings));
    if (!outcome.ok) throw new Error(said(outcome.failure).message);
    expect(outcome.value.waterStated).toBe(stated);
    expect(isWaterGiven(outcome.value.plan.water)).toBe(stated);
    const codes = outcome.value.notes.map(({ code }) => code);
    expect(codes.includes("plan/no-water-stated")).toBe(!stated);
  });
});

describe("a plan file with only its features and a water level", () => {
  const { plan, notes } = read(fixture("minimal.geojson"));

  it("takes every default for the rest", () => {
    expect(plan).toEqual({
      ...EMPTY_PLAN,
      structures: [
        {
          id: "structure-1",
          name: "Building 1",
          floorM: null,
          outline: [
            [12.3001, 51.2001],
            [12.3003, 51.2001],
            [12.3003, 51.2002],
            [12.3001, 51.2002],
          ],
        },
      ],
      alignments: [
        {
          id: "alignment-1",
          name: "A",
          kind: "ring",
          reachBreaksM: [],
          corners: [
            [12.2999, 51.1999],
            [12.3005, 51.1999],
            [12.3005, 51.2004],
            [12.2999, 51.2004],
          ],
        },
        {
          id: "alignment-2",
          name: "B",
          kind: "line",
          reachBreaksM: [],
          corners: [
            [12.2999, 51.1999],
            [12.3005, 51.1999],
            [12.3005, 51.2004],
          ],
        },
      ],
      water: { ...EMPTY_PLAN.water, by: "elevation", elevationM: 262.5, freeboardM: 0.3048 },
    });
    expect(notes).toEqual([]);
  });
});

describe("a plan file that uses everything", () => {
  const text = fixture("whole.geojson");
  const { plan } = read(text);

  it("gives the stated settings and defaults for those left out", () => {
    expect(plan.title).toBe("Mill cottage");
    expect(plan.chosenId).toBe("b");
    expect(plan.water).toEqual({
      by: "stage",
      stageM: 4.2,
      gaugeZeroM: 258.1,
      datumOffsetM: 0.12,
      datumNote: "From the survey of the weir",
      elevationM: 0,
      fallPerM: 0.0004,
      freeboardM: 0.3048,
    });
    expect(plan.section.bag).toEqual({ ...EMPTY_PLAN.section.bag, courseM: 0.09 });
    expect(plan.practice).toEqual({ ...EMPTY_PLAN.practice, people: 25 });
    expect(plan.flow).toEqual({ from: [12.29, 51.21], to: [12.3, 51.2] });
    expect(plan.gauge).toEqual({ name: "Weir", at: [12.29, 51.21] });
    expect(plan.noGo.map((area) => area.name)).toEqual(["Septic field"]);
    expect(plan.alignments[0]?.reachBreaksM).toEqual([40.5, 90]);
  });

  it("writes back what is not ours, untouched", () => {
    const before = JSON.parse(text) as FeatureCollection;
    const after = JSON.parse(writePlanFile(plan)) as FeatureCollection & {
      author: string;
      drystead: { colour: string; section: { shape: object } };
    };
    expect(after.author).toBe("kept: a member of the collection");
    expect(after.drystead.colour).toBe("kept too");
    expect(after.drystead.section.shape).toEqual({ note: "kept for a later version" });
    expect(after.features.find((each) => each.id === "house")?.properties?.parcel).toBe("12-004");
    expect(after.features.find((each) => each.id === "b")).toHaveProperty(
      "style.stroke",
      "#123456",
    );
    expect(after.features.find((each) => each.id === 7)).toEqual(before.features.at(-1));
  });

  it("says which settings it does not know", () => {
    const { notes } = read(text);
    expect(notes.some((note) => note.includes("section.shape"))).toBe(true);
    expect(notes.some((note) => note.includes("colour"))).toBe(true);
  });
});

describe("writing", () => {
  it("gives back the identical plan when read", () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        expect(read(writePlanFile(plan)).plan).toEqual(plan);
      }),
      { numRuns: 300, seed: 41 },
    );
  });

  it("follows RFC 7946: closed outlines, counter-clockwise (by Turf), at most nine decimals", () => {
    const check = (plan: Plan) => {
      const text = writePlanFile(plan);
      const written = JSON.parse(text) as FeatureCollection;
      const rings = written.features.flatMap(({ geometry }) =>
        geometry?.type === "Polygon" ? geometry.coordinates : [],
      );
      for (const ring of rings) {
        expect(ring.at(-1)).toEqual(ring[0]);
        expect(ring.length).toBeGreaterThanOrEqual(4);
      }
      expect(text).not.toMatch(/"coordinates":[^}]*\.\d{10}/);
      return rings;
    };
    fc.assert(
      fc.property(anyPlan, (plan) => void check(plan)),
      { numRuns: 50, seed: 42 },
    );
    for (const outline of [SQUARE.slice(0, 4), SQUARE.slice(0, 4).reverse()]) {
      const house = { id: "s", name: "S", floorM: null, outline };
      const [ring] = check({ ...EMPTY_PLAN, structures: [house] });
      expect(booleanClockwise(ring as number[][])).toBe(false);
    }
  });

  it("keeps the order of a ring's corners either way round", () => {
    const corners = SQUARE.slice(0, 4).reverse();
    const ring: Alignment = { id: "a", name: "A", kind: "ring", corners, reachBreaksM: [20] };
    const { plan } = read(writePlanFile({ ...EMPTY_PLAN, alignments: [ring] }));
    expect(plan.alignments).toEqual([ring]);
  });

  it("rounds coordinates to nine decimals", () => {
    const at: LonLat = [12.3000000004999, 51.1999999995001];
    const { plan } = read(writePlanFile({ ...EMPTY_PLAN, gauge: { name: "G", at } }));
    expect(plan.gauge?.at).toEqual([12.3, 51.2]);
  });

  it("puts outlines across the antimeridian the right way round", () => {
    const outline: LonLat[] = [
      [179.9995, -16],
      [-179.9995, -16],
      [-179.9995, -15.999],
    ];
    for (let start = 0; start < 3; start++) {
      const corners = [...outline.slice(start), ...outline.slice(0, start)];
      const house = { id: "s", name: "S", floorM: null, outline: corners };
      const written = JSON.parse(writePlanFile({ ...EMPTY_PLAN, structures: [house] }));
      expect(written.features[0].geometry.coordinates[0].slice(0, 3)).toEqual(corners);
      const turned = { ...house, outline: [...corners].reverse() };
      const back = JSON.parse(writePlanFile({ ...EMPTY_PLAN, structures: [turned] }));
      expect(back.features[0].properties.direction).toBe("clockwise");
    }
  });
});

describe("names and identifiers", () => {
  it("are made where missing, round those that are stated", () => {
    const line = (more: object, id?: unknown) =>
      feature("alignment", "LineString", [SQUARE[0], SQUARE[1]], more, id);
    const { plan } = read(
      collection([line({}), line({ name: "A" }, "alignment-1"), line({ name: "" }), line({}, 4)]),
    );
    expect(plan.alignments.map(({ name }) => name)).toEqual(["B", "A", "C", "D"]);
    expect(plan.alignments.map(({ id }) => id)).toEqual([
      "alignment-2",
      "alignment-1",
      "alignment-3",
      "4",
    ]);
  });

  it("are made anew for the second of two equal identifiers, with a note", () => {
    const house = (name: string) => feature("structure", "Polygon", [SQUARE], { name }, "h");
    const { plan, notes } = read(collection([house("Barn"), house("Shed")]));
    expect(plan.structures.map(({ id }) => id)).toEqual(["h", "structure-1"]);
    expect(notes).toEqual([
      'Building "Shed": its identifier "h" was taken; it is now "structure-1".',
    ]);
  });

  it("lose control characters and what turns the reading direction, and are cut, with a note", () => {
    const nasty = `Barn\u0000\u001b[31m\u202egnp.exe\n${"x".repeat(500)}`;
    const { plan, notes } = read(
      collection([feature("structure", "Polygon", [SQUARE], { name: nasty })]),
    );
    expect(plan.structures[0]?.name).toMatch(/^Barn \[31m gnp\.exe x+$/);
    expect(plan.structures[0]?.name.length).toBe(120);
    expect(notes).toEqual(["Feature 1: its name was cut to 120 characters."]);
  });

  it("stay plain text when they look like markup or a spreadsheet formula", () => {
    const names = ["<script>alert(1)</script>", "=HYPERLINK(1)", "@SUM(A1)", "'; DROP TABLE x; --"];
    const { plan } = read(
      collection(names.map((name) => feature("structure", "Polygon", [SQUARE], { name }))),
    );
    expect(plan.structures.map(({ name }) => name)).toEqual(names);
    expect(read(writePlanFile(plan)).plan).toEqual(plan);
  });
});

describe("geometry", () => {
  it("of several parts becomes structures of their own; holes are left out; both are said", () => {
    const hole = SQUARE.map(([lon, lat]) => [
      12.1005 + (lon - 12.1) / 9,
      51.1005 + (lat - 51.1) / 9,
    ]);
    const moved = SQUARE.map(([lon, lat]) => [lon + 0.002, lat]);
    const { plan, notes } = read(
      collection([
        feature("structure", "MultiPolygon", [[SQUARE, hole], [moved]], { name: "Mill" }),
      ]),
    );
    expect(plan.structures.map(({ name }) => name)).toEqual(["Mill (1)", "Mill (2)"]);
    expect(plan.structures.map(({ outline }) => outline.length)).toEqual([4, 4]);
    expect(notes).toEqual([
      'Building "Mill" has 2 parts: each is now on its own.',
      'Building "Mill" has holes, which are left out: only its outline is used.',
    ]);
  });

  it("of one part in a Multi type is taken as that part", () => {
    const { plan } = read(
      collection([
        feature("alignment", "MultiPolygon", [[SQUARE]]),
        feature("alignment", "MultiLineString", [[SQUARE[0], SQUARE[1]]]),
        feature("gauge", "MultiPoint", [SQUARE[2]]),
      ]),
    );
    expect(plan.alignments.map(({ kind }) => kind)).toEqual(["ring", "line"]);
    expect(plan.gauge?.at).toEqual(SQUARE[2]);
  });

  it("without coordinates is kept in the file and said", () => {
    const empty = { type: "Feature", properties: { role: "structure" }, geometry: null };
    const { plan, notes } = read(collection([empty]));
    expect(plan.structures).toEqual([]);
    expect(notes[0]).toContain("has no geometry");
    expect(JSON.parse(writePlanFile(plan)).features).toEqual([empty]);
  });

  it("loses corners repeated at one place and heights", () => {
    const line = [
      [12.1, 51.1, 3],
      [12.1, 51.1, 4],
      [12.1000000001, 51.1],
      [12.2, 51.1],
    ];
    const { plan } = read(collection([feature("alignment", "LineString", line)]));
    expect(plan.alignments[0]?.corners).toEqual([
      [12.1, 51.1],
      [12.2, 51.1],
    ]);
  });
});

describe("settings", () => {
  it.each([
    [{ elevationM: 5 }, "elevation", 0],
    [{ stageM: 5, gaugeZeroM: 1 }, "stage", 0],
    [{ stageM: 5, elevationM: 6 }, "elevation", 1],
    [{ by: "stage", stageM: 5, elevationM: 6 }, "stage", 0],
    [{}, "elevation", 1],
  ])("infer from %j that %s rules the water", (water, by, noteCount) => {
    const { plan, notes } = read(collection([], { water }));
    expect(plan.water.by).toBe(by);
    expect(notes.length).toBe(noteCount);
  });

  it("forget a chosen alternative that is not there, and say so", () => {
    const { plan, notes } = read(collection([], { chosenId: "gone", water: { stageM: 1 } }));
    expect(plan.chosenId).toBeNull();
    expect(notes).toEqual(['The chosen line "gone" is not in the file: none is chosen.']);
  });

  it("are read after a byte order mark", () => {
    expect(read(`\ufeff${fixture("minimal.geojson")}`).plan.alignments.length).toBe(2);
  });

  it("take NAD 83 with a note, and an old-style WGS 84 without", () => {
    const withCrs = (name: string) =>
      JSON.stringify({
        ...JSON.parse(fixture("minimal.geojson")),
        crs: { type: "name", properties: { name } },
      });
    expect(read(withCrs("urn:ogc:def:crs:OGC:1.3:CRS84")).notes).toEqual([]);
    expect(read(withCrs("urn:ogc:def:crs:EPSG::4269")).notes[0]).toContain("NAD 83");
  });
});

describe("culverts and drains in a plan file", () => {
  const file = (...features: readonly unknown[]) =>
    JSON.stringify({ type: "FeatureCollection", drystead: { version: 1 }, features });
  const feature = (role: string, geometry: unknown, properties = {}) => ({
    ...{ type: "Feature", geometry, properties: { role, ...properties } },
  });
  const LINE = {
    type: "LineString",
    coordinates: [
      [-96.78, 46.88],
      [-96.7798, 46.88],
    ],
  };
  const POINT = { type: "Point", coordinates: [-96.78, 46.88] };

  it("take what is left out as not known, and a pipe as open", () => {
    const found = readPlanFile(file(feature("culvert", LINE), feature("drain", POINT)));
    expect(found.ok && found.value.plan).toMatchObject({
      culverts: [
        { name: "Culvert 1", invertsM: [null, null], sizeM: null, gate: null, plugged: false },
      ],
      drains: [{ name: "Drain 1", kind: "floor-drain", joinsOutside: null, plugged: false }],
    });
  });

  it.each([
    ["one invert", { invertsM: [3] }, "inverts (invertsM) as two elevations"],
    ["an invert as text", { invertsM: ["3 ft", null] }, "or null, first end first"],
    ["a gate that is none", { gate: "valve" }, "none, flap, gate"],
    ["a size of nothing", { sizeM: 0 }, "size of the culvert"],
    ["plugged as text", { plugged: "no" }, "plugged"],
  ])("refuse %s, and say what was expected", (_, properties, words) => {
    const found = readPlanFile(file(feature("culvert", LINE, properties)));
    expect(found.ok ? "" : said(found.failure).message).toContain(words);
  });

  it("carry a culvert drawn as a point, and say so", () => {
    const found = readPlanFile(file(feature("culvert", POINT)));
    if (!found.ok) throw new Error(said(found.failure).message);
    expect(found.value.plan.culverts).toBeUndefined();
    expect(found.value.plan.carried?.features).toHaveLength(1);
    expect(found.value.notes.map(({ code }) => code)).toContain("plan/kept-as-other-type");
  });
});

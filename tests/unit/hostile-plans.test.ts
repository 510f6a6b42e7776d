import { readFileSync } from "node:fs";
import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { placeFootprints } from "../../shared/plan-footprints.ts";
import { SETTINGS } from "../../shared/settings.ts";
import { readPlanOf } from "../../src/document/files.ts";
import { history, replacePlan, startFrom } from "../../src/document/store.ts";
import { readGeoJson, shapesIn } from "../helpers/read-shapes.ts";
import { said } from "../helpers/said.ts";

const VALID = readFileSync(
  new URL("../fixtures/plans/minimal.geojson", import.meta.url),
  "utf8",
).trim();
const valid = JSON.parse(VALID) as { features: unknown[]; drystead: object };

/** The example of RFC 7946, section 1.5: sound GeoJSON, but no plan. */
const RFC_EXAMPLE = `{"type": "FeatureCollection", "features": [
  {"type": "Feature", "geometry": {"type": "Point", "coordinates": [102.0, 0.5]}, "properties": {"prop0": "value0"}},
  {"type": "Feature", "geometry": {"type": "LineString", "coordinates": [[102.0, 0.0], [103.0, 1.0], [104.0, 0.0], [105.0, 1.0]]},
   "properties": {"prop0": "value0", "prop1": 0.0}},
  {"type": "Feature", "geometry": {"type": "Polygon", "coordinates": [[[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]]]},
   "properties": {"prop0": "value0", "prop1": {"this": "that"}}}]}`;

const RING = [
  [12.1, 51.1],
  [12.101, 51.1],
  [12.101, 51.101],
  [12.1, 51.1],
];

function file(more: object): string {
  return JSON.stringify({ ...valid, ...more });
}

function settings(more: object): string {
  return file({ drystead: { version: 1, ...more } });
}

function only(role: unknown, type: unknown, coordinates: unknown, more: object = {}): string {
  const geometry = { type, coordinates };
  return file({ features: [{ type: "Feature", properties: { role, ...more }, geometry }] });
}

function many(count: number, role: string, type: string, coordinates: unknown): string {
  const one = { type: "Feature", properties: { role }, geometry: { type, coordinates } };
  return file({ features: Array.from({ length: count }, () => one) });
}

const circle = Array.from({ length: 2001 }, (_, index) => [
  12 + Math.cos(index / 320) / 1000,
  51 + Math.sin(index / 320) / 1000,
]);

function expectSound(read: ReturnType<typeof readPlanFile>): void {
  if (!read.ok) {
    expect(said(read.failure).remedy).not.toBe("");
    return;
  }
  const { plan } = read.value;
  expect(validatePlan(plan).ok).toBe(true);
  const again = readPlanFile(writePlanFile(plan));
  expect(again.ok && again.value.plan).toEqual(plan);
}

/** What is wrong, the file, the code of the refusal, words that name the cause. */
const REFUSED: readonly (readonly [string, string, string, string])[] = [
  ["nothing in it", "", "plan/not-json", "an empty file"],
  ["only blanks", " \n\t ", "plan/not-json", "an empty file"],
  ["a TIFF image", "II*\0\u0010\0\0", "plan/not-json", "a TIFF image"],
  ["a big-endian TIFF image", "MM\0*\0\0", "plan/not-json", "a TIFF image"],
  ["a zip archive renamed", "PK\u0003\u0004\u0014\0", "plan/not-json", "a zip archive"],
  ["zero bytes", "\0\0\0\0", "plan/not-json", "binary data"],
  ["a web page", "<!doctype html><title>404</title>", "plan/not-json", "XML or HTML"],
  ["a KML file", '<?xml version="1.0"?><kml/>', "plan/not-json", "XML or HTML"],
  ["cut off in the middle", VALID.slice(0, VALID.length / 2), "plan/truncated", "brackets"],
  ["cut off before its last bracket", VALID.slice(0, -1), "plan/truncated", "1 bracket still"],
  ["a comma too many", VALID.replace("],", "],,"), "plan/not-json", "JSON"],
  ["NaN as a number", VALID.replace("262.5", "NaN"), "plan/not-json", "NaN"],
  ["two texts in one", `${VALID}${VALID}`, "plan/not-json", "JSON"],
  ["a plain number", "42", "plan/foreign", "came 42"],
  ["a list", "[1, 2, 3]", "plan/foreign", "came [1, 2, 3]"],
  ["null", "null", "plan/foreign", "came nothing"],
  ["an object of something else", '{"name": "drystead"}', "plan/foreign", "an object"],
  ["a lone geometry", '{"type": "Point", "coordinates": [1, 2]}', "plan/foreign", '"Point"'],
  ["sound GeoJSON that is no plan", RFC_EXAMPLE, "plan/foreign", "no such member"],
  ["roles without settings", file({ drystead: undefined }), "plan/foreign", "settings are missing"],
  ["settings that are a text", file({ drystead: "yes" }), "plan/bad-value", '"yes"'],
  ["settings that are null", file({ drystead: null }), "plan/bad-value", "came nothing"],
  ["no version", file({ drystead: {} }), "plan/bad-version", "version"],
  ["a version in words", settings({ version: "one" }), "plan/bad-version", '"one"'],
  ["version 0", settings({ version: 0 }), "plan/bad-version", "came 0"],
  ["version 1.5", settings({ version: 1.5 }), "plan/bad-version", "came 1.5"],
  ["a newer version", settings({ version: 2 }), "plan/newer-version", "version 2"],
  [
    "a version beyond numbers",
    VALID.replace('"version": 1', '"version": 1e999'),
    "plan/bad-version",
    "Infinity",
  ],
  ["features that are no list", file({ features: {} }), "plan/no-features", '"features"'],
  ["a feature that is a number", file({ features: [7] }), "plan/bad-feature", "Feature 1"],
  ["a feature that is null", file({ features: [null] }), "plan/bad-feature", "came nothing"],
  [
    "properties that are a list",
    file({ features: [{ type: "Feature", properties: [] }] }),
    "plan/bad-feature",
    "properties",
  ],
  [
    "a name that is an object",
    only("structure", "Polygon", [RING], { name: {} }),
    "plan/bad-feature",
    "name",
  ],
  [
    "a structure that is a point",
    only("structure", "Point", [12, 51]),
    "plan/bad-geometry",
    '"Point"',
  ],
  ["a gauge that is a polygon", only("gauge", "Polygon", [RING]), "plan/bad-geometry", '"Polygon"'],
  [
    "a geometry of an unknown type",
    only("alignment", "Curve", [RING]),
    "plan/bad-geometry",
    '"Curve"',
  ],
  [
    "a geometry of type __proto__",
    only("alignment", "__proto__", []),
    "plan/bad-geometry",
    "__proto__",
  ],
  [
    "coordinates that are a text",
    only("alignment", "Polygon", "12,51"),
    "plan/bad-geometry",
    '"12,51"',
  ],
  [
    "corners that are texts",
    only("alignment", "LineString", [
      ["12", "51"],
      ["13", "52"],
    ]),
    "plan/bad-geometry",
    "corner 1",
  ],
  [
    "a corner that is null",
    only("alignment", "LineString", [[12, 51], null]),
    "plan/bad-geometry",
    "corner 2",
  ],
  [
    "a corner without latitude",
    only("alignment", "LineString", [[12, 51], [12]]),
    "plan/bad-geometry",
    "corner 2",
  ],
  ["a corner at infinity", VALID.replace("12.3001", "1e999"), "plan/bad-geometry", "Infinity"],
  [
    "latitude and longitude swapped",
    only("alignment", "LineString", [
      [46.9, -96.8],
      [46.9, -96.7],
    ]),
    "plan/bad-geometry",
    "swapped",
  ],
  [
    "map metres for degrees",
    only("alignment", "LineString", [
      [667000, 5195000],
      [667100, 5195000],
    ]),
    "plan/bad-geometry",
    "meters or feet",
  ],
  [
    "a stated CRS that is not WGS 84",
    file({ crs: { type: "name", properties: { name: "urn:ogc:def:crs:EPSG::26914" } } }),
    "plan/other-crs",
    "26914",
  ],
  ["a CRS that says nothing", file({ crs: 5 }), "plan/other-crs", "5"],
  ["a polygon without rings", only("alignment", "Polygon", []), "plan/bad-geometry", "outline"],
  [
    "a multi-polygon without parts",
    only("structure", "MultiPolygon", []),
    "plan/bad-geometry",
    "came none",
  ],
  [
    "a ring of two corners",
    only("alignment", "Polygon", [
      [
        [12, 51],
        [12.1, 51],
        [12, 51],
      ],
    ]),
    "plan/bad-value",
    "from 3",
  ],
  [
    "a ring that goes to and fro",
    only("alignment", "Polygon", [
      [
        [12, 51],
        [12.001, 51],
        [12, 51],
        [12.001, 51],
      ],
    ]),
    "plan/bad-value",
    "different corners",
  ],
  [
    "a line of one place",
    only("alignment", "LineString", [
      [12, 51],
      [12, 51],
    ]),
    "plan/bad-value",
    "from 2",
  ],
  [
    "a flow of one place",
    only("flow", "LineString", [
      [12, 51],
      [12, 51],
    ]),
    "plan/bad-geometry",
    "downstream",
  ],
  [
    "a flow that comes back",
    only("flow", "LineString", [
      [12, 51],
      [13, 51],
      [12, 51],
    ]),
    "plan/bad-value",
    "same place",
  ],
  [
    "a line across an ocean",
    only("alignment", "LineString", [
      [-70, 40],
      [-9, 40],
    ]),
    "plan/bad-value",
    "km",
  ],
  [
    "an alignment in two parts",
    only("alignment", "MultiLineString", [RING, RING]),
    "plan/bad-geometry",
    "one part",
  ],
  ["two gauges", many(2, "gauge", "Point", [12, 51]), "plan/bad-feature", "second"],
  [
    "two flows",
    many(2, "flow", "LineString", [
      [12, 51],
      [12.1, 51],
    ]),
    "plan/bad-feature",
    "second",
  ],
  [
    "too many alignments",
    many(51, "alignment", "Polygon", [RING]),
    "plan/bad-feature",
    "at most 50",
  ],
  [
    "too many structures",
    many(201, "structure", "Polygon", [RING]),
    "plan/bad-feature",
    "at most 200",
  ],
  [
    "too many parts",
    only("structure", "MultiPolygon", Array(300).fill([RING])),
    "plan/bad-feature",
    "at most 200",
  ],
  [
    "too many features",
    many(20_001, "tree", "Point", [12, 51]),
    "plan/bad-feature",
    "at most 20000",
  ],
  ["too many corners", only("alignment", "LineString", circle), "plan/bad-value", "2001"],
  [
    "a floor in words",
    only("structure", "Polygon", [RING], { floorM: "ground" }),
    "plan/bad-value",
    "floorM",
  ],
  [
    "reach breaks as a text",
    only("alignment", "Polygon", [RING], { reachBreaksM: "[10]" }),
    "plan/bad-value",
    "reachBreaksM",
  ],
  [
    "reach breaks that fall",
    only("alignment", "Polygon", [RING], { reachBreaksM: [9, 4] }),
    "plan/bad-value",
    "reachBreaksM",
  ],
  ["a group that is a number", settings({ water: 262.5 }), "plan/bad-value", "water"],
  ["a group that is a list", settings({ section: [] }), "plan/bad-value", "section"],
  [
    "an elevation in words",
    settings({ water: { elevationM: "861 ft" } }),
    "plan/bad-value",
    "water.elevationM",
  ],
  [
    "an elevation that is null",
    settings({ water: { elevationM: null } }),
    "plan/bad-value",
    "water.elevationM",
  ],
  [
    "a rule for water that is not known",
    settings({ water: { by: "guess" } }),
    "plan/bad-value",
    "water.by",
  ],
  [
    "a unit that is not known",
    settings({ ground: { verticalUnit: "fathom" } }),
    "plan/bad-value",
    '"fathom"',
  ],
  [
    "a lap as long as the roll",
    settings({ section: { sheet: { rollLengthM: 2, lapM: 2 } } }),
    "plan/bad-value",
    "lapM",
  ],
  [
    "rates the wrong way round",
    settings({ practice: { taskRateLow: 70 } }),
    "plan/bad-value",
    "taskRateLow",
  ],
  ["a title that is a number", settings({ title: 5 }), "plan/bad-value", "title"],
  ["terrain that is a text", settings({ terrain: "a.tif" }), "plan/bad-value", "terrain"],
  ["terrain without a size", settings({ terrain: [{ name: "a.tif" }] }), "plan/bad-value", "size"],
  [
    "a chosen alternative that is a list",
    settings({ chosenId: [] }),
    "plan/bad-value",
    "identifier",
  ],
  [
    "a key that would reach the prototype",
    VALID.replace('"version": 1', '"version": 1, "__proto__": {"x": 1}'),
    "plan/hostile-key",
    "__proto__",
  ],
  [
    "the same key, escaped",
    VALID.replace('"role"', '"\\u005f_proto__": 1, "role"'),
    "plan/hostile-key",
    "__proto__",
  ],
  ["a million lists in one another", "[".repeat(1_000_000), "plan/too-deep", "64"],
  ["a million objects in one another", '{"a":'.repeat(1_000_000), "plan/too-deep", "64"],
  ["eight million characters and one", " ".repeat(8_000_001), "plan/too-large", "8.0 million"],
];

describe("a plan file with", () => {
  beforeEach(() => startFrom({ plan: EMPTY_PLAN }));

  it.each(REFUSED)("%s is refused, and the plan stays", async (_wrong, text, code, cause) => {
    const before = history.value;
    const read = await readPlanOf(new File([text], "plan.geojson"));
    if (read.ok) replacePlan(read.value.plan, "Open");
    expect(read).toMatchObject({ ok: false, failure: { code } });
    expect(read.ok ? "" : said(read.failure).message).toContain(cause);
    expect(read.ok ? "" : said(read.failure).message).toMatch(/[Ee]xpected/);
    expect(read.ok ? "" : said(read.failure).remedy).not.toBe("");
    expect(history.value).toBe(before);
    expect(({} as { x?: number }).x).toBeUndefined();
  });

  it.each(Object.entries(SETTINGS))("%s beyond its range is refused by name", (path, range) => {
    for (const value of [range.lowSI - 1, range.highSI + 1, "1", [], true]) {
      const nested = path
        .split(".")
        .reduceRight<unknown>((inner, key) => ({ [key]: inner }), value);
      const read = readPlanFile(settings(nested as object));
      expect(read).toMatchObject({ ok: false, failure: { code: "plan/bad-value" } });
      expect(read.ok ? "" : said(read.failure).message).toContain(path);
    }
  });

  it("200 MB is refused before it is read", async () => {
    class Huge extends File {
      override get size() {
        return 200_000_000;
      }
      override text(): Promise<string> {
        throw new Error("The text was read");
      }
    }
    const read = await readPlanOf(new Huge([], "huge.geojson"));
    expect(read).toMatchObject({ ok: false, failure: { code: "plan/too-large" } });
  });

  it("a disk that fails under it is refused", async () => {
    class Lost extends File {
      override text(): Promise<string> {
        return Promise.reject(new DOMException("gone", "NotFoundError"));
      }
    }
    const read = await readPlanOf(new Lost(["x"], "lost.geojson"));
    expect(read).toMatchObject({ ok: false, failure: { code: "plan/cannot-read" } });
  });

  it("an end at any character is refused", () => {
    for (let end = 0; end < VALID.length; end++) {
      expect(readPlanFile(VALID.slice(0, end)).ok).toBe(false);
    }
  });

  it("any character changed is refused, or read as a valid plan", () => {
    const change = fc.tuple(fc.nat({ max: VALID.length - 1 }), fc.string({ maxLength: 3 }));
    fc.assert(
      fc.property(change, ([at, put]) => {
        const read = readPlanFile(VALID.slice(0, at) + put + VALID.slice(at + 1));
        expectSound(read);
      }),
      { numRuns: 1000, seed: 43 },
    );
  });

  it("any JSON among the settings is refused, or read as a valid plan that can be written", () => {
    const keys = [
      "water",
      "section",
      "bag",
      "by",
      "elevationM",
      "terrain",
      "chosenId",
      "title",
      ".",
    ];
    const { tree } = fc.letrec<{ tree: unknown }>((tie) => ({
      tree: fc.oneof(
        { depthSize: "small", withCrossShrink: true },
        fc.jsonValue({ maxDepth: 0 }),
        fc.dictionary(fc.constantFrom(...keys), tie("tree")),
      ),
    }));
    const stated = fc.dictionary(fc.constantFrom(...keys), tree);
    fc.assert(
      fc.property(stated, (more) => expectSound(readPlanFile(settings({ version: 1, ...more })))),
      { numRuns: 300, seed: 44 },
    );
  });

  it("any JSON in its features is refused, or read as a valid plan that can be written", () => {
    const geometry = fc.record({
      type: fc.constantFrom("Polygon", "LineString", "Point", "MultiPolygon"),
      coordinates: fc.jsonValue({ maxDepth: 4 }),
    });
    const properties = fc.record({
      role: fc.constantFrom("structure", "alignment", "no-go", "gauge", "flow", "x"),
      name: fc.oneof(fc.string(), fc.jsonValue()),
      reachBreaksM: fc.option(fc.jsonValue(), { freq: 9 }),
    });
    const feature = fc.record({
      type: fc.constant("Feature"),
      id: fc.jsonValue(),
      properties,
      geometry: fc.oneof(geometry, fc.constant(null), fc.jsonValue()),
    });
    fc.assert(
      fc.property(fc.array(feature, { maxLength: 4 }), (features) =>
        expectSound(readPlanFile(file({ features }))),
      ),
      { numRuns: 400, seed: 45 },
    );
  });
});

describe("a footprint file with", () => {
  const polygons = (count: number) =>
    JSON.stringify({ type: "MultiPolygon", coordinates: Array(count).fill([RING]) });

  it.each([
    ["no polygons", '{"type": "Point", "coordinates": [1, 2]}', "shapes/none"],
    ["another format's rings", '{"rings": [[[1, 2], [3, 4], [5, 6]]]}', "shapes/none"],
    ["features that are no list", '{"type": "FeatureCollection", "features": 3}', "shapes/none"],
    [
      "degenerate outlines only",
      '{"type": "Polygon", "coordinates": [[[1, 2], [1, 2]]]}',
      "shapes/none",
    ],
    [
      "swapped coordinates",
      '{"type": "Polygon", "coordinates": [[[46, -96], [46, -97], [47, -97]]]}',
      "plan/bad-geometry",
    ],
    [
      "map metres with a corner missing",
      '{"type": "Polygon", "coordinates": [[[5e5, 5e6], [5e5], [6e5, 5e6]]]}',
      "plan/bad-geometry",
    ],
    ["an outline that is no list", '{"type": "Polygon", "coordinates": [7]}', "plan/bad-geometry"],
    ["a part cut off", polygons(2).slice(0, -3), "plan/truncated"],
    ["a million lists in one another", "[".repeat(1_000_000), "plan/too-deep"],
  ])("%s is refused", async (_wrong, text, code) => {
    const read = await shapesIn(text);
    expect(read).toMatchObject({ ok: false, failure: { code } });
    expect(read.ok ? "" : said(read.failure).remedy).not.toBe("");
  });

  it("footprints of another place is refused", () => {
    const read = readGeoJson(polygons(1));
    const placed = read.ok && placeFootprints(read.value, null, [0, 0, 1, 1]);
    expect(placed).toMatchObject({ ok: false, failure: { code: "footprints/elsewhere" } });
  });
});

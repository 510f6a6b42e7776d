import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { failureOf } from "../../shared/failure.ts";
import { saysUses, withLines, withNoGo, withSaid } from "../../shared/imports/into-plan.ts";
import {
  NO_PIPE_COLUMNS,
  type PipeColumns,
  withCulverts,
  withRoads,
} from "../../shared/imports/into-ways.ts";
import { placeShapes } from "../../shared/imports/place-shapes.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readGeoJson } from "../helpers/read-shapes.ts";
import { said } from "../helpers/said.ts";

const RING = [
  [-84.5, 39.1],
  [-84.499, 39.1],
  [-84.499, 39.101],
  [-84.5, 39.1],
];
const PATH = [
  [-84.5, 39.1],
  [-84.49, 39.1],
];
const WITHIN = [-84.6, 39, -84.4, 39.2] as const;
const feature = (type: string, coordinates: unknown, properties: object = {}) => ({
  ...{ type: "Feature", properties, geometry: { type, coordinates } },
});

function placed(features: readonly object[], within: typeof WITHIN | null = WITHIN) {
  const read = readGeoJson(JSON.stringify({ type: "FeatureCollection", features }));
  if (!read.ok) throw new Error(said(read.failure).message);
  return placeShapes(read.value, null, within);
}

describe("shapes of a file", () => {
  it("become no-go areas and lines under names that the plan does not have yet", () => {
    const shapes = placed([
      feature("Polygon", [RING]),
      feature("Polygon", [RING], { name: "Septic field" }),
      feature("LineString", PATH),
    ]);
    const once = withNoGo(EMPTY_PLAN, shapes.outlines);
    const twice = withLines(withNoGo(once, shapes.outlines), shapes);
    expect(twice.noGo.map(({ id, name }) => [id, name])).toEqual([
      ["no-go-1", "No-go area 1"],
      ["no-go-2", "Septic field"],
      ["no-go-3", "No-go area 2"],
      ["no-go-4", "Septic field"],
    ]);
    expect(twice.alignments.map(({ kind, name }) => [kind, name])).toEqual([
      ["line", "A"],
      ["ring", "B"],
      ["ring", "Septic field"],
    ]);
    expect(twice.chosenId).toBe(twice.alignments[0]!.id);
    expect(validatePlan(twice)).toMatchObject({ ok: true });
  });

  it("are taken as their roles say, where all have one", () => {
    const features = [
      feature("Polygon", [RING], { role: "structure", name: "Barn", floorM: 262.5 }),
      feature("Polygon", [RING], { role: "no-go" }),
      feature("Polygon", [RING], { role: "alignment", name: "Close" }),
      feature("LineString", PATH, { role: "alignment", name: "To the bank" }),
    ];
    expect(saysUses(placed(features))).toBe(true);
    expect(saysUses(placed([...features, feature("Polygon", [RING])]))).toBe(false);
    const plan = withSaid(EMPTY_PLAN, placed(features));
    expect(plan.structures).toMatchObject([{ name: "Barn", floorM: 262.5 }]);
    expect(plan.noGo).toHaveLength(1);
    expect(plan.alignments.map(({ name, kind }) => [name, kind])).toEqual([
      ["To the bank", "line"],
      ["Close", "ring"],
    ]);
    expect(validatePlan(plan)).toMatchObject({ ok: true });
  });

  it("elsewhere are left out with a note; with none here the file is refused, and a swap is named", () => {
    const far = feature(
      "LineString",
      PATH.map(([lon, lat]) => [lon! + 1, lat]),
    );
    const { paths, notes } = placed([far, feature("LineString", PATH)]);
    expect(paths).toHaveLength(1);
    expect(notes).toEqual([failureOf("shapes/off-data-left-out", { shapes: 1 })]);
    expect(() => placed([far])).toThrow(expect.objectContaining({ code: "footprints/elsewhere" }));
    const swapped = feature(
      "LineString",
      PATH.map(([lon, lat]) => [lat, lon]),
    );
    expect(() => placed([swapped])).toThrow(expect.objectContaining({ code: "shapes/axis-order" }));
  });
});

describe("lines of a file that are pipes and roads", () => {
  const figures = { up: 862.5, down: "862.1", dia: 18, name: "Mill Road" };
  const picked: PipeColumns = {
    ...{ firstInvert: "up", lastInvert: "down", invertUnit: "foot", size: "dia" },
    sizeUnit: "inch",
  };

  it("become culverts, open, with inverts and sizes of the columns picked, in the unit said", () => {
    const { paths } = placed([feature("LineString", PATH, figures), feature("LineString", PATH)]);
    const { plan, leftOut } = withCulverts(EMPTY_PLAN, paths, picked);
    expect(plan.culverts).toMatchObject([
      { name: "Mill Road", plugged: false, gate: null },
      { name: "Culvert 1", invertsM: [null, null], sizeM: null },
    ]);
    expect(plan.culverts![0]!.invertsM[0]).toBeCloseTo(862.5 * 0.3048, 9);
    expect(plan.culverts![0]!.invertsM[1]).toBeCloseTo(862.1 * 0.3048, 9);
    expect(plan.culverts![0]!.sizeM).toBeCloseTo(18 * 0.0254, 9);
    expect(leftOut).toBe(0);
    expect(validatePlan(plan)).toMatchObject({ ok: true });
    const again = withCulverts(plan, paths, NO_PIPE_COLUMNS).plan;
    expect(new Set(again.culverts!.map(({ id }) => id)).size).toBe(4);
    expect(validatePlan(again)).toMatchObject({ ok: true });
  });

  it("take no figure that is none, nor one in a unit that nobody has said, and count them", () => {
    const hostile = [0, -99_999, "n/a", 1e9].map((up) =>
      feature("LineString", PATH, { up, dia: 0 }),
    );
    const { paths } = placed(hostile);
    const { plan, leftOut } = withCulverts(EMPTY_PLAN, paths, { ...picked, lastInvert: null });
    expect(
      plan.culverts!.every(({ invertsM, sizeM }) => invertsM[0] === null && sizeM === null),
    ).toBe(true);
    expect(leftOut).toBe(8);
    expect(validatePlan(plan)).toMatchObject({ ok: true });
    const noUnit = withCulverts(EMPTY_PLAN, placed([feature("LineString", PATH, figures)]).paths, {
      ...picked,
      ...{ invertUnit: null, sizeUnit: null },
    });
    expect(noUnit.plan.culverts![0]).toMatchObject({ invertsM: [null, null], sizeM: null });
  });

  it("become exit roads by the same names", () => {
    const { paths } = placed([feature("LineString", PATH, figures), feature("LineString", PATH)]);
    const plan = withRoads(EMPTY_PLAN, paths);
    expect(plan.roads!.map(({ name }) => name)).toEqual(["Mill Road", "Road 1"]);
    expect(validatePlan(plan)).toMatchObject({ ok: true });
  });
});

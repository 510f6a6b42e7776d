import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { saysUses, withLines, withNoGo, withSaid } from "../../shared/imports/into-plan.ts";
import { placeShapes } from "../../shared/imports/place-shapes.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readGeoJson } from "../helpers/read-shapes.ts";

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
  if (!read.ok) throw new Error(read.failure.message);
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
    expect([paths.length, notes]).toEqual([
      1,
      ["1 shapes outside the elevation data are left out."],
    ]);
    expect(() => placed([far])).toThrow(expect.objectContaining({ code: "footprints/elsewhere" }));
    const swapped = feature(
      "LineString",
      PATH.map(([lon, lat]) => [lat, lon]),
    );
    expect(() => placed([swapped])).toThrow(expect.objectContaining({ code: "shapes/axis-order" }));
  });
});

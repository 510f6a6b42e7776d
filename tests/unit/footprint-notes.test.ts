import { describe, expect, it } from "vitest";
import { buildingsFromShapes } from "../../shared/buildings/from-shapes.ts";
import type { FoundBuildings } from "../../shared/buildings/from-shapes-types.ts";
import { layOutShapes } from "../../shared/buildings/lay-out-shapes.ts";
import type { Building } from "../../shared/buildings/types.ts";
import { foundShapes } from "../../shared/imports/found-shapes.ts";
import { footprintNotes, takeInWords } from "../../shared/words/footprint-notes.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";

const building = (id: string): Building => ({
  ...{ id, name: id, parts: [], floorM: null, weight: 1, priority: "" },
});
const ALL: FoundBuildings = {
  buildings: [],
  leftOut: [
    { building: building("12"), why: { kind: "duplicate", of: "7" } },
    { building: building("15"), why: { kind: "duplicate", of: "7" } },
    { building: building("9"), why: { kind: "sliver", areaM2: 3.2 } },
  ],
  notes: [
    { kind: "left-out", feature: 1999, why: "few-corners" },
    { kind: "left-out", feature: 3, why: "many-corners" },
    { kind: "left-out", feature: 4, why: "bad-coordinates" },
    { kind: "no-outline", count: 2400 },
    { kind: "off-data", id: "a", isWholly: true },
    { kind: "off-data", id: "b", isWholly: false },
    { kind: "parts", id: "c", parts: 3 },
    { kind: "holes", id: "d", holes: 1 },
    { kind: "self-crossing", id: "e" },
    { kind: "repeated-id", id: "f (2)", came: "f" },
    ...Array.from({ length: 7 }, (_, i) => ({ kind: "no-floor" as const, id: `n${i}` })),
    { kind: "doubtful-floor", id: "g", came: "n/a" },
    { kind: "bad-priority", id: "h", came: "high" },
    { kind: "taken-in", id: "13", why: { kind: "duplicate", of: "7" } },
    { kind: "taken-in", id: "14", why: { kind: "sliver", areaM2: 3.2 } },
  ],
};

describe("notes on the footprints of a file", () => {
  it("say what is left out first, each kind once, with a few examples", () => {
    expect(footprintNotes(ALL, "us")).toEqual([
      "2 outlines repeat another and are left out: 12 (as 7), 15 (as 7).",
      "1 outline is too small or narrow for a building and is left out: 9 (34 sq ft).",
      "1 shape with fewer than 3 corners is left out: shape 2,000.",
      "1 shape with over 2,000 corners is left out: shape 4.",
      "1 shape with coordinates that cannot be read is left out: shape 5.",
      "2,400 shapes without an outline (points, lines, or empty) are left out.",
      "1 building is off the elevation data: a.",
      "1 building is partly off the elevation data: b.",
      "1 building has several parts; one line goes around all of them: c (3).",
      "1 outline has holes; only its outer edge counts: d.",
      "1 outline crosses itself; correct it in a GIS: e.",
      "1 building has an id that is in the file twice, and gets another: f (now f (2)).",
      "7 buildings have no floor: n0, n1, n2, n3, n4 and 2 more.",
      '1 floor is not taken: not a figure, 0, or far from the ground: g ("n/a").',
      '1 priority is not taken: neither First, Never, nor a number above 0 up to 1,000: h ("high").',
      "1 outline repeats another and is taken all the same: 13 (as 7).",
      "1 outline is too small or narrow for a building and is taken all the same: 14 (34 sq ft).",
    ]);
  });

  it("name what can be taken in again", () => {
    expect(takeInWords("duplicate", 1)).toBe("Take the outline that repeats another");
    expect(takeInWords("duplicate", 3)).toBe("Take the 3 outlines that repeat another");
    expect(takeInWords("sliver", 2)).toBe(
      "Take the 2 outlines that are too small or narrow for a building",
    );
  });

  it.each(["us", "metric"] as const)("are the trade's words and units in %s", (system) => {
    for (const sentence of footprintNotes(ALL, system)) {
      expect(sentence).not.toMatch(FOREIGN[system]);
      expect(sentence).not.toMatch(NEVER);
    }
    expect(footprintNotes(ALL, system)[1]).toContain(system === "us" ? "34 sq ft" : "3.2 m²");
  });

  it("speak of every kind that a file can give", () => {
    const ring = (x: number, size: number) => [
      [x, 0],
      [x + size, 0],
      [x + size, size],
      [x, size],
      [x, 0],
    ];
    const feature = (type: string, coordinates: unknown, id: unknown = null) => ({
      ...{ type: "Feature", properties: { id, floor: "none", rank: "high" } },
      geometry: { type, coordinates },
    });
    const features = [
      feature("Polygon", [ring(0, 1e-4)], "a"),
      feature("Polygon", [ring(0, 1e-4)], "a"),
      feature("Polygon", [ring(1, 1e-6)]),
      feature("MultiPolygon", [[ring(2, 1e-4), ring(2.00002, 1e-5)], [ring(2.1, 1e-4)]]),
      feature("Polygon", [["x"]]),
      feature("Point", [0, 0]),
    ];
    const file = foundShapes({ type: "FeatureCollection", features }, null, { leavesBad: true });
    const columns = { name: null, floor: "floor", floorUnit: "metre", priority: "rank" } as const;
    const ground = { bounds: [0, 0, 1, 1], lowestM: 0, highestM: 10 } as const;
    const found = buildingsFromShapes(layOutShapes(file, null), { ...columns, id: "id" }, ground);
    const said = footprintNotes(found, "us");
    expect(said).toHaveLength(9);
    expect(said.every((sentence) => /^\d.*\.$/.test(sentence))).toBe(true);
  });
});

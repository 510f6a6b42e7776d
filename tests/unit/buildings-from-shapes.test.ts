import { describe, expect, it } from "vitest";
import { crossesItself, outlineKey } from "../../shared/buildings/footprint-shape.ts";
import { buildingsFromShapes, doubtfulCounts } from "../../shared/buildings/from-shapes.ts";
import type { BuildingColumns, LeftOutKind } from "../../shared/buildings/from-shapes-types.ts";
import { layOutShapes } from "../../shared/buildings/lay-out-shapes.ts";
import { foundShapes } from "../../shared/imports/found-shapes.ts";
import type { LonLat } from "../../shared/plan.ts";

const [LON, LAT] = [-93.1874, 44.0521];
const square = (east: number, side = 2, north = 0): LonLat[] =>
  [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ].map(([x, y]) => [LON + (east + x!) / 1e4, LAT + (north + y!) / 1e4]);
const closed = (outline: readonly LonLat[]) => [...outline, outline[0]!];
const feature = (properties: object, ...parts: LonLat[][][]) => ({
  ...{ type: "Feature", properties },
  geometry: { type: "MultiPolygon", coordinates: parts.map((rings) => rings.map(closed)) },
});
const house = (properties: object, east: number) => feature(properties, [square(east)]);
const shapes = (features: object[]) =>
  foundShapes({ type: "FeatureCollection", features }, null, { leavesBad: true });

const COLUMNS: BuildingColumns = {
  ...{ id: "parcel", name: "use", floor: "floor_ft", floorUnit: "foot" },
  priority: "rank",
};
const GROUND = {
  bounds: [LON - 0.001, LAT - 0.001, LON + 0.01, LAT + 0.01],
  ...{ lowestM: 260, highestM: 275 },
} as const;
const found = (features: object[], columns = COLUMNS) =>
  buildingsFromShapes(layOutShapes(shapes(features), null), columns, GROUND);

describe("buildings out of a file's shapes", () => {
  it("have the figures of the columns that were picked, in meters", () => {
    const row = { parcel: 7, use: "Clinic", floor_ft: "880", rank: 2.5 };
    expect(found([house(row, 0)])).toEqual({
      buildings: [
        {
          ...{ id: "7", name: "Clinic", weight: 2.5, priority: "" },
          ...{ floorM: expect.closeTo(268.224, 6), parts: [square(0).map(rounded)] },
        },
      ],
      ...{ leftOut: [], notes: [] },
    });
  });

  it("take no floor whose unit nobody said, that is no figure, 0, or far from all ground", () => {
    const floors = [880, "n/a", 0, 30, 268, ""];
    const { buildings, notes } = found(
      floors.map((floor_ft, i) => house({ parcel: i, floor_ft }, 4 * i)),
    );
    expect(buildings.map(({ floorM }) => floorM !== null)).toEqual([true, ...Array(5).fill(false)]);
    expect(notes).toEqual([
      ...["n/a", "0", "30", "268"].map((came, i) => ({
        ...{ kind: "doubtful-floor", id: String(i + 1), came },
      })),
      { kind: "no-floor", id: "5" },
    ]);
    const unsaid = found([house({ parcel: 1, floor_ft: 880 }, 0)], { ...COLUMNS, floorUnit: null });
    expect(unsaid).toMatchObject({ buildings: [{ floorM: null }], notes: [] });
  });

  it("take in what would be left out where the person says so, each kind for itself, with ids that stay", () => {
    const rows = ["a", "b", "c", "c"].map((parcel) => ({ parcel, floor_ft: 880 }));
    const all = [square(0), square(0), square(20, 0.1), square(20, 0.1)].map((outline, i) =>
      feature(rows[i]!, [outline]),
    );
    const taking = (...kinds: LeftOutKind[]) =>
      buildingsFromShapes(layOutShapes(shapes(all), null), COLUMNS, GROUND, new Set(kinds));
    const idsOf = (...kinds: LeftOutKind[]) => taking(...kinds).buildings.map(({ id }) => id);
    expect(idsOf()).toEqual(["a"]);
    expect(idsOf("duplicate")).toEqual(["a", "b"]);
    expect(idsOf("sliver")).toEqual(["a", "c"]);
    expect(idsOf("sliver", "duplicate")).toEqual(["a", "b", "c", "c (2)"]);
    expect(taking("sliver").leftOut.map(({ why }) => why)).toEqual([
      { kind: "duplicate", of: "a" },
      { kind: "duplicate", of: "c" },
    ]);
    expect(taking("sliver", "duplicate").notes.filter(({ kind }) => kind === "taken-in")).toEqual([
      { kind: "taken-in", id: "b", why: { kind: "duplicate", of: "a" } },
      {
        ...{ kind: "taken-in", id: "c" },
        why: { kind: "sliver", areaM2: expect.any(Number) },
      },
      { kind: "taken-in", id: "c (2)", why: { kind: "duplicate", of: "c" } },
    ]);
    expect([...doubtfulCounts(taking("duplicate"))]).toEqual([
      ["duplicate", 1],
      ["sliver", 2],
    ]);
  });

  it("leave a second one of the same outline and slivers apart, and lose none", () => {
    const turned = [...square(0)].reverse();
    const same = feature({ parcel: "b", floor_ft: 880 }, [
      [...turned.slice(2), ...turned.slice(0, 2)],
    ]);
    const thin: LonLat[] = [
      [LON + 9e-4, LAT],
      [LON + 13e-4, LAT],
      [LON + 13e-4, LAT + 2e-6],
    ];
    const { buildings, leftOut } = found([
      house({ parcel: "a", floor_ft: 880 }, 0),
      same,
      feature({ parcel: "c", floor_ft: 880 }, [thin]),
      feature({ parcel: "d", floor_ft: 880 }, [square(20, 0.1)]),
    ]);
    expect(buildings.map(({ id }) => id)).toEqual(["a"]);
    expect(leftOut.map(({ building, why }) => [building.id, why.kind])).toEqual([
      ["b", "duplicate"],
      ["c", "sliver"],
      ["d", "sliver"],
    ]);
    expect(leftOut[0]?.why).toEqual({ kind: "duplicate", of: "a" });
  });

  it("tell parts, holes, sides that cross, and places off the elevation data", () => {
    const [a, b, c, d] = square(20) as [LonLat, LonLat, LonLat, LonLat];
    const row = (parcel: string) => ({ parcel, floor_ft: 880 });
    const { buildings, notes } = found([
      feature(row("parts"), [square(0)], [square(5)]),
      feature(row("hole"), [square(10, 3), square(11, 1)]),
      feature(row("bow"), [[a, c, b, [d[0], d[1] - 1e-5]]]),
      house(row("edge"), 99),
      house(row("off"), 400),
    ]);
    expect(buildings.map(({ id, parts }) => [id, parts.length])).toEqual([
      ["parts", 2],
      ["hole", 1],
      ["bow", 1],
      ["edge", 1],
      ["off", 1],
    ]);
    expect(notes).toEqual([
      { kind: "parts", id: "parts", parts: 2 },
      { kind: "holes", id: "hole", holes: 1 },
      { kind: "self-crossing", id: "bow" },
      { kind: "off-data", id: "edge", isWholly: false },
      { kind: "off-data", id: "off", isWholly: true },
    ]);
  });

  it("get ids of their own where the file repeats one or has none", () => {
    const row = { floor_ft: 880 };
    const { buildings, notes } = found([
      house({ ...row, parcel: "a" }, 0),
      house({ ...row, parcel: "a" }, 4),
      house({ ...row, parcel: "a (2)" }, 8),
      house(row, 12),
    ]);
    expect(buildings.map(({ id }) => id)).toEqual(["a", "a (3)", "a (2)", "4"]);
    expect(buildings.at(-1)?.name).toBe("Building 4");
    expect(notes).toEqual([{ kind: "repeated-id", id: "a (3)", came: "a" }]);
  });

  it("take First, Never or a number above 0 out of one column, and nothing out of anything else", () => {
    const ranks = [" First ", "never", "2.5", 7, "", null, "high", -1, 0, "1e9"];
    const { buildings, notes } = found(
      ranks.map((rank, i) => house({ floor_ft: 880, parcel: i, rank }, 4 * i)),
    );
    expect(buildings.map(({ priority, weight }) => [priority, weight])).toEqual([
      ...[
        ["first", 1],
        ["never", 1],
        ["", 2.5],
        ["", 7],
      ],
      ...Array(6).fill(["", 1]),
    ]);
    expect(notes).toEqual(
      ["high", "-1", "0", "1e9"].map((came, i) => ({
        ...{ kind: "bad-priority", id: String(i + 6), came },
      })),
    );
  });

  it("tell features that are no outlines, and go on past one whose coordinates are none", () => {
    const bad = feature({ parcel: "bad" }, [[["x", 1] as unknown as LonLat]]);
    const point = {
      type: "Feature",
      properties: {},
      geometry: { type: "Point", coordinates: [0, 0] },
    };
    const { buildings, notes } = found([bad, point, house({ parcel: "a", floor_ft: 880 }, 0)]);
    expect(buildings.map(({ id }) => id)).toEqual(["a"]);
    expect(notes).toEqual([
      { kind: "left-out", feature: 0, why: "bad-coordinates" },
      { kind: "no-outline", count: 1 },
    ]);
  });

  it("are read 20,000 at once, all of them", () => {
    const many = Array.from({ length: 20_000 }, (_, i) =>
      feature({ parcel: i, floor_ft: 880 }, [square((i % 200) / 2, 0.4, Math.floor(i / 200) / 2)]),
    );
    const { buildings, leftOut } = found(many);
    expect([buildings.length, leftOut.length]).toEqual([20_000, 0]);
  });
});

describe("outlines", () => {
  it("are the same wherever they start and whichever way they run", () => {
    const [a, b, c, d] = square(0) as [LonLat, LonLat, LonLat, LonLat];
    expect(outlineKey([[c, b, a, d]])).toBe(outlineKey([[a, b, c, d]]));
    expect(outlineKey([square(0), square(5)])).toBe(outlineKey([square(5), square(0)]));
    expect(outlineKey([square(0)])).not.toBe(outlineKey([square(0, 2.1)]));
  });

  it("cross themselves where two sides meet that are no neighbors", () => {
    const [a, b, c, d] = square(0) as [LonLat, LonLat, LonLat, LonLat];
    expect([crossesItself([a, b, c, d]), crossesItself([a, c, b, d])]).toEqual([false, true]);
  });
});

function rounded([lon, lat]: LonLat): LonLat {
  return [Math.round(lon * 1e9) / 1e9, Math.round(lat * 1e9) / 1e9];
}

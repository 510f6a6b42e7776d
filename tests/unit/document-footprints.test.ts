import { describe, expect, it } from "vitest";
import { failureOf } from "../../shared/failure.ts";
import type { Structure } from "../../shared/plan.ts";
import { buildingsOf, columnsOf, placeFootprints } from "../../shared/plan-footprints.ts";
import { readShapesOf } from "../../src/document/files.ts";
import { readGeoJson } from "../helpers/read-shapes.ts";
import { said } from "../helpers/said.ts";

/** The Polygon with a hole and the MultiPolygon of RFC 7946, appendix A.3 and A.6. */
const RFC_WITH_HOLE = {
  type: "Polygon",
  coordinates: [
    [
      [100.0, 0.0],
      [101.0, 0.0],
      [101.0, 1.0],
      [100.0, 1.0],
      [100.0, 0.0],
    ],
    [
      [100.8, 0.8],
      [100.8, 0.2],
      [100.2, 0.2],
      [100.2, 0.8],
      [100.8, 0.8],
    ],
  ],
};
const RFC_MULTI = {
  type: "MultiPolygon",
  coordinates: [
    [
      [
        [102.0, 2.0],
        [103.0, 2.0],
        [103.0, 3.0],
        [102.0, 3.0],
        [102.0, 2.0],
      ],
    ],
    [
      [
        [100.0, 0.0],
        [101.0, 0.0],
        [101.0, 1.0],
        [100.0, 1.0],
        [100.0, 0.0],
      ],
      [
        [100.2, 0.2],
        [100.2, 0.8],
        [100.8, 0.8],
        [100.8, 0.2],
        [100.2, 0.2],
      ],
    ],
  ],
};

interface TakenOptions {
  readonly present?: readonly Structure[];
  readonly within?: readonly [number, number, number, number] | null;
}

const NO_COLUMNS = { name: "name", floor: null, floorUnit: null };

function taken(value: unknown, { present = [], within = null }: TakenOptions = {}) {
  const read = readGeoJson(JSON.stringify(value));
  if (!read.ok) throw new Error(said(read.failure).message);
  const placed = placeFootprints(read.value, null, within);
  if (!placed.ok) throw new Error(said(placed.failure).message);
  const { footprints, notes } = placed.value;
  const structures = () => buildingsOf(footprints, present, NO_COLUMNS);
  return { structures, notes, footprints };
}

function square(name: string | undefined, lon: number, lat: number) {
  const ring = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
    [0, 0],
  ].map(([x, y]) => [lon + (x as number) / 1e4, lat + (y as number) / 1e4]);
  return {
    type: "Feature",
    properties: { name },
    geometry: { type: "Polygon", coordinates: [ring] },
  };
}

describe("footprints", () => {
  it("come from a lone Polygon without its hole, with a note", () => {
    const { structures, notes } = taken(RFC_WITH_HOLE);
    expect(structures()).toEqual([
      {
        id: "structure-1",
        name: "Building 1",
        floorM: null,
        outline: [
          [100, 0],
          [101, 0],
          [101, 1],
          [100, 1],
        ],
      },
    ]);
    expect(notes).toEqual([failureOf("shapes/holes-left-out", { outlines: 1 })]);
  });

  it("come from each part of a MultiPolygon, a Feature and a GeometryCollection", () => {
    expect(taken(RFC_MULTI).structures().length).toBe(2);
    const feature = { type: "Feature", properties: { name: "Mill" }, geometry: RFC_MULTI };
    expect(
      taken(feature)
        .structures()
        .map(({ name }) => name),
    ).toEqual(["Mill", "Mill"]);
    const group = { type: "GeometryCollection", geometries: [RFC_WITH_HOLE, RFC_MULTI] };
    expect(taken(group).structures().length).toBe(3);
  });

  it("step round the identifiers and names the plan has", () => {
    const present = taken(RFC_WITH_HOLE).structures();
    const { structures } = taken(RFC_MULTI, { present });
    expect(structures().map(({ id }) => id)).toEqual(["structure-2", "structure-3"]);
    expect(structures().map(({ name }) => name)).toEqual(["Building 2", "Building 3"]);
  });

  it("without a name step round the names that others of the file have", () => {
    const features = [square(undefined, 12, 51), square("Building 1", 12.01, 51)];
    const { structures } = taken({ type: "FeatureCollection", features });
    expect(structures().map(({ name }) => name)).toEqual(["Building 2", "Building 1"]);
  });

  it("are all those on the elevation data, however many", () => {
    const features = Array.from({ length: 20_000 }, (_, index) =>
      square(`${index}`, 12 + (index % 200) / 1000, 51 + Math.floor(index / 200) / 1000),
    );
    const within = [12, 50.999, 12.1005, 51.2] as const;
    const { footprints, notes, structures } = taken(
      { type: "FeatureCollection", features },
      { within },
    );
    expect(footprints.length).toBe(101 * 100);
    expect(new Set(structures().map(({ id }) => id)).size).toBe(101 * 100);
    expect(notes).toEqual([failureOf("shapes/off-data-left-out", { shapes: 9900 })]);
  });

  it("take name and floor from the columns that are chosen, a floor only once its unit is said", () => {
    const feature = {
      ...square(undefined, 12, 51),
      properties: { ADDRESS: "12 Elm St", FFE: "874.25", OTHER: null },
    };
    const { footprints } = taken(feature);
    expect(columnsOf(footprints)).toEqual({ all: ["ADDRESS", "FFE"], figures: ["FFE"] });
    const columns = { name: "ADDRESS", floor: "FFE", floorUnit: null };
    expect(buildingsOf(footprints, [], columns)).toMatchObject([
      { name: "12 Elm St", floorM: null },
    ]);
    const [building] = buildingsOf(footprints, [], { ...columns, floorUnit: "foot" });
    expect(building!.floorM).toBeCloseTo(874.25 * 0.3048, 9);
  });

  it("in a grid wait for the places of their corners", () => {
    const grid = {
      type: "Polygon",
      coordinates: [
        [
          [500_000, 5e6],
          [500_010, 5e6],
          [500_010, 5_000_010],
          [500_000, 5e6],
        ],
      ],
    };
    const read = readGeoJson(JSON.stringify(grid));
    if (!read.ok) throw new Error(said(read.failure).message);
    expect(read.value.reference).toEqual({ kind: "grid" });
    const places = [
      [12, 51],
      [12.0001, 51],
      [12.0001, 51.0001],
    ] as const;
    const placed = placeFootprints(read.value, places, [11, 50, 13, 52]);
    expect(placed.ok && placed.value.footprints[0]!.corners).toEqual(places);
    const named = {
      ...grid,
      crs: { type: "name", properties: { name: "urn:ogc:def:crs:EPSG::26851" } },
    };
    const other = readGeoJson(JSON.stringify(named));
    expect(other.ok && other.value.reference).toEqual({ kind: "named", name: "EPSG:26851" });
  });

  it("leave out what is no polygon, with a note", () => {
    const point = {
      type: "Feature",
      properties: null,
      geometry: { type: "Point", coordinates: [12, 51] },
    };
    const value = { type: "FeatureCollection", features: [point, square(undefined, 12, 51)] };
    expect(taken(value).notes).toEqual([failureOf("shapes/others-left-out", { shapes: 1 })]);
  });

  it("are read from a file", async () => {
    const file = new File([JSON.stringify(RFC_MULTI)], "mill.geojson");
    const read = await readShapesOf(file);
    expect(read.ok && read.value.outlines.length).toBe(2);
  });
});

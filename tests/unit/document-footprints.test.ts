import { describe, expect, it } from "vitest";
import { importFootprints } from "../../shared/plan-footprints.ts";
import { readFootprintsOf } from "../../src/document/files.ts";

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

function taken(value: unknown, options = {}) {
  const read = importFootprints(JSON.stringify(value), { present: [], within: null, ...options });
  if (!read.ok) throw new Error(read.failure.message);
  return read.value;
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
    expect(structures).toEqual([
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
    expect(notes).toEqual(["1 footprints had holes: only outlines are used."]);
  });

  it("come from each part of a MultiPolygon, a Feature and a GeometryCollection", () => {
    expect(taken(RFC_MULTI).structures.length).toBe(2);
    const feature = { type: "Feature", properties: { name: "Mill" }, geometry: RFC_MULTI };
    expect(taken(feature).structures.map(({ name }) => name)).toEqual(["Mill", "Mill"]);
    const group = { type: "GeometryCollection", geometries: [RFC_WITH_HOLE, RFC_MULTI] };
    expect(taken(group).structures.length).toBe(3);
  });

  it("step round the identifiers and names the plan has", () => {
    const present = taken(RFC_WITH_HOLE).structures;
    const { structures } = taken(RFC_MULTI, { present });
    expect(structures.map(({ id }) => id)).toEqual(["structure-2", "structure-3"]);
    expect(structures.map(({ name }) => name)).toEqual(["Building 2", "Building 3"]);
  });

  it("are those on the ground, the nearest to its middle when there are many", () => {
    const features = Array.from({ length: 400 }, (_, index) =>
      square(`${index}`, 12 + (index % 20) / 100, 51 + Math.floor(index / 20) / 100),
    );
    const within = [12.05, 51.05, 12.15, 51.15];
    const { structures, notes } = taken({ type: "FeatureCollection", features }, { within });
    expect(structures.length).toBe(50);
    expect(structures[0]?.name).toBe("210");
    expect(notes).toEqual([
      "300 footprints outside the ground are left out.",
      "Of 100 footprints the 50 nearest to the middle of the ground are taken.",
    ]);
  });

  it("leave out what is no polygon, with a note", () => {
    const point = {
      type: "Feature",
      properties: null,
      geometry: { type: "Point", coordinates: [12, 51] },
    };
    const value = { type: "FeatureCollection", features: [point, square(undefined, 12, 51)] };
    expect(taken(value).notes).toEqual(["1 features that are not polygons are left out."]);
  });

  it("are read from a file", async () => {
    const file = new File([JSON.stringify(RFC_MULTI)], "mill.geojson");
    const read = await readFootprintsOf(file, { present: [], within: null });
    expect(read.ok && read.value.structures.length).toBe(2);
  });
});

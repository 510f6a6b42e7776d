import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { ShapeFile } from "../../shared/imports/found-shapes.ts";
import { cornersInTurn } from "../../shared/imports/place-shapes.ts";
import { makeEngine } from "../../workers/engine.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { shapesIn } from "../helpers/read-shapes.ts";
import { said } from "../helpers/said.ts";

/*
 * FlatGeobuf as GDAL/OGR 3.8 (gdal3.js) writes it, and GeoParquet as Apache Arrow, GeoPandas and PROJ write it
 * (fixtures/footprints/make-footprints.py; GDAL here has no Parquet): every feature, column and place comes back.
 */

const FOLDER = fileURLToPath(new URL("../fixtures/footprints/", import.meta.url));
/** A degree of latitude, meters, about. */
const DEGREE_M = 111_000;

interface Judged {
  readonly features: readonly {
    readonly geometry: {
      readonly type: string;
      readonly coordinates: number[][][] | number[][][][];
    };
  }[];
}
const houses = readFileSync(join(FOLDER, "houses.geojson"), "utf8");
/** Outer corners of each part, in the order of the file, the first not repeated. */
const PARTS = (JSON.parse(houses) as Judged).features.flatMap(({ geometry }, feature) =>
  (geometry.type === "MultiPolygon" ? geometry.coordinates : [geometry.coordinates]).map(
    (rings) => ({ feature, corners: (rings as number[][][])[0]!.slice(0, -1) }),
  ),
);

async function found(bytes: Uint8Array): Promise<ShapeFile> {
  const outcome = await shapesIn(new Uint8Array(bytes));
  if (!outcome.ok) throw new Error(said(outcome.failure).message);
  return outcome.value;
}

const refusal = async (bytes: Uint8Array) => {
  const outcome = await shapesIn(new Uint8Array(bytes));
  return outcome.ok ? null : outcome.failure.code;
};

/** Corners of all shapes in longitude and latitude, by the engine's own chain. */
async function placesOf(file: ShapeFile): Promise<number[][]> {
  const grid = cornersInTurn(file);
  const { reference } = file;
  const isStated = reference.kind === "text" || reference.kind === "code";
  if (!isStated && reference.kind !== "degrees") throw new Error(`Stated ${reference.kind}.`);
  const lonLat = isStated ? (await makeEngine().lonLatOf({ grid, reference })).lonLat : grid;
  return Array.from({ length: lonLat.length / 2 }, (_, i) => [lonLat[2 * i]!, lonLat[2 * i + 1]!]);
}

/** Every corner of the file is where it was written, whatever the order of features and of corners. */
async function expectPlaces(file: ShapeFile): Promise<void> {
  const places = await placesOf(file);
  let next = 0;
  expect(file.outlines).toHaveLength(PARTS.length);
  for (const { corners } of file.outlines) {
    const mine = places.slice(next, next + corners.length);
    next += corners.length;
    const isSame = PARTS.some(
      (part) =>
        part.corners.length === mine.length &&
        part.corners.every(([lon, lat]) =>
          mine.some(
            ([x, y]) =>
              Math.abs(x! - lon!) * DEGREE_M < 0.002 && Math.abs(y! - lat!) * DEGREE_M < 0.002,
          ),
        ),
    );
    expect(isSame).toBe(true);
  }
}

describe("FlatGeobuf of GDAL's", () => {
  let gdal: Gdal;
  beforeAll(async () => {
    gdal = await startGdal();
    const columns = [
      { parcel: 11, name: "Court", floor: 881.5, listed: true },
      { parcel: 12, name: "Pair", floor: null, listed: false },
      { parcel: 13, name: "Håkon's", floor: 880.25, listed: true },
    ];
    const { features } = JSON.parse(houses) as Judged;
    const all = features.map((each, i) => ({ ...each, type: "Feature", properties: columns[i] }));
    const text = JSON.stringify({ type: "FeatureCollection", features: all });
    writeFileSync(join(gdal.folder, "houses.geojson"), text);
  }, 60_000);
  afterAll(() => gdal.remove());

  const written = async (name: string, options: readonly string[]) => {
    await gdal.convert("houses.geojson", ["-f", "FlatGeobuf", ...options], name);
    return readFileSync(join(gdal.folder, `${name}.fgb`));
  };

  it.each([
    ["utm", ["-t_srs", "EPSG:26915"]],
    ["feet", ["-t_srs", "EPSG:26851"]],
    ["degrees", []],
    ["plain", ["-lco", "SPATIAL_INDEX=NO", "-t_srs", "EPSG:3857"]],
  ])("has every building with its columns at its place: %s", async (name, options) => {
    const file = await found(await written(name, options));
    const rows = file.outlines.map(
      ({ columns, holes }): Record<string, unknown> => ({ ...columns, holes }),
    );
    const sorted = rows.sort((a, b) => Number(a.parcel) - Number(b.parcel));
    expect(sorted).toMatchObject([
      { parcel: 11, name: "Court", floor: 881.5, listed: true, holes: 1 },
      { parcel: 12, name: "Pair", listed: false, holes: 0 },
      { parcel: 12, name: "Pair" },
      { parcel: 13, name: "Håkon's", floor: 880.25, listed: true },
    ]);
    expect(sorted[1]!.floor ?? null).toBe(null);
    const [one, two] = file.outlines.filter(({ columns }) => columns.parcel === 12);
    expect(one!.feature).toBe(two!.feature);
    await expectPlaces(file);
  });

  it("cut off, it is refused; without its coordinate system too", async () => {
    const bytes = await written("whole", []);
    for (const share of [0.02, 0.3, 0.6, 0.9, 0.99]) {
      expect(await refusal(bytes.subarray(0, share * bytes.length))).toBe(
        "shapes/flatgeobuf-damaged",
      );
    }
    const bare = await written("bare", ["-a_srs", "None"]);
    expect(await refusal(bare)).toBe("shapes/no-reference");
  });
});

describe("GeoParquet of Arrow's", () => {
  const file = (name: string) => readFileSync(join(FOLDER, `${name}.parquet`));

  it.each([
    ["utm15-zstd", "code"],
    ["minnesota-feet", "code"],
    ["degrees-snappy", "degrees"],
    ["crs84-gzip", "degrees"],
  ])("has every building with its columns at its place: %s", async (name, kind) => {
    const shapes = await found(file(name));
    expect(shapes.reference.kind).toBe(kind);
    expect(
      shapes.outlines.map(({ columns, feature, holes }) => ({ columns, feature, holes })),
    ).toEqual(
      PARTS.map(({ feature }) => ({
        feature,
        holes: feature === 0 ? 1 : 0,
        columns: [
          {
            ...{ parcel: "9007199254740993", name: "Court", floor: 881.5, weight: 3, listed: true },
            built: "1931-05-01T00:00:00.000Z",
          },
          {
            ...{ parcel: 12, name: "Pair", floor: null, weight: 1, listed: false },
            built: "1980-01-01T00:00:00.000Z",
          },
          { parcel: 13, name: "Håkon's", floor: 880.25, weight: null, listed: true, built: null },
        ][feature],
      })),
    );
    await expectPlaces(shapes);
  });

  it("is refused with what to do where it is packed otherwise, of no known place, or no GeoParquet", async () => {
    expect(await refusal(file("brotli"))).toBe("shapes/parquet-packing");
    expect(await refusal(file("unknown-crs"))).toBe("shapes/no-reference");
    expect(await refusal(file("plain"))).toBe("shapes/not-geoparquet");
  });

  it("cut off or with a byte changed, is read or refused, never worse", async () => {
    const bytes = file("utm15-zstd");
    for (const share of [0.02, 0.5, 0.99]) {
      expect(await refusal(bytes.subarray(0, share * bytes.length))).toBe("shapes/parquet-damaged");
    }
    const codes = new Set<string | null>();
    for (let at = 4; at < bytes.length; at += 37) {
      const changed = Uint8Array.from(bytes);
      changed[at]! ^= 0x55;
      codes.add(await refusal(changed));
    }
    expect(codes.has("shapes/parquet-damaged")).toBe(true);
    for (const code of codes) expect(code ?? "shapes/").toMatch(/^(shapes|plan)\//);
  });
});

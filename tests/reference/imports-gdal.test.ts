import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { failureOf } from "../../shared/failure.ts";
import type { ShapeFile } from "../../shared/imports/found-shapes.ts";
import { cornersInTurn } from "../../shared/imports/place-shapes.ts";
import { makeEngine } from "../../workers/engine.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { shapesIn } from "../helpers/read-shapes.ts";
import { said } from "../helpers/said.ts";

/*
 * Shapes as GDAL/OGR 3.8 (gdal3.js) writes them: each file's outlines and lines must be found with their names,
 * and where a file has a grid of its own, at the places that PROJ gives, within 2 mm.
 */

/** Longitude, latitude and a height, about a place in Minnesota. */
const [LON, LAT, HEIGHT] = [-93.1874, 44.0521, 268.5];
/** A degree of latitude, metres, about. */
const DEGREE_M = 111_000;

const at = (east: number, north: number) => [LON + east / 1e4, LAT + north / 1e4, HEIGHT];
/** A square with its lower left corner there, counterclockwise. */
const square = (east: number, north: number, side: number) => [
  at(east, north),
  at(east + side, north),
  at(east + side, north + side),
  at(east, north + side),
  at(east, north),
];
const feature = (type: string, name: string, coordinates: unknown) => ({
  type: "Feature",
  properties: { name, floor: 12.5 },
  geometry: { type, coordinates },
});
const HOUSES = [
  feature("Polygon", "Court", [square(0, 0, 4), square(1, 1, 1).reverse()]),
  feature("MultiPolygon", "Pair", [[square(10, 0, 2)], [square(14, 0, 2)]]),
];
const LINES = [
  feature("LineString", "Bank", [at(0, 10), at(5, 10), at(5, 15)]),
  feature("MultiLineString", "Broken", [
    [at(0, 20), at(5, 20)],
    [at(7, 20), at(9, 20)],
  ]),
];

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
  for (const [name, features] of [
    ["houses", HOUSES],
    ["lines", LINES],
  ] as const) {
    const text = JSON.stringify({ type: "FeatureCollection", features });
    writeFileSync(join(gdal.folder, `${name}.geojson`), text);
  }
}, 60_000);
afterAll(() => gdal.remove());

let made = 0;

/** A file as GDAL writes it. */
async function written(source: string, format: string, options: readonly string[], ending: string) {
  const name = `made${++made}`;
  await gdal.convert(`${source}.geojson`, ["-f", format, ...options], name);
  return readFileSync(join(gdal.folder, `${name}.${ending}`));
}

/** The files of a shapefile as GDAL writes it, in a zip archive. */
async function zipped(source: string, crs: string, without: readonly string[] = []) {
  const name = `made${++made}`;
  const geometry = source === "houses" ? [] : ["-nlt", "MULTILINESTRINGZ"];
  await gdal.convert(
    `${source}.geojson`,
    ["-f", "ESRI Shapefile", "-t_srs", crs, ...geometry],
    name,
  );
  const files = readdirSync(gdal.folder).filter(
    (file) => file.startsWith(`${name}.`) && !without.some((ending) => file.endsWith(ending)),
  );
  return zipSync(
    Object.fromEntries(
      files.map((file) => [
        `folder/${file}`,
        new Uint8Array(readFileSync(join(gdal.folder, file))),
      ]),
    ),
  );
}

async function found(file: Uint8Array): Promise<ShapeFile> {
  const outcome = await shapesIn(new Uint8Array(file));
  if (!outcome.ok) throw new Error(said(outcome.failure).message);
  return outcome.value;
}

const named = (shapes: ShapeFile["outlines"]) =>
  shapes.map(({ corners, columns }) => [columns.name ?? columns.Name, corners.length]);

describe("a zipped shapefile of GDAL's", () => {
  it.each(["EPSG:26915", "EPSG:26851", "EPSG:3857", "EPSG:4326"])(
    "has every outline at its place in %s, parts apart, without holes, with its columns",
    async (crs) => {
      const file = await found(await zipped("houses", crs));
      expect(named(file.outlines)).toEqual([
        ["Court", 4],
        ["Pair", 4],
        ["Pair", 4],
      ]);
      expect(file.outlines[0]!.columns.floor).toBe(12.5);
      expect(file.notes).toEqual([failureOf("shapes/holes-left-out", { outlines: 1 })]);
      const { reference } = file;
      if (reference.kind !== "text") throw new Error("The shapefile stated no reference.");
      const grid = cornersInTurn(file);
      const { lonLat } = await makeEngine().lonLatOf({ grid, reference });
      const places = Array.from({ length: grid.length / 2 }, (_, i) => [
        grid[2 * i]!,
        grid[2 * i + 1]!,
      ]);
      const judged = crs === "EPSG:4326" ? places : await gdal.transform(places, crs, "OGC:CRS84");
      for (const [i, [lon, lat]] of judged.entries()) {
        expect(Math.abs(lonLat[2 * i]! - lon!) * DEGREE_M).toBeLessThan(0.002);
        expect(Math.abs(lonLat[2 * i + 1]! - lat!) * DEGREE_M).toBeLessThan(0.002);
      }
      const [first] = HOUSES[0]!.geometry.coordinates as number[][][];
      const corner = first!.some(
        ([lon, lat]) => Math.abs(lonLat[0]! - lon!) + Math.abs(lonLat[1]! - lat!) < 2e-8,
      );
      expect(corner).toBe(true);
    },
  );

  it("has every line, parts apart", async () => {
    const file = await found(await zipped("lines", "EPSG:26915"));
    expect(named(file.paths)).toEqual([
      ["Bank", 3],
      ["Broken", 2],
      ["Broken", 2],
    ]);
  });

  it("is refused without its .prj, and taken without its table", async () => {
    const refusal = await shapesIn(await zipped("houses", "EPSG:26915", [".prj"]));
    expect(refusal).toMatchObject({ ok: false, failure: { code: "shapes/no-reference" } });
    const file = await found(await zipped("houses", "EPSG:26915", [".dbf"]));
    expect(file.outlines.map(({ columns }) => columns)).toEqual([{}, {}, {}]);
  });
});

describe("other files of GDAL's", () => {
  it("in KML have every outline and line with its name", async () => {
    expect(named((await found(await written("houses", "KML", [], "kml"))).outlines)).toEqual([
      ["Court", 4],
      ["Pair", 4],
      ["Pair", 4],
    ]);
    const lines = await written("lines", "KML", [], "kml");
    expect(named((await found(lines)).paths)).toHaveLength(3);
    const zip = zipSync({ "doc.kml": new Uint8Array(lines) });
    expect(named((await found(zip)).paths)).toHaveLength(3);
  });

  it("in GPX have every track", async () => {
    const options = ["-nlt", "MULTILINESTRING", "-dsco", "GPX_USE_EXTENSIONS=YES"];
    const { paths } = await found(await written("lines", "GPX", options, "gpx"));
    expect(named(paths).map(([, corners]) => corners)).toEqual([3, 2, 2]);
  });

  it("in GeoJSON of a grid name it", async () => {
    const options = ["-t_srs", "EPSG:26915"];
    const { reference } = await found(await written("houses", "GeoJSON", options, "geojson"));
    expect(reference).toEqual({ kind: "named", name: "EPSG:26915" });
  });
});

describe("a damaged or hostile zip archive", () => {
  const refusal = async (bytes: Uint8Array) => {
    const outcome = await shapesIn(bytes);
    return outcome.ok ? null : outcome.failure.code;
  };
  /** The files of an archive, one of them changed. */
  const changed = (zip: Uint8Array, ending: string, change: (bytes: Uint8Array) => Uint8Array) =>
    zipSync(
      Object.fromEntries(
        Object.entries(unzipSync(zip)).map(([name, bytes]) => [
          name,
          name.endsWith(ending) ? change(bytes) : bytes,
        ]),
      ),
    );

  it("cut off, or with a file in it cut off, is refused", async () => {
    const zip = await zipped("houses", "EPSG:26915");
    for (const share of [0.2, 0.5, 0.9, 0.99]) {
      const cut = zip.slice(0, Math.floor(share * zip.length));
      expect(await refusal(cut)).toBe("shapes/zip-damaged");
    }
    const half = (bytes: Uint8Array) => bytes.slice(0, bytes.length / 2);
    expect(await refusal(changed(zip, ".shp", half))).toBe("shapes/shapefile-damaged");
    expect(await refusal(changed(zip, ".dbf", half))).toBe("shapes/shapefile-damaged");
  });

  it("whose table states 4 billion rows, or whose shape states 4 billion parts, is refused", async () => {
    const zip = await zipped("houses", "EPSG:26915");
    const many = (offset: number) => (bytes: Uint8Array) =>
      Uint8Array.from(bytes, (byte, i) => (i >= offset && i < offset + 4 ? 0x7f : byte));
    expect(await refusal(changed(zip, ".dbf", many(4)))).toBe("shapes/shapefile-damaged");
    expect(await refusal(changed(zip, ".shp", many(144)))).toBe("shapes/shapefile-damaged");
  });

  it("that would unpack to more than 100 MB is refused, also where it states less", async () => {
    const bomb = zipSync({ "a.shp": new Uint8Array(100_000_001), "a.prj": new Uint8Array(1) });
    expect(bomb.length).toBeLessThan(200_000);
    expect(await refusal(bomb)).toBe("shapes/zip-too-large");
    const liar = Uint8Array.from(bomb);
    const view = new DataView(liar.buffer);
    const directory = view.getUint32(liar.length - 22 + 16, true);
    view.setUint32(directory + 24, 1000, true);
    expect(await refusal(liar)).toBe("shapes/shapefile-damaged");
  });

  it("with several shapefiles, or none, is refused with what to do", async () => {
    const one = new Uint8Array(1);
    expect(await refusal(zipSync({ "a.shp": one, "b.shp": one }))).toBe("shapes/several");
    expect(await refusal(zipSync({ "a.txt": one }))).toBe("shapes/none");
  });
});

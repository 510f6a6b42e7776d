import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { FOOT_M, SURVEY_FOOT_M } from "../../shared/constants.ts";
import { HOSTILE, HOSTILE_LINE, hostileExport, written } from "../helpers/exported-line.ts";
import { type Gdal, startGdal, type VectorFile } from "../helpers/gdal.ts";
import { PLANE } from "../helpers/grounds.ts";
import { drystead, ROOT } from "../helpers/terminal.ts";

/*
 * Every file of a line as an independent reader finds it: the drivers of GDAL/OGR 3.8 (gdal3.js). Each must find
 * every stake at its place with its elevation, to the digits written.
 */

const CSV_PLACES = ["X_POSSIBLE_NAMES=longitude", "Y_POSSIBLE_NAMES=latitude"];
const { stations } = HOSTILE_LINE;
/** A degree of latitude, metres, about. */
const DEGREE_M = 111_000;

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
}, 60_000);
afterAll(() => gdal.remove());

async function opened(as: string, text: string): Promise<VectorFile> {
  const name = `line-${Math.random().toString(36).slice(2)}.${as}`;
  writeFileSync(join(gdal.folder, name), text);
  return gdal.vector(name, as === "csv" ? CSV_PLACES : []);
}

const hostile = async (as: "csv" | "geojson" | "gpx" | "kml" | "dxf") =>
  opened(as, await written(as, hostileExport("us")));

/** One stake as a reader found it. */
interface FoundStake {
  readonly at: readonly number[];
  readonly top: number;
  readonly ground: unknown;
}

function layer({ layers }: VectorFile, named: RegExp) {
  return layers.find(({ name }) => named.test(name))!.features;
}

const coordinatesOf = (feature: { geometry: { coordinates: unknown } | null }) =>
  feature.geometry!.coordinates as number[];

describe("every stake with its elevation", () => {
  const expectStakes = (found: readonly FoundStake[], unitM: number, digits: number) => {
    expect(found).toHaveLength(stations.length);
    for (const [i, { at, top, ground }] of found.entries()) {
      const { lon, lat, crestM, groundM } = stations[i]!;
      expect(Math.abs(at[0]! - lon) * DEGREE_M).toBeLessThan(0.02);
      expect(Math.abs(at[1]! - lat) * DEGREE_M).toBeLessThan(0.02);
      expect(Math.abs(top - crestM / unitM)).toBeLessThan(0.5 * 10 ** -digits + 1e-9);
      if (groundM === null) expect(ground).not.toEqual(expect.any(Number));
      else expect(Math.abs(Number(ground) - groundM / FOOT_M)).toBeLessThan(0.005 + 1e-9);
    }
    expect(stations.some(({ groundM }) => groundM === null)).toBe(true);
  };

  it("in CSV: to 0.01 ft, and an empty cell without elevation data", async () => {
    const file = await hostile("csv");
    expect(file.driverShortName).toBe("CSV");
    const rows = file.layers[0]!.features.filter(({ properties }) => properties.row === "Stake");
    expectStakes(
      rows.map((row) => ({
        at: coordinatesOf(row),
        top: Number(row.properties.top_of_levee_ft),
        ground: row.properties.ground_ft === "" ? null : Number(row.properties.ground_ft),
      })),
      FOOT_M,
      2,
    );
  });

  it("in GeoJSON: to 0.01 ft, and null without elevation data", async () => {
    const file = await hostile("geojson");
    expect(file.driverShortName).toBe("GeoJSON");
    const stakes = file.layers[0]!.features.filter(
      ({ properties }) => properties.feature === "stake",
    );
    expectStakes(
      stakes.map((stake) => ({
        at: coordinatesOf(stake),
        top: stake.properties.top_of_levee_ft as number,
        ground: stake.properties.ground_ft,
      })),
      FOOT_M,
      2,
    );
  });

  it("in GPX: waypoints and the track to 0.001 m", async () => {
    const file = await hostile("gpx");
    expect(file.driverShortName).toBe("GPX");
    const of = (features: ReturnType<typeof layer>, ground: (i: number) => unknown) =>
      features.map((each, i) => ({
        at: coordinatesOf(each),
        top: each.properties.ele as number,
        ground: ground(i),
      }));
    const all = layer(file, /^waypoints$/);
    const waypoints = all.filter(({ properties }) => properties.type === "Stake");
    const others = all.filter((each) => !waypoints.includes(each));
    expect(others.map(({ properties }) => properties.name)).toEqual([HOSTILE.pile, "Farm lane"]);
    const figures = (i: number) => waypoints[i]!.properties.drystead_ground_ft;
    expectStakes(of(waypoints, figures), 1, 3);
    expectStakes(of(layer(file, /^track_points$/), figures), 1, 3);
  });

  it("in KML: to 0.001 m, longitude first", async () => {
    const file = await hostile("kml");
    expect(file.driverShortName).toBe("KML");
    const stakes = layer(file, /^Stakes/);
    const ground = ({ properties }: (typeof stakes)[number]) =>
      /Ground ([\d.]+) ft/.exec(String(properties.Description))?.[1] ?? null;
    expectStakes(
      stakes.map((stake) => ({
        at: coordinatesOf(stake),
        top: coordinatesOf(stake)[2]!,
        ground: ground(stake),
      })),
      1,
      3,
    );
    const [pile, lane] = layer(file, /^Work places/);
    expect(pile).toMatchObject({ properties: { Name: HOSTILE.pile }, geometry: { type: "Point" } });
    expect(lane).toMatchObject({ geometry: { type: "LineString" } });
    const [top] = layer(file, /^Top of levee/);
    const path = top!.geometry!.coordinates as number[][];
    expect(path.map(([, , z]) => z)).toEqual(
      stations.map(({ crestM }) => Number(crestM.toFixed(3))),
    );
  });

  it("in DXF: places and elevations in the grid's unit, to 0.001; no point for ground that is not known", async () => {
    const file = await hostile("dxf");
    expect(file.driverShortName).toBe("DXF");
    const on = (named: string) =>
      file.layers[0]!.features.filter(({ properties }) => properties.Layer === named);
    const inFeet = (m: number) => m / SURVEY_FOOT_M;
    const expectAt = (
      [x, y, z]: readonly number[],
      station: (typeof stations)[number],
      zM: number,
    ) => {
      const [xM, yM] = PLANE.toPlane([station.lon, station.lat]);
      expect(x).toBeCloseTo(2_000_000 + inFeet(xM), 2);
      expect(y).toBeCloseTo(500_000 + inFeet(yM), 2);
      expect(Math.abs(z! - inFeet(zM))).toBeLessThan(0.0005 + 1e-9);
    };
    const tops = on("STAKES-TOP-OF-LEVEE");
    expect(tops).toHaveLength(stations.length);
    for (const [i, station] of stations.entries()) {
      expectAt(coordinatesOf(tops[i]!), station, station.crestM);
    }
    const known = stations.filter(({ groundM }) => groundM !== null);
    const grounds = on("STAKES-GROUND");
    expect(grounds).toHaveLength(known.length);
    for (const [i, station] of known.entries()) {
      expectAt(coordinatesOf(grounds[i]!), station, station.groundM!);
    }
    const [line] = on("TOP-OF-LEVEE");
    const path = line!.geometry!.coordinates as number[][];
    expect(path).toHaveLength(stations.length);
    path.forEach((at, i) => {
      expectAt(at, stations[i]!, stations[i]!.crestM);
    });
    expect(on("OVER-HEIGHT-LIMIT-2D").length).toBeGreaterThan(0);
    expect(on("NO-ELEVATION-DATA-2D").length).toBeGreaterThan(0);
  });
});

describe("names that a format could trip over", () => {
  it.each([
    ["csv", HOSTILE.title, `'${HOSTILE.line}`],
    ["geojson", HOSTILE.title, HOSTILE.line],
  ] as const)("come out of %s as they are, a formula as text", async (as, title, line) => {
    const [first] = (await hostile(as)).layers[0]!.features;
    expect(first!.properties).toMatchObject({ site: title, line });
  });

  it("come out of GPX as they are", async () => {
    const [track] = layer(await hostile("gpx"), /^tracks$/);
    expect(track!.properties.name).toBe(`${HOSTILE.title}, Line A: ${HOSTILE.line}`);
  });

  it("come out of KML as they are; in a description, which is HTML, as signs and not as markup", async () => {
    const file = await hostile("kml");
    expect(layer(file, /^Buildings/)[0]!.properties.Name).toBe(HOSTILE.building);
    const text = await written("kml", hostileExport("us"));
    const [, documentNotes] = /<description>(.*)<\/description>/.exec(text)!;
    expect(documentNotes).toContain("&amp;lt;script&amp;gt;");
    expect(text).not.toContain("<script>");
  });

  it("come out of DXF on one line each", async () => {
    const { layers } = await hostile("dxf");
    const texts = layers[0]!.features.map(({ properties }) => properties);
    expect(texts.find(({ Layer }) => Layer === "BUILDING-NAMES-2D")!.Text).toBe(HOSTILE.building);
    const notes = texts.filter(({ Layer }) => Layer === "NOTES").map(({ Text }) => Text);
    expect(notes.join(" ")).toContain(`${HOSTILE.title}. Line A: ${HOSTILE.line}.`);
  });
});

describe("the drawing of the demo line on the grid of its raster", () => {
  it("has the stakes where PROJ puts them, EPSG:26915, in meters", async () => {
    const plan = `${ROOT}sample-terrain/demo.geojson`;
    const raster = `${ROOT}sample-terrain/demo.tif`;
    const end = async (as: string) =>
      drystead(["export", plan, "--terrain", raster, "--as", as, "--out", "-"]);
    const [drawing, stakes] = [await end("dxf"), await end("geojson")];
    expect([drawing.code, stakes.code]).toEqual([0, 0]);
    const found = (await opened("dxf", drawing.out)).layers[0]!.features.filter(
      ({ properties }) => properties.Layer === "STAKES-TOP-OF-LEVEE",
    );
    const { features } = JSON.parse(stakes.out);
    const places = features
      .filter(
        ({ properties }: { properties: { feature: string } }) => properties.feature === "stake",
      )
      .map(({ geometry }: { geometry: { coordinates: number[] } }) => geometry.coordinates);
    const onGrid = await gdal.transform(places, "EPSG:4326", "EPSG:26915");
    expect(found).toHaveLength(places.length);
    onGrid.forEach(([x, y], i) => {
      const [foundX, foundY] = coordinatesOf(found[i]!);
      expect(Math.hypot(foundX! - x!, foundY! - y!)).toBeLessThan(0.002);
    });
    expect(drawing.out).toMatch(/\$INSUNITS\s+70\s+6\s/);
  });
});

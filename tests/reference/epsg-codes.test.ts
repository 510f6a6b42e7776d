import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { Refusal } from "../../shared/failure.ts";
import { referenceFromKeys } from "../../workers/raster/geotiff/reference-keys.ts";
import type { HorizontalReference } from "../../workers/raster/reference.ts";
import { placesIn } from "../helpers/epsg-areas.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";
import { howMany } from "../helpers/how-many.ts";

/*
 * Every projected and geographic code of the EPSG dataset (v10.098, as PROJ 9.3 in gdal3.js has it) is
 * either refused or accepted as listed, and lies where PROJ puts it (usually looked at for one code in twelve, the
 * first of each geographic reference among them), at three places of its area of use: the projection and the
 * shift given within 2 mm, and the whole within the error that the note states, of the transformation that
 * PROJ chooses there. Areas and refused codes: tests/fixtures/epsg, with the script that made them.
 */

const EXACT_M = 0.002;

interface Code {
  readonly code: number;
  readonly isGeographic: boolean;
  /** Geographic reference under it, in degrees from Greenwich. */
  readonly base: number;
  readonly places: number[][];
}

const read = (name: string) =>
  readFileSync(new URL(`../fixtures/epsg/${name}`, import.meta.url), "utf8")
    .trim()
    .split("\n");

const CODES: readonly Code[] = read("areas.txt").flatMap((line) => {
  const [head, codes] = line.split(": ");
  const [base, west, south, east, north] = head!.split(" ").map(Number);
  const area = { west: west!, south: south!, east: east!, north: north! };
  const places = Object.values(area).some(Number.isNaN) ? [] : placesIn(area, 3);
  return codes!.split(" ").map((code) => {
    const isGeographic = code.startsWith("g");
    return { code: Number(code.replace("g", "")), isGeographic, base: base!, places };
  });
});
const REFUSED = new Map(read("refused.txt").map((line) => [Number.parseInt(line, 10), line]));

/** Geographic references are those that a GeoTIFF of model type 2 names. */
function open({ code, isGeographic }: Code): HorizontalReference | null {
  const keys = isGeographic
    ? { GTModelTypeGeoKey: 2, GeographicTypeGeoKey: code }
    : { GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: code };
  try {
    return referenceFromKeys("dem.tif", keys);
  } catch (thrown) {
    if (thrown instanceof Refusal) return null;
    throw thrown;
  }
}

function metresBetween(p: readonly number[], q: readonly number[]): number {
  const turn = ((p[0]! - q[0]! + 540) % 360) - 180;
  return Math.hypot(turn * Math.cos((p[1]! * Math.PI) / 180), p[1]! - q[1]!) * 111_320;
}

/** What the note says may be off, metres. */
function statedM({ note }: HorizontalReference): number {
  return note !== null && "errorM" in note ? note.errorM : 0;
}

const opened = CODES.map((code) => ({ ...code, reference: open(code) }));
const accepted = opened.flatMap(({ reference, ...code }) =>
  reference === null ? [] : [{ ...code, reference }],
);

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
}, 60_000);
afterAll(() => gdal.remove());

test("the codes refused are those listed, each with its reason", () => {
  const refused = opened.filter(({ reference }) => reference === null).map(({ code }) => code);
  expect(refused.sort((a, b) => a - b)).toEqual([...REFUSED.keys()]);
  expect(accepted.length).toBeGreaterThan(5000);
});

describe("accepted codes lie where PROJ puts them", () => {
  test("projection and shift within 2 mm, the whole within the error stated", async () => {
    const wrong: string[] = [];
    let judgedPlaces = 0;
    const bases = new Map<number, typeof accepted>();
    for (const one of accepted) bases.set(one.base, [...(bases.get(one.base) ?? []), one]);
    const step = howMany(12, 1);
    let looked = 0;
    for (const [base, members] of bases) {
      const group = members.filter((_, k) => k % step === 0);
      looked += group.length;
      const all = group.flatMap(({ places }) => places);
      const onWgs84 = base === 4326 ? all : await gdal.transform(all, `EPSG:${base}`, "EPSG:4326");
      let first = 0;
      for (const { code, places, reference } of group) {
        const judged = onWgs84.slice(first, first + places.length);
        first += places.length;
        const stored =
          code === base ? places : await gdal.transform(places, `EPSG:${base}`, `EPSG:${code}`);
        const shifted = await shiftedBy(reference, places);
        for (const [i, place] of places.entries()) {
          const [x, y] = stored[i] as [number, number];
          const ours = reference.toLonLat(x, y);
          const back = reference.fromLonLat(...ours);
          const unitM = reference.isDegrees ? 111_320 : 1;
          const returned = Math.hypot(back[0] - x, back[1] - y) * unitM;
          const exact = metresBetween(ours, shifted[i]!);
          if (!(exact < EXACT_M && returned < 3 * EXACT_M)) {
            wrong.push(`${code}: ${exact} m off by itself, ${returned} there and back`);
          }
          const noShift = metresBetween(place, judged[i]!) < 1e-3 && shifted[i] !== place;
          if (noShift) continue;
          judgedPlaces++;
          const off = metresBetween(ours, judged[i]!);
          if (!(off <= statedM(reference) + EXACT_M)) {
            wrong.push(`${code}: ${off} m off where the note says ${statedM(reference)}`);
          }
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(judgedPlaces).toBeGreaterThan(2.9 * looked);
  }, 600_000);
});

const shiftedOnce = new Map<string, number[][]>();

/** The places shifted to WGS 84 by PROJ with the parameters that the reference takes. */
async function shiftedBy({ definition }: HorizontalReference, places: number[][]) {
  const shift = definition.split(" ").slice(definition.split(" ").indexOf("+no_defs") + 1);
  const seven = shift.filter((part) => !part.startsWith("+")).slice(1);
  if (seven.length === 0) return places;
  const ellipsoid = /\+a=\S+ \+b=\S+/.exec(definition)![0];
  const srs = `+proj=longlat ${ellipsoid} +towgs84=${seven.join(",")} +no_defs`;
  const key = `${srs} ${places.join(" ")}`;
  if (!shiftedOnce.has(key)) {
    shiftedOnce.set(key, await gdal.transform(places, srs, "EPSG:4326"));
  }
  return shiftedOnce.get(key)!;
}

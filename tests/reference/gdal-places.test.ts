import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { planPlane } from "../../shared/plan-plane.ts";
import { referenceFromKeys } from "../../workers/raster/geotiff/reference-keys.ts";
import { referenceFromText } from "../../workers/raster/reference-text.ts";
import { type Gdal, startGdal } from "../helpers/gdal.ts";

/*
 * Where references lie on Earth, against PROJ 9 (gdaltransform in gdal3.js). Exact where the datum is
 * WGS 84 or one of its kind; within what the note says where a datum is shifted without a grid.
 */

const USER_DEFINED = 32_767;
const METRE = 9001;
const FOOT = 9002;
const SURVEY_FOOT = 9003;

let gdal: Gdal;
beforeAll(async () => {
  gdal = await startGdal();
}, 60_000);
afterAll(() => gdal.remove());

/** Metres between where we and PROJ put a place that PROJ gave coordinates. */
async function missedM(
  reference: ReturnType<typeof referenceFromKeys>,
  srs: string,
  lonLat: readonly [number, number],
): Promise<number> {
  const [place] = await gdal.transform([[...lonLat]], "EPSG:4326", srs);
  const [x, y] = place as [number, number];
  const back = reference.fromLonLat(...reference.toLonLat(x, y));
  const perUnitM = reference.isDegrees ? 111_000 : 1;
  expect(Math.hypot(back[0] - x, back[1] - y) * perUnitM).toBeLessThan(0.006);
  return Math.hypot(...planPlane(lonLat).toPlane(reference.toLonLat(x, y)));
}

const byCode = (code: number, unit?: number) =>
  referenceFromKeys("dem.tif", {
    GTModelTypeGeoKey: 1,
    ProjectedCSTypeGeoKey: code,
    ...(unit && { ProjLinearUnitsGeoKey: unit }),
  });

describe("codes on WGS 84 or its like are exact", () => {
  test.each<[number, number, number, number?]>([
    [32_615, -93.3, 44.9],
    [26_915, -93.3, 44.9, METRE],
    [6344, -93.3, 44.9],
    [3857, -93.3, 44.9],
    [5070, -95, 40],
    [2249, -71.2, 42.3],
    [2249, -71.2, 42.3, SURVEY_FOOT],
    [3089, -85.1, 37.9, SURVEY_FOOT],
    [2278, -98.5, 29.4, SURVEY_FOOT],
    [2994, -120.5, 44, FOOT],
    [3005, -123, 49.5],
    [2193, 174.7, -41.2],
    [25_832, 9.3, 51.2],
    [2154, 3, 47],
    [3006, 15, 60],
    [3035, 10, 51],
    [28_355, 147.1, -37.9],
    [31_985, -34.9, -8],
  ])("EPSG:%i at %d, %d", async (code, longitude, latitude, unit) => {
    const reference = byCode(code, unit);
    const missed = await missedM(reference, `EPSG:${code}`, [longitude, latitude]);
    expect(missed).toBeLessThan(code === 2994 ? 2 : 0.002);
    expect(reference.label).toBe(`EPSG:${code}`);
  });
});

describe("datums far from WGS 84 are shifted, and a note says how well", () => {
  test.each<[number, number, number]>([
    [27_700, -1.5, 52.3],
    [28_992, 5.2, 52.1],
    [31_370, 4.5, 50.7],
    [31_467, 9.2, 48.9],
    [31_256, 15.9, 48.1],
    [2056, 8.2, 46.9],
    [21_781, 8.2, 46.9],
    [29_903, -7, 53.2],
    [23_032, 9.2, 45],
    [26_715, -93.2, 44.9],
    [32_041, -97.5, 31.2],
    [27_200, 174.7, -41.2],
    [28_404, 22, 55],
    [5514, 15, 50],
    [2326, 114.15, 22.3],
    [3022, 18, 60],
  ])("EPSG:%i at %d, %d", async (code, longitude, latitude) => {
    const reference = byCode(code);
    expect(await missedM(reference, `EPSG:${code}`, [longitude, latitude])).toBeLessThan(10);
    expect(reference.note?.kind).toBe("by-average");
  });
});

test("a code in metres with a unit key in feet is in feet", async () => {
  const srs =
    "+proj=lcc +lat_0=41 +lon_0=-71.5 +lat_1=42.6833333333333 +lat_2=41.7166666666667 +x_0=200000 +y_0=750000 +ellps=GRS80 +units=us-ft +no_defs";
  expect(await missedM(byCode(26_986, SURVEY_FOOT), srs, [-71.2, 42.3])).toBeLessThan(0.002);
});

test("a projected code counts, not the geographic one beside it", async () => {
  const reference = referenceFromKeys("dem.tif", {
    GTModelTypeGeoKey: 1,
    GeographicTypeGeoKey: 4269,
    ProjectedCSTypeGeoKey: 26_915,
  });
  expect(await missedM(reference, "EPSG:26915", [-93.3, 44.9])).toBeLessThan(0.002);
});

test("degrees are longitude before latitude", async () => {
  const reference = referenceFromKeys("dem.tif", {
    GTModelTypeGeoKey: 2,
    GeographicTypeGeoKey: 4326,
    GeogAngularUnitsGeoKey: 9102,
  });
  expect(reference.toLonLat(-93.3, 44.9)).toEqual([-93.3, 44.9]);
  expect(reference.note).toBeNull();
});

test("a user-defined projection is built from its parts", async () => {
  const reference = referenceFromKeys("dem.tif", {
    GTModelTypeGeoKey: 1,
    GTCitationGeoKey: "county grid",
    GeographicTypeGeoKey: 4269,
    ProjectedCSTypeGeoKey: USER_DEFINED,
    ProjectionGeoKey: USER_DEFINED,
    ProjCoordTransGeoKey: 8,
    ProjLinearUnitsGeoKey: SURVEY_FOOT,
    ProjStdParallel1GeoKey: 44.5,
    ProjStdParallel2GeoKey: 45.1,
    ProjFalseOriginLongGeoKey: -93.1,
    ProjFalseOriginLatGeoKey: 44.2,
    ProjFalseOriginEastingGeoKey: 500_000,
    ProjFalseOriginNorthingGeoKey: 100_000,
  });
  const srs =
    "+proj=lcc +lat_1=44.5 +lat_2=45.1 +lat_0=44.2 +lon_0=-93.1 +x_0=152400.3048006096 +y_0=30480.06096012192 +ellps=GRS80 +units=us-ft +no_defs";
  expect(await missedM(reference, srs, [-93.3, 44.9])).toBeLessThan(0.002);
  expect(reference.label).toBe("user-defined: county grid");
});

describe("a user-defined reference", () => {
  const parts = {
    GTModelTypeGeoKey: 1,
    GTCitationGeoKey: "county grid",
    ProjectedCSTypeGeoKey: USER_DEFINED,
    ProjectionGeoKey: USER_DEFINED,
    ProjLinearUnitsGeoKey: METRE,
    ProjNatOriginLongGeoKey: 24,
    ProjNatOriginLatGeoKey: 0,
    ProjScaleAtNatOriginGeoKey: 0.9996,
    ProjFalseEastingGeoKey: 500_000,
    ProjFalseNorthingGeoKey: 0,
  };
  const grs80 = { GeographicTypeGeoKey: USER_DEFINED, GeogEllipsoidGeoKey: 7019 };
  const nad83 = { GeographicTypeGeoKey: 4269 };
  const open = (more: object) => referenceFromKeys("dem.tif", { ...parts, ...more });
  const refusal = (more: object) => {
    try {
      open(more);
      return null;
    } catch (thrown) {
      return (thrown as { code: string }).code;
    }
  };

  test("is refused where only its ellipsoid is known", () => {
    expect(refusal({ ...grs80, ProjCoordTransGeoKey: 1 })).toBe("raster/datum-unknown");
    const named = { ...grs80, GeogCitationGeoKey: "Unknown based on GRS 1980 ellipsoid" };
    expect(refusal({ ...named, ProjCoordTransGeoKey: 1 })).toBe("raster/datum-unknown");
  });

  test("is taken by the name or the code of its datum", async () => {
    const name = { ...grs80, GeogCitationGeoKey: "GCS Name = GCS_GGRS_1987|Datum = D_GGRS_1987" };
    const code = { ...grs80, GeogGeodeticDatumGeoKey: 6121 };
    for (const stated of [name, code]) {
      const reference = open({ ...stated, ProjCoordTransGeoKey: 1 });
      expect(await missedM(reference, "EPSG:2100", [24, 38])).toBeLessThan(0.01);
      expect(reference.note).toMatchObject({ errorM: 1 });
    }
  });

  test("is taken by a shift of its own, whose worth the file does not say", async () => {
    const shift = { ...grs80, GeogTOWGS84GeoKey: [-199.87, 74.79, 246.62] };
    const reference = open({ ...shift, ProjCoordTransGeoKey: 1 });
    expect(await missedM(reference, "EPSG:2100", [24, 38])).toBeLessThan(0.01);
    expect(reference.note).toEqual({ kind: "by-own-shift" });
  });

  test.each([
    ["polar stereographic", { ProjCoordTransGeoKey: 15, ProjNatOriginLatGeoKey: 70 }],
    ["south-orientated", { ProjCoordTransGeoKey: 27 }],
    ["oblique Mercator", { ProjCoordTransGeoKey: 3 }],
    ["Mercator by a parallel", { ProjCoordTransGeoKey: 7, ProjStdParallel1GeoKey: 40 }],
  ])("is refused when %s", (_name, method) => {
    expect(refusal({ ...nad83, ...method })).toBe("raster/crs-unknown");
  });
});

const GEOGRAPHIC =
  'GEOGCS["GCS_OSGB_1936",DATUM["D_OSGB_1936",SPHEROID["Airy_1830",6377563.396,299.3249646]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]]';
const BRITAIN = `PROJCS["British_National_Grid",${GEOGRAPHIC},PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",400000.0],PARAMETER["False_Northing",-100000.0],PARAMETER["Central_Meridian",-2.0],PARAMETER["Scale_Factor",0.9996012717],PARAMETER["Latitude_Of_Origin",49.0],UNIT["Meter",1.0]]`;
const NAD83 =
  'GEOGCS["GCS_North_American_1983",DATUM["D_North_American_1983",SPHEROID["GRS_1980",6378137.0,298.257222101]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]]';
const MASSACHUSETTS = `PROJCS["NAD_1983_StatePlane_Massachusetts_Mainland_FIPS_2001_Feet",${NAD83},PROJECTION["Lambert_Conformal_Conic"],PARAMETER["False_Easting",656166.6666666665],PARAMETER["False_Northing",2460625.0],PARAMETER["Central_Meridian",-71.5],PARAMETER["Standard_Parallel_1",41.71666666666667],PARAMETER["Standard_Parallel_2",42.68333333333333],PARAMETER["Latitude_Of_Origin",41.0],UNIT["Foot_US",0.3048006096012192]]`;

/** Well-known text as GDAL writes it beside a grid (Esri's kind) or in an .aux.xml. */
async function textsOf(code: number): Promise<string[]> {
  const cells = "ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2\n3 4\n";
  writeFileSync(join(gdal.folder, "any.asc"), cells);
  const stated = ["-a_srs", `EPSG:${code}`];
  await gdal.translate("any.asc", ["-of", "AAIGrid", ...stated], `grid${code}`);
  await gdal.translate("any.asc", ["-of", "PNG", "-ot", "Byte", ...stated], `picture${code}`);
  const written = (name: string) => readFileSync(join(gdal.folder, name), "utf8");
  const inXml = /<SRS[^>]*>([^<]*)</.exec(written(`picture${code}.png.aux.xml`))![1]!;
  return [written(`grid${code}.prj`), inXml.replaceAll("&quot;", '"')];
}

describe("well-known text that GDAL writes", () => {
  test.each([
    [32_615, -93.3, 44.9],
    [2249, -71.2, 42.3],
    [3089, -85.1, 37.9],
    [5070, -95, 40],
    [3347, -95, 60],
    [3857, 10, 50],
    [3395, 10, 50],
    [3035, 10, 51],
    [5880, -54, -10],
    [28_992, 5.2, 52.1],
    [2100, 24, 38],
    [2039, 34.8, 31.9],
    [2326, 114.2, 22.3],
    [2056, 8.2, 46.9],
    [4326, 10, 50],
    [4121, 24, 38],
  ])("EPSG:%i lies where PROJ puts it", async (code, longitude, latitude) => {
    for (const text of await textsOf(code)) {
      const { horizontal } = referenceFromText("dem.prj", text);
      expect(await missedM(horizontal, `EPSG:${code}`, [longitude, latitude])).toBeLessThan(0.1);
    }
  });

  test.each([
    [27_572, "counted from Paris"],
    [4807, "in grads from Paris"],
    [5514, "Krovak"],
    [3031, "polar"],
    [3995, "polar"],
    [5641, "Mercator by a parallel"],
    [2048, "south-orientated"],
    [3375, "oblique Mercator"],
    [2099, "of a datum without a published shift"],
  ])("EPSG:%i is refused (%s)", async (code) => {
    for (const text of await textsOf(code)) {
      expect(() => referenceFromText("dem.prj", text)).toThrow(/^raster\/(?:crs|datum)-unknown /);
    }
  });
});

describe("well-known text", () => {
  test.each<[string, string, string, readonly [number, number], number]>([
    ["state plane in feet", MASSACHUSETTS, "EPSG:2249", [-71.2, 42.3], 0.002],
    ["British National Grid", BRITAIN, "EPSG:27700", [-1.5, 52.3], 10],
    ["degrees", NAD83, "EPSG:4269", [-71.2, 42.3], 0.002],
    [
      "compound",
      `COMPD_CS["both",${MASSACHUSETTS},VERT_CS["NAVD88",VERT_DATUM["NAVD88",2005],UNIT["metre",1]]]`,
      "EPSG:2249",
      [-71.2, 42.3],
      0.002,
    ],
  ])("%s", async (_name, text, srs, lonLat, toleranceM) => {
    const { horizontal } = referenceFromText("dem.prj", text);
    expect(await missedM(horizontal, srs, lonLat)).toBeLessThan(toleranceM);
  });

  test.each([
    ['VERTCS["NAVD88 ft",VDATUM["NAVD88"],UNIT["Foot_US",0.3048006096012192]]', "us-survey-foot"],
    ['VERTCS["NAVD88 ft",VDATUM["NAVD88"],UNIT["Foot",0.3048]]', "foot"],
    ['VERT_CS["NAVD88 height",VERT_DATUM["NAVD88",2005],UNIT["metre",1]]', "metre"],
    ["", null],
  ])("heights of %s", (vertical, unit) => {
    expect(
      referenceFromText("dem.prj", `${BRITAIN}${vertical && ","}${vertical}`).vertical.unit,
    ).toBe(unit);
  });
});

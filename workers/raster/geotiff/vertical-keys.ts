import type { GeoKeys } from "geotiff-geokeys-to-proj4";
import { refusal } from "../../../shared/failure.ts";
import { loadPart } from "../../../shared/load-part.ts";
import type { VerticalUnit } from "../../../shared/plan.ts";
import type { VerticalReference } from "../open-raster.ts";
import { unitByFactor, unitByName } from "../vertical.ts";
import type { KeyValues } from "./keys.ts";

const allReferences = () =>
  loadPart("the list of height references", () => import("geotiff-geokeys-to-proj4"));

const USER_DEFINED = 32767;
const WGS84_WITH_HEIGHT = 4979;

/** EPSG units of length that heights come in. Source: EPSG Geodetic Parameter Dataset. */
const UNIT_CODES: Readonly<Record<number, VerticalUnit>> = {
  9001: "metre",
  9002: "foot",
  9003: "us-survey-foot",
};

/**
 * Names of vertical references by code. Source: EPSG Geodetic Parameter Dataset, and OGC 19-008r4 for
 * 5030, 5102 and 5103, which early GeoTIFFs use and which fix no unit.
 */
const DATUM_NAMES: Readonly<Record<number, string>> = {
  3855: "EGM2008",
  5773: "EGM96",
  5798: "EGM84",
  5714: "mean sea level",
  5703: "NAVD88",
  6360: "NAVD88",
  8228: "NAVD88",
  5103: "NAVD88",
  5702: "NGVD29",
  7968: "NGVD29",
  5102: "NGVD29",
  6647: "CGVD2013",
  5713: "CGVD28",
  6641: "PRVD02",
  5701: "Ordnance Datum Newlyn",
  5731: "Malin Head",
  5709: "Amsterdam (NAP)",
  5710: "Ostend",
  5720: "NGF-IGN69",
  5728: "LN02",
  5783: "DHHN92",
  7837: "DHHN2016",
  5778: "GHA",
  5621: "EVRF2007",
  5730: "EVRF2000",
  5711: "AHD",
  7839: "NZVD2016",
  4979: "WGS 84 ellipsoid",
  5030: "WGS 84 ellipsoid",
};

/**
 * Unit and datum of the heights as GeoKeys and GDAL's unit tag state them; a unit key wins over the unit
 * that a datum's code implies.
 * @throws Refusal `ground/unit-unsupported`
 */
export async function verticalFromKeys(
  fileName: string,
  keys: KeyValues,
  bandUnit: string | null,
): Promise<VerticalReference> {
  const code = codeOf(keys.VerticalCSTypeGeoKey) ?? heightCode(keys.GeographicTypeGeoKey);
  const unitCode = codeOf(keys.VerticalUnitsGeoKey);
  if (unitCode !== null && !UNIT_CODES[unitCode]) {
    throw refusal("ground/unit-unsupported", { name: fileName, unit: unitCode });
  }
  const stated = unitCode === null ? null : UNIT_CODES[unitCode]!;
  const unit = stated ?? (await unitOfCode(code)) ?? unitByName(fileName, bandUnit ?? "");
  const citation =
    typeof keys.VerticalCitationGeoKey === "string" ? keys.VerticalCitationGeoKey : "";
  const named = citation.trim() === "" ? null : citation.trim();
  const byCode = code === null ? null : (DATUM_NAMES[code] ?? `EPSG:${code}`);
  return { unit, datum: named ?? byCode };
}

/** True when the GeoKeys say anything about heights. */
export function statesVertical(keys: KeyValues): boolean {
  const vertical = Object.keys(keys).some((key) => key.startsWith("Vertical"));
  return vertical || heightCode(keys.GeographicTypeGeoKey) !== null;
}

/** The unit that a vertical code implies; null for a code that is not known or fixes none. */
async function unitOfCode(code: number | null): Promise<VerticalUnit | null> {
  if (code === null) return null;
  if (code === WGS84_WITH_HEIGHT) return "metre";
  const { default: geokeysToProj4 } = await allReferences();
  try {
    const { errors, coordinatesConversionParameters } = geokeysToProj4.toProj4({
      VerticalGeoKey: code,
    } as GeoKeys);
    const isKnown = Object.keys(errors).length === 0;
    return isKnown ? unitByFactor(coordinatesConversionParameters.z) : null;
  } catch {
    return null;
  }
}

/** A geographic reference with heights (WGS 84 3D) states them too. */
function heightCode(geographic: unknown): number | null {
  return geographic === WGS84_WITH_HEIGHT ? WGS84_WITH_HEIGHT : null;
}

function codeOf(value: unknown): number | null {
  return typeof value === "number" && value !== USER_DEFINED && value !== 0 ? value : null;
}

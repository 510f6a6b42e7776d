import "../all-projections.ts";
import geokeysToProj4, { type GeoKeys } from "geotiff-geokeys-to-proj4";
import { type Datum, datumOf, withNote } from "../datum.ts";
import { datumOfProjected } from "../datum-table.ts";
import { NATURAL_ORIGIN } from "../epsg-datums.ts";
import { type HorizontalReference, makeReference, refuseReference } from "../reference.ts";
import type { KeyValues } from "./keys.ts";

const USER_DEFINED = 32767;

/**
 * Methods (ProjCoordTransGeoKey) whose parts are computed as PROJ does: transverse Mercator, Mercator by a
 * scale, Lambert conic and azimuthal, Albers, oblique stereographic, Cassini, polyconic. Not: polar, oblique
 * and south-orientated ones, which come out thousands of kilometres off.
 */
const METHODS: readonly unknown[] = [1, 7, 8, 9, 10, 11, 16, 18, 22];
const MERCATOR = 7;
/** Methods of the conversions that have a code of their own (ProjectionGeoKey): UTM zones and the like. */
const CODED_METHODS = /\+proj=(longlat|tmerc|utm|lcc)\b/;

/**
 * The reference that GeoKeys state: an EPSG code, or one built from its parts.
 * Source of the keys: OGC 19-008r4, GeoTIFF 1.1.
 * @throws Refusal `raster/crs-unknown` or `raster/datum-unknown`
 */
export function referenceFromKeys(fileName: string, keys: KeyValues): HorizontalReference {
  const label = labelOf(keys);
  const code = codeOf(keys.ProjectedCSTypeGeoKey);
  const datum = datumOfKeys(fileName, label, keys);
  const converted = convert(fileName, label, horizontalKeys(keys));
  const fatal = Object.keys(converted.errors).filter((error) => error !== "bothGCSAndPCSAreSet");
  if (fatal.length > 0) refuseReference(fileName, label);
  if (keys.GTModelTypeGeoKey === 1 && converted.isGCS) refuseReference(fileName, label);
  if (code === null && !isComputed(keys, converted.proj4)) refuseReference(fileName, label);
  const { definition, metresPerUnit } = withoutUnit(converted.proj4);
  const stated = converted.coordinatesConversionParameters.x;
  const unitStands = converted.isGCS || typeof keys.ProjLinearUnitsGeoKey === "number";
  const unit = unitStands || metresPerUnit === 1 ? stated : metresPerUnit;
  const natural = code !== null && NATURAL_ORIGIN.includes(code) ? " +no_uoff" : "";
  return makeReference(fileName, label, `${definition.trim()}${natural}`, datum, unit);
}

/**
 * The reference of a code of EPSG's, projected or geographic.
 * @throws Refusal `raster/crs-unknown` or `raster/datum-unknown`
 */
export function referenceFromCode(fileName: string, epsg: number): HorizontalReference {
  const isProjected = datumOfProjected(epsg) !== null;
  const keys = isProjected
    ? { GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: epsg }
    : { GTModelTypeGeoKey: 2, GeographicTypeGeoKey: epsg };
  return referenceFromKeys(fileName, keys);
}

/** Whether a reference without a code of its own is built from parts as PROJ does. */
function isComputed(keys: KeyValues, definition: string): boolean {
  const method = codeOf(keys.ProjCoordTransGeoKey);
  if (method === null) return CODED_METHODS.test(definition);
  return METHODS.includes(method) && !(method === MERCATOR && keys.ProjStdParallel1GeoKey);
}

function datumOfKeys(fileName: string, label: string, keys: KeyValues): Datum {
  const code = codeOf(keys.ProjectedCSTypeGeoKey);
  if (code === null) {
    return datumOf(fileName, label, {
      geographic: codesOf([keys.GeographicTypeGeoKey]),
      datums: codesOf([keys.GeogGeodeticDatumGeoKey]),
      names: namesOf(keys),
      shift: shiftOf(keys.GeogTOWGS84GeoKey),
    });
  }
  const datum = datumOfProjected(code);
  return datum ? withNote(datum) : refuseReference(fileName, label);
}

function shiftOf(value: unknown): readonly number[] | null {
  return Array.isArray(value) || ArrayBuffer.isView(value)
    ? Array.from(value as ArrayLike<number>)
    : null;
}

/** Names of the geographic reference, as "NAD83", "GCS Name = GCS_North_American_1983|Datum = ..." or "NAD83 / UTM". */
function namesOf(keys: KeyValues): string[] {
  return [keys.GeogCitationGeoKey, keys.PCSCitationGeoKey, keys.GTCitationGeoKey]
    .filter((text): text is string => typeof text === "string")
    .flatMap((text) => text.split(/[|/]/))
    .map((part) => part.replace(/^\s*(GCS Name|Datum)\s*=/i, ""));
}

/** Which keys to convert: a code says all but the unit, which the file may override. */
function horizontalKeys(keys: KeyValues): KeyValues {
  const code = codeOf(keys.ProjectedCSTypeGeoKey);
  if (code !== null) {
    return { ProjectedCSTypeGeoKey: code, ProjLinearUnitsGeoKey: keys.ProjLinearUnitsGeoKey };
  }
  return Object.fromEntries(Object.entries(keys).filter(([name]) => !name.startsWith("Vertical")));
}

/** Takes unit and shift out of a PROJ string: they are applied apart. */
function withoutUnit(definition: string): { definition: string; metresPerUnit: number } {
  const metresPerUnit = Number(/\+to_meter=(\S+)/.exec(definition)?.[1] ?? 1);
  return { definition: definition.replace(/\+(to_meter|towgs84)=\S+/g, ""), metresPerUnit };
}

function convert(fileName: string, label: string, keys: KeyValues) {
  try {
    return geokeysToProj4.toProj4(keys as unknown as GeoKeys);
  } catch {
    return refuseReference(fileName, label);
  }
}

function codeOf(value: unknown): number | null {
  return typeof value === "number" && value !== USER_DEFINED && value > 0 ? value : null;
}

function codesOf(values: readonly unknown[]): number[] {
  return values.map(codeOf).filter((code) => code !== null);
}

function labelOf(keys: KeyValues): string {
  const projected = keys.ProjectedCSTypeGeoKey;
  const code = codeOf(projected) ?? codeOf(keys.GeographicTypeGeoKey);
  if (code !== null && projected !== USER_DEFINED) return `EPSG:${code}`;
  const citation = [keys.PCSCitationGeoKey, keys.GTCitationGeoKey, keys.GeogCitationGeoKey].find(
    (text) => typeof text === "string" && text.trim() !== "",
  );
  return `user-defined: ${typeof citation === "string" ? citation.trim() : "no name given"}`;
}

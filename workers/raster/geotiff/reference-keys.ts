import geokeysToProj4, { type GeoKeys } from "geotiff-geokeys-to-proj4";
import { datumOf } from "../datum.ts";
import { type HorizontalReference, makeReference, refuseReference } from "../reference.ts";

/** GeoKeys by name, as geotiff.js gives them. */
export type KeyValues = Readonly<Record<string, unknown>>;

const USER_DEFINED = 32767;
const SHAPE_KEYS = [
  "ProjectedCSTypeGeoKey",
  "GeographicTypeGeoKey",
  "ProjectionGeoKey",
  "ProjCoordTransGeoKey",
];

/** True when the GeoKeys say anything about the horizontal reference. */
export function statesReference(keys: KeyValues): boolean {
  return SHAPE_KEYS.some((key) => typeof keys[key] === "number");
}

/**
 * The reference that GeoKeys state: an EPSG code, or one built from its parts.
 * Source of the keys: OGC 19-008r4, GeoTIFF 1.1.
 * @throws Refusal `raster/crs-unknown`
 */
export function referenceFromKeys(fileName: string, keys: KeyValues): HorizontalReference {
  const label = labelOf(keys);
  const converted = convert(fileName, label, horizontalKeys(keys));
  const fatal = Object.keys(converted.errors).filter((error) => error !== "bothGCSAndPCSAreSet");
  if (fatal.length > 0) refuseReference(fileName, label);
  if (keys.GTModelTypeGeoKey === 1 && converted.isGCS) refuseReference(fileName, label);
  const { definition, metresPerUnit } = withoutUnit(converted.proj4);
  const stated = converted.coordinatesConversionParameters.x;
  const unitStands = converted.isGCS || typeof keys.ProjLinearUnitsGeoKey === "number";
  const unit = unitStands || metresPerUnit === 1 ? stated : metresPerUnit;
  const datum = datumOf({
    definition,
    projected: codeOf(keys.ProjectedCSTypeGeoKey),
    geographic: codesOf([keys.GeographicTypeGeoKey, keys.GeogGeodeticDatumGeoKey]),
    citations: citationsOf(keys),
  });
  return makeReference(fileName, label, datum.definition, datum.note, unit);
}

/** Which keys to convert: a code says all but the unit, which the file may override. */
function horizontalKeys(keys: KeyValues): KeyValues {
  const code = codeOf(keys.ProjectedCSTypeGeoKey);
  if (code !== null) {
    return { ProjectedCSTypeGeoKey: code, ProjLinearUnitsGeoKey: keys.ProjLinearUnitsGeoKey };
  }
  return Object.fromEntries(Object.entries(keys).filter(([name]) => !name.startsWith("Vertical")));
}

/** Takes the unit out of a PROJ string, so that it is applied once. */
function withoutUnit(definition: string): { definition: string; metresPerUnit: number } {
  const metresPerUnit = Number(/\+to_meter=(\S+)/.exec(definition)?.[1] ?? 1);
  return { definition: definition.replace(/\+to_meter=\S+/, ""), metresPerUnit };
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

function citationsOf(keys: KeyValues): string {
  return [keys.GTCitationGeoKey, keys.PCSCitationGeoKey, keys.GeogCitationGeoKey]
    .filter((text): text is string => typeof text === "string")
    .join(" | ");
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

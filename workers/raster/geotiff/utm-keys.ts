import { withNote } from "../datum.ts";
import { datumOfProjected } from "../datum-table.ts";
import { type HorizontalReference, makeReference } from "../reference.ts";
import type { KeyValues } from "./keys.ts";

const METRE = 9001;

/** First and last code of the zones, that of zone 1, ellipsoid, false northing. Source: EPSG Geodetic Parameter Dataset. */
const ZONES = [
  { from: 26_901, to: 26_923, ellipsoid: "GRS80", northingM: 0 },
  { from: 32_601, to: 32_660, ellipsoid: "WGS84", northingM: 0 },
  { from: 32_701, to: 32_760, ellipsoid: "WGS84", northingM: 10_000_000 },
] as const;

/**
 * The reference of a file in a UTM zone of NAD83 or WGS 84, as most are, without the database of all references;
 * null for any other. The unit, where it is stated, must be the metre.
 */
export function utmFromKeys(fileName: string, keys: KeyValues): HorizontalReference | null {
  const code = keys.ProjectedCSTypeGeoKey;
  const unit = keys.ProjLinearUnitsGeoKey ?? METRE;
  if (typeof code !== "number" || unit !== METRE || keys.GTModelTypeGeoKey === 2) return null;
  const zones = ZONES.find(({ from, to }) => code >= from && code <= to);
  const datum = datumOfProjected(code);
  if (!zones || !datum) return null;
  const meridian = 6 * (code - zones.from) - 177;
  const definition = `+proj=tmerc +lat_0=0 +lon_0=${meridian} +k_0=0.9996 +x_0=500000 +y_0=${zones.northingM} +ellps=${zones.ellipsoid} +no_defs`;
  return makeReference(fileName, `EPSG:${code}`, definition, withNote(datum), 1);
}

import proj4, { type Converter } from "proj4";
import { Refusal } from "../../shared/failure.ts";

/** The horizontal reference system of a raster. x and y are as stored in the file (metres, feet or degrees). */
export interface HorizontalReference {
  /** As the file states it, e.g. "EPSG:26915". */
  readonly label: string;
  /** The same for two files only when they share the reference. */
  readonly definition: string;
  /** What is not exact about its place on WGS 84; null when nothing is. */
  readonly note: string | null;
  /** True when x and y are longitude and latitude in degrees. */
  readonly isDegrees: boolean;
  toLonLat(x: number, y: number): [number, number];
  fromLonLat(longitude: number, latitude: number): [number, number];
}

const WGS84 = "+proj=longlat +datum=WGS84 +no_defs";

/**
 * Builds the converter once (a hundred times faster than converting from definitions).
 * @param definition a PROJ string or well-known text
 * @param scale reference units (metres or degrees) per unit of the file
 * @throws Refusal `raster/crs-unknown` when the definition is not understood
 */
export function makeReference(
  fileName: string,
  label: string,
  definition: string,
  note: string | null,
  scale = 1,
): HorizontalReference {
  const converter = converterOf(fileName, label, definition);
  return {
    label,
    definition: scale === 1 ? definition : `${definition} in ${scale} m`,
    note,
    isDegrees: scale === 1 && /\+proj=longlat|^GEO/.test(definition),
    toLonLat: (x, y) => converter.inverse([x * scale, y * scale]) as [number, number],
    fromLonLat: (longitude, latitude) => {
      const [x, y] = converter.forward([longitude, latitude]) as [number, number];
      return [x / scale, y / scale];
    },
  };
}

/** @throws Refusal `raster/crs-unknown` always */
export function refuseReference(fileName: string, what: string): never {
  throw new Refusal(
    "raster/crs-unknown",
    `The coordinate reference of "${fileName}" is not known here: ${what}.`,
    "Reproject the raster to a UTM zone or another system with an EPSG code, and open that.",
  );
}

function converterOf(fileName: string, label: string, definition: string): Converter {
  try {
    return proj4(WGS84, definition);
  } catch {
    return refuseReference(fileName, label);
  }
}

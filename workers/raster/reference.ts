import proj4 from "proj4";
import { refusal } from "../../shared/failure.ts";
import type { DatumDoubt } from "../../shared/messages.ts";
import type { Datum } from "./datum.ts";
import { type Projection, projectionOf } from "./projection.ts";

/** The horizontal reference system of a raster. x and y are as stored in the file (metres, feet or degrees). */
export interface HorizontalReference {
  /** As the file states it, e.g. "EPSG:26915". */
  readonly label: string;
  /** The same for two files only when they share the reference. */
  readonly definition: string;
  /** What is not exact about its place on WGS 84; null when nothing is. */
  readonly note: DatumDoubt | null;
  /** True when x and y are longitude and latitude in degrees. */
  readonly isDegrees: boolean;
  /** Metres per unit of x and y; null when they are angles. */
  readonly unitM: number | null;
  toLonLat(x: number, y: number): [number, number];
  fromLonLat(longitude: number, latitude: number): [number, number];
}

const WGS84 = "+proj=longlat +datum=WGS84 +no_defs";

/**
 * Builds the converter once (a hundred times faster than converting from definitions).
 * @param definition a PROJ string or well-known text; its own shift of the datum is left aside
 * @param scale metres or degrees per unit of the file, where the definition states none
 * @throws Refusal `raster/crs-unknown` when the definition is not understood
 */
export function makeReference(
  fileName: string,
  label: string,
  definition: string,
  { shift, note }: Datum,
  scale = 1,
): HorizontalReference {
  const projection = planeOf(fileName, label, definition, scale);
  const toWgs84 = datumConverter(projection, shift);
  return {
    label,
    definition: [definition, scale, ...shift].join(" "),
    note,
    isDegrees: projection.method === "longlat" && scale === 1,
    unitM: projection.unitM,
    toLonLat: (x, y) => toWgs84.there(projection.toGeographic(x, y)),
    fromLonLat: (longitude, latitude) =>
      projection.fromGeographic(...toWgs84.back([longitude, latitude])),
  };
}

/** @throws Refusal `raster/crs-unknown` always */
export function refuseReference(fileName: string, reference: string | null): never {
  throw refusal("raster/crs-unknown", { name: fileName, reference });
}

/** The projection of a definition, or the refusal that says it is not understood. */
function planeOf(fileName: string, label: string, definition: string, scale = 1): Projection {
  try {
    return projectionOf(definition, scale);
  } catch {
    return refuseReference(fileName, label);
  }
}

type LonLat = [number, number];

/**
 * To WGS 84 and back. proj4 takes the reverse of a shift as its parameters with the other sign, which misses by
 * up to 22 cm where it turns far; what the way there then misses is taken off.
 */
function datumConverter({ equatorM, poleM }: Projection, shift: readonly number[]) {
  if (shift.every((value) => value === 0)) {
    return { there: (place: LonLat) => place, back: (place: LonLat) => place };
  }
  const own = `+proj=longlat +a=${equatorM} +b=${poleM} +towgs84=${shift.join(",")} +no_defs`;
  const converter = proj4(own, WGS84);
  const there = (place: LonLat) => finite(place, converter.forward);
  return {
    there,
    back: (place: LonLat): LonLat => {
      const near = finite(place, converter.inverse);
      const [longitude, latitude] = there(near);
      return [near[0] + place[0] - longitude, near[1] + place[1] - latitude];
    },
  };
}

/** proj4 throws at what is not a number; a place that has none stays so. */
function finite(place: LonLat, convert: (place: LonLat) => LonLat): LonLat {
  return place.every(Number.isFinite) ? convert(place) : place;
}

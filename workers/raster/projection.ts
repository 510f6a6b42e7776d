import proj4 from "proj4";

/** The plane of a map and the ellipsoid under it, without any shift between datums. */
export interface Projection {
  /** Name of the method, e.g. "etmerc" (transverse Mercator); "longlat" when x and y are degrees. */
  readonly method: string;
  /** Axes of the ellipsoid, metres. */
  readonly equatorM: number;
  readonly poleM: number;
  /** Metres per unit of x and y; null when they are degrees. */
  readonly unitM: number | null;
  /** Longitude (east of Greenwich) and latitude on the ellipsoid, degrees. */
  toGeographic(x: number, y: number): [number, number];
  fromGeographic(longitude: number, latitude: number): [number, number];
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** The fields of proj4's projection that are used here; it has no types of its own for them. */
interface Projected {
  readonly names: readonly string[];
  readonly a: number;
  readonly b: number;
  readonly axis?: string;
  readonly to_meter?: number;
  readonly from_greenwich?: number;
  forward(point: Point): Point | null;
  inverse(point: Point): Point | null;
}

const DEGREE = Math.PI / 180;

/** Sign of x and y as rasters store them, by the axes of a definition; other orders are not known here. */
const SIGNS: Readonly<Record<string, number>> = {
  en: 1,
  enu: 1,
  ne: 1,
  neu: 1,
  ws: -1,
  wsu: -1,
};

/**
 * Builds a projection. Rasters store easting before northing whatever the axis order of their reference
 * (OGC 19-008r4), so "north, east" does not swap them; westing and southing are stored as such, as GDAL does.
 * @param definition a PROJ string or well-known text
 * @param scale metres (degrees) per unit of the file, where the definition itself states none
 * @throws when proj4 does not know the method or the order of the axes is not known here
 */
export function projectionOf(definition: string, scale = 1): Projection {
  const axis = /\+axis=(\S+)/.exec(definition)?.[1];
  const projected = new proj4.Proj(withoutFaults(definition)) as unknown as Projected;
  const sign = SIGNS[axis ?? projected.axis ?? "enu"];
  if (sign === undefined) throw new Error("axes");
  const method = projected.names.find((name) => /^[a-z]+$/.test(name)) ?? projected.names[0]!;
  const isDegrees = method === "longlat";
  const unit = sign * scale * (isDegrees ? DEGREE : (projected.to_meter ?? 1));
  const meridian = projected.from_greenwich ?? 0;
  return {
    method,
    equatorM: projected.a,
    poleM: projected.b,
    unitM: isDegrees ? null : scale * (projected.to_meter ?? 1),
    toGeographic: (x, y) => {
      const place = projected.inverse({ x: x * unit, y: y * unit });
      return place ? [(place.x + meridian) / DEGREE, place.y / DEGREE] : [Number.NaN, Number.NaN];
    },
    fromGeographic: (longitude, latitude) => {
      const east = longitude * DEGREE - meridian;
      const place = projected.forward({ x: east, y: latitude * DEGREE });
      return place ? [place.x / unit, place.y / unit] : [Number.NaN, Number.NaN];
    },
  };
}

/**
 * Mends what geotiff-geokeys-to-proj4 leaves out: the pole of a polar stereographic projection that is given
 * by its standard parallel, and the standard parallel of a Mercator projection; and what proj4 computes 7 cm
 * off: an oblique Mercator at right angles, which PROJ takes as the Swiss one, too. Axes are left to the caller.
 */
function withoutFaults(definition: string): string {
  if (!definition.startsWith("+")) return definition;
  const text = definition.replace(/\+axis=\S+/, "").trim();
  const partOf = (key: string) => new RegExp(`\\+${key}=(\\S+)`).exec(text)?.[1];
  const parallel = Number(partOf("lat_ts"));
  if (partOf("proj") === "stere" && partOf("lat_0") === undefined && parallel) {
    return `${text} +lat_0=${parallel < 0 ? -90 : 90}`;
  }
  if (partOf("lat_ts") === "undefined") {
    return text.replace("+lat_ts=undefined", `+lat_ts=${partOf("lat_1")}`);
  }
  if (partOf("alpha") === "90" && partOf("gamma") === "90") {
    const [a, b] = [Number(partOf("a")), Number(partOf("b"))];
    return `${text.replace("+proj=omerc", "+proj=somerc")} +lon_0=${partOf("lonc")} +rf=${a / (a - b)}`;
  }
  return text;
}

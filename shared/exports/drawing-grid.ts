import proj4 from "proj4";
import { FOOT_M, SURVEY_FOOT_M } from "../constants.ts";
import { refusal } from "../failure.ts";
import type { OnGrid } from "../messages.ts";
import type { LonLat } from "../plan.ts";

/** A unit that a drawing may be in. */
export type DrawingUnit = "m" | "ft" | "us-ft";

/** The plane a drawing is made on. Elevations of it are in the same unit. */
export interface DrawingGrid {
  /** As people name it: `EPSG:26915`. */
  readonly name: string;
  /** True where the elevation data is in degrees, so that the plane had to be chosen. */
  readonly isChosen: boolean;
  readonly unit: DrawingUnit;
  readonly unitM: number;
  /** East before north, in that unit, in the order of the places given. */
  readonly xy: OnGrid["xy"];
}

const UNITS: readonly (readonly [DrawingUnit, number])[] = [
  ["m", 1],
  ["ft", FOOT_M],
  ["us-ft", SURVEY_FOOT_M],
];
/** Units that differ by less are the same: the two feet differ by 2 in a million. */
const SAME_UNIT = 1e-7;

/**
 * The raster's own grid; where that is in degrees, the UTM zone on WGS 84 of the first place.
 * @throws Refusal `export/grid-unit` for a grid in a unit that drawings do not have
 */
export function drawingGrid(places: readonly LonLat[], onGrid: OnGrid): DrawingGrid {
  const { crs, unitM, xy } = onGrid;
  if (unitM === null) return utmGrid(places);
  const known = UNITS.find(([, m]) => Math.abs(unitM / m - 1) < SAME_UNIT);
  if (!known) throw refusal("export/grid-unit", { crs, unitM });
  return { name: crs, isChosen: false, unit: known[0], unitM, xy };
}

/** Source: the UTM grid as EPSG 32601 to 32660 and 32701 to 32760 define it. */
function utmGrid(places: readonly LonLat[]): DrawingGrid {
  const [lon, lat] = places[0]!;
  const zone = Math.min(60, Math.floor((lon + 180) / 6) + 1);
  const isSouth = lat < 0;
  const converter = proj4(
    "+proj=longlat +ellps=WGS84 +no_defs",
    `+proj=tmerc +lat_0=0 +lon_0=${6 * zone - 183} +k=0.9996 +x_0=500000 +y_0=${isSouth ? 10_000_000 : 0} +ellps=WGS84 +units=m +no_defs`,
  );
  return {
    name: `WGS 84 / UTM zone ${zone}${isSouth ? "S" : "N"} (EPSG:${(isSouth ? 32_700 : 32_600) + zone})`,
    isChosen: true,
    unit: "m",
    unitM: 1,
    xy: places.map((at) => converter.forward([at[0], at[1]]) as [number, number]),
  };
}

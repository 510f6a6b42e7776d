import { isCounted, isWhole } from "../../shared/completeness.ts";
import { formatStation, lengthIn, lengthUnit, volumeIn } from "../../shared/units.ts";
import { DISCLAIMER } from "../../shared/words/cautions.ts";
import { mustFixOf, shortCautions } from "../../shared/words/line-state.ts";
import type { Exported, Value } from "./exported.ts";

const DECIMALS = 9;

/** Properties of a line or a stake; the unit in each name. Null where there is no elevation data. */
type Properties = Readonly<Record<string, Value | object>>;

/**
 * One line as a GeoJSON FeatureCollection (RFC 7946, WGS 84): a Polygon for a ring, a LineString for a line tied
 * in, with its totals as properties.
 */
export function lineGeoJson(exported: Exported): string {
  const { alternative } = exported;
  const corners = alternative.corners.map(([lon, lat]) => [round(lon), round(lat)]);
  const geometry =
    alternative.kind === "ring"
      ? { type: "Polygon", coordinates: [closedLeft(corners)] }
      : { type: "LineString", coordinates: corners };
  const properties = { ...totalsProperties(exported), ...lineStateProperties(exported) };
  return collection([{ type: "Feature", geometry, properties }]);
}

interface At {
  readonly at: { readonly lon: number; readonly lat: number };
  readonly properties: Properties;
}

/** Points with their properties as a GeoJSON FeatureCollection. */
export function pointCollection(points: readonly At[]): string {
  return collection(
    points.map(({ at: { lon, lat }, properties }) => ({
      type: "Feature",
      geometry: { type: "Point", coordinates: [round(lon), round(lat)] },
      properties,
    })),
  );
}

/**
 * What must be read beside any figure of a line: whether it is counted to its end, what must be fixed on it, its
 * vertical datum and the cautions. `finding` is the kind and figures of what must be fixed, SI.
 */
export function lineStateProperties({ line, checks, verticalDatum, system }: Exported): Properties {
  const { totals } = line;
  const unit = lengthUnit(system);
  const mustFix = mustFixOf(checks, system);
  return {
    line: line.name,
    vertical_datum: verticalDatum,
    complete: isWhole(line),
    [`line_without_elevation_data_${unit}`]: decimals(lengthIn(totals.lengthNoDataM, system), 1),
    [`line_over_height_limit_${unit}`]: decimals(lengthIn(totals.lengthOverLimitM, system), 1),
    must_fix_count: mustFix.length,
    must_fix: mustFix,
    cautions: [...shortCautions(checks, system), DISCLAIMER],
  };
}

function totalsProperties({ alternative, line, system }: Exported): Properties {
  const { totals } = line;
  const length = lengthUnit(system);
  const volume = system === "us" ? "cu_yd" : "m3";
  const tops = line.stations.map(({ crestM }) => lengthIn(crestM, system));
  return {
    kind: alternative.kind,
    [`length_${length}`]: decimals(lengthIn(totals.lengthM, system), 1),
    [`lowest_top_of_levee_${length}`]: decimals(Math.min(...tops), 2),
    [`highest_top_of_levee_${length}`]: decimals(Math.max(...tops), 2),
    [`greatest_height_${length}`]: decimals(lengthIn(totals.greatestHeightM, system), 2),
    greatest_height_at: formatStation(totals.greatestHeightAtM, system),
    [`levee_${volume}`]: decimals(volumeIn(totals.volumeM3, system), 1),
    bags: isCounted(line) ? totals.bags : null,
    bags_on_poly_sheeting: isCounted(line) ? totals.sheetBags : null,
    [`sand_${volume}`]: decimals(volumeIn(totals.sandM3, system), 1),
  };
}

/** The right-hand rule of RFC 7946: an outer ring runs counter-clockwise, its first position repeated. */
function closedLeft(corners: readonly number[][]): number[][] {
  const twiceArea = corners.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length]!;
    return sum + (x! - corners[0]![0]!) * (nextY! - y!) - (nextX! - x!) * (y! - corners[0]![1]!);
  }, 0);
  const ring = twiceArea < 0 ? [...corners].reverse() : [...corners];
  return [...ring, ring[0]!];
}

function collection(features: readonly object[]): string {
  return `${JSON.stringify({ type: "FeatureCollection", features }, null, 1)}\n`;
}

function round(degrees: number): number {
  return Number(degrees.toFixed(DECIMALS));
}

function decimals(value: number | null, digits: number): number | null {
  return value === null || !Number.isFinite(value) ? null : Number(value.toFixed(digits));
}

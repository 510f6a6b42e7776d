import { isCounted, isWhole } from "../../shared/completeness.ts";
import type { Alignment } from "../../shared/plan.ts";
import type { SizedLine, Station } from "../../shared/sizing-types.ts";

const DECIMALS = 9;

/** Properties of a line or a stake; SI, the unit in each name. Null where there is no ground data. */
type Properties = Readonly<Record<string, string | number | boolean | null>>;

/**
 * One alternative as a GeoJSON FeatureCollection (RFC 7946, WGS 84): a Polygon for a ring, a LineString for a line
 * tied in, with its totals as properties; `complete` is false where they are not for all of its length, `mustFix`
 * counts what must be fixed.
 */
export function lineGeoJson(alternative: Alignment, line: SizedLine, mustFix: number): string {
  const corners = alternative.corners.map(([lon, lat]) => [round(lon), round(lat)]);
  const geometry =
    alternative.kind === "ring"
      ? { type: "Polygon", coordinates: [closedLeft(corners)] }
      : { type: "LineString", coordinates: corners };
  return collection([feature(geometry, lineProperties(alternative, line, mustFix))]);
}

/** The stations of one alternative as GeoJSON points, each with what a crew needs at the stake. */
export function stakesGeoJson(line: SizedLine, mustFix: number): string {
  return collection(
    line.stations.map((station) =>
      feature(
        { type: "Point", coordinates: [round(station.lon), round(station.lat)] },
        { ...stakeProperties(line, station), complete: isWhole(line), mustFix },
      ),
    ),
  );
}

function lineProperties(alternative: Alignment, line: SizedLine, mustFix: number): Properties {
  const { totals } = line;
  return {
    name: alternative.name,
    kind: alternative.kind,
    complete: isWhole(line),
    mustFix,
    lengthM: decimals(totals.lengthM, 2),
    volumeM3: decimals(totals.volumeM3, 2),
    bags: isCounted(line) ? totals.bags : null,
    sandM3: decimals(totals.sandM3, 2),
    greatestHeightM: decimals(totals.greatestHeightM, 3),
    lengthOverLimitM: decimals(totals.lengthOverLimitM, 2),
    lengthNoDataM: decimals(totals.lengthNoDataM, 2),
  };
}

function stakeProperties(line: SizedLine, station: Station): Properties {
  return {
    alternative: line.name,
    chainageM: decimals(station.chainageM, 3),
    reason: station.reason,
    groundM: decimals(station.groundM, 3),
    crestM: decimals(station.crestM, 3),
    waterM: decimals(station.waterM, 3),
    heightM: decimals(station.heightM, 3),
    greatestHeightM: decimals(station.greatestHeightM, 3),
    baseM: decimals(station.baseM, 3),
    courses: station.courses,
    coursesAtLowToe: station.coursesAtLowToe,
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

function feature(geometry: object, properties: Properties) {
  return { type: "Feature", geometry, properties };
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

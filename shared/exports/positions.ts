import type { Position } from "geojson";
import type { LonLat } from "../plan.ts";
import { DEGREE_DIGITS } from "./rounded.ts";

/** The right-hand rule of RFC 7946: an outer ring runs counter-clockwise, its first position repeated. */
export function closedLeft(corners: readonly Position[]): Position[] {
  const twiceArea = corners.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length]!;
    return sum + (x! - corners[0]![0]!) * (nextY! - y!) - (nextX! - x!) * (y! - corners[0]![1]!);
  }, 0);
  const ring = twiceArea < 0 ? [...corners].reverse() : [...corners];
  return [...ring, ring[0]!];
}

/** A place without its elevation. */
export function roundedPosition([lon, lat]: LonLat): Position {
  return [Number(lon.toFixed(DEGREE_DIGITS)), Number(lat.toFixed(DEGREE_DIGITS))];
}

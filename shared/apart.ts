import { loadPart } from "./load-part.ts";
import type { LonLat, Plan } from "./plan.ts";

/** West, south, east, north in degrees. */
export type Bounds = readonly [west: number, south: number, east: number, north: number];

/** How a plan and the elevation data lie that have no place in common. */
export interface Apart {
  /** Shortest way between them on the WGS 84 ellipsoid, metres. */
  readonly distanceM: number;
  /** From the plan to the elevation data, degrees clockwise from north, 0 to 360. */
  readonly bearingDeg: number;
}

/** The box round a plan's lines and buildings; null when it has neither. */
export function planBounds({ alignments, structures }: Plan): Bounds | null {
  const places: LonLat[] = [
    ...alignments.flatMap(({ corners }) => corners),
    ...structures.flatMap(({ outline }) => outline),
  ];
  if (places.length === 0) return null;
  const longitudes = places.map(([longitude]) => longitude);
  const latitudes = places.map(([, latitude]) => latitude);
  return [
    Math.min(...longitudes),
    Math.min(...latitudes),
    Math.max(...longitudes),
    Math.max(...latitudes),
  ];
}

/** The nearest places of a plan and of elevation data that have none in common. */
export interface Gap {
  readonly from: LonLat;
  readonly to: LonLat;
}

/** The gap between a plan and elevation data; null when they overlap or the plan has no place yet. */
export function gapTo(plan: Plan, data: Bounds): Gap | null {
  const own = planBounds(plan);
  if (!own) return null;
  const turn = 360 * Math.round((data[0] + data[2] - own[0] - own[2]) / 720);
  const [fromLon, toLon] = nearest(own[0] + turn, own[2] + turn, data[0], data[2]);
  const [fromLat, toLat] = nearest(own[1], own[3], data[1], data[3]);
  if (fromLon === toLon && fromLat === toLat) return null;
  return { from: [fromLon, fromLat], to: [toLon, toLat] };
}

const GEODESICS = () => import("geographiclib-geodesic");

/** How long a gap is, and which way it goes. */
export async function apartBy({ from, to }: Gap): Promise<Apart> {
  const { default: geodesic } = await loadPart("the calculation of distances", GEODESICS);
  const way = geodesic.Geodesic.WGS84.Inverse(from[1], from[0], to[1], to[0]);
  return { distanceM: way.s12!, bearingDeg: (way.azi1! + 360) % 360 };
}

/** The nearest places of two ranges; one place twice where they overlap. */
function nearest(fromA: number, toA: number, fromB: number, toB: number): [number, number] {
  if (toA < fromB) return [toA, fromB];
  if (fromA > toB) return [fromA, toB];
  const shared = (Math.max(fromA, fromB) + Math.min(toA, toB)) / 2;
  return [shared, shared];
}

import { SEMI_MAJOR_M } from "../constants.ts";
import type { LonLat } from "../plan.ts";
import type { Building } from "./types.ts";

/** Which of many buildings lie near each other. Indices are those of the list it was made for. */
export interface NearBuildings {
  /** Others whose bounding box comes within a distance of that of a building, rising. */
  within(index: number, reachM: number): number[];
  /** Least distance between the walls of two, meters; 0 where they touch or overlap. */
  apartM(a: number, b: number): number;
}

/** Side of a square of the index, degrees of latitude: some 60 m. */
const SQUARE_DEG = 0.00055;
/** A building over more squares than this is compared with all others. */
const MOST_SQUARES = 4096;

interface Box {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** Prepares buildings for being looked up by place. */
export function nearBuildings(buildings: readonly Building[]): NearBuildings {
  const boxes = buildings.map(({ parts }) => boxOf(parts.flat()));
  const squares = new Map<string, number[]>();
  const everywhere: number[] = [];
  for (const [index, box] of boxes.entries()) {
    const keys = squaresOf(box);
    if (!keys) everywhere.push(index);
    else for (const key of keys) squares.set(key, [...(squares.get(key) ?? []), index]);
  }
  const isNear = (a: Box, b: Box) =>
    a.west <= b.east && b.west <= a.east && a.south <= b.north && b.south <= a.north;
  return {
    within(index, reachM) {
      const [perLon, perLat] = metersPerDegree(boxes[index]!.south);
      const wide = grownBy(boxes[index]!, reachM / perLon, reachM / perLat);
      const keys = squaresOf(wide);
      const candidates = keys
        ? [...everywhere, ...keys.flatMap((key) => squares.get(key) ?? [])]
        : [...boxes.keys()];
      const found = new Set(candidates.filter((each) => isNear(wide, boxes[each]!)));
      found.delete(index);
      return [...found].sort((a, b) => a - b);
    },
    apartM: (a, b) => apart(buildings[a]!.parts, buildings[b]!.parts),
  };
}

function boxOf(corners: readonly LonLat[]): Box {
  const box = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
  for (const [lon, lat] of corners) {
    box.west = Math.min(box.west, lon);
    box.south = Math.min(box.south, lat);
    box.east = Math.max(box.east, lon);
    box.north = Math.max(box.north, lat);
  }
  return box;
}

function grownBy({ west, south, east, north }: Box, lon: number, lat: number): Box {
  return { west: west - lon, south: south - lat, east: east + lon, north: north + lat };
}

/** Null where there are too many. */
function squaresOf({ west, south, east, north }: Box): string[] | null {
  const [column0, column1] = [Math.floor(west / SQUARE_DEG), Math.floor(east / SQUARE_DEG)];
  const [row0, row1] = [Math.floor(south / SQUARE_DEG), Math.floor(north / SQUARE_DEG)];
  if (!((column1 - column0 + 1) * (row1 - row0 + 1) <= MOST_SQUARES)) return null;
  const keys: string[] = [];
  for (let row = row0; row <= row1; row++) {
    for (let column = column0; column <= column1; column++) keys.push(`${column},${row}`);
  }
  return keys;
}

const SQUARED_ECCENTRICITY = 0.00669437999014;

/** Length of a degree of longitude and of latitude at a latitude, meters, on the WGS 84 ellipsoid. */
export function metersPerDegree(latitude: number): readonly [lon: number, lat: number] {
  const phi = (latitude * Math.PI) / 180;
  const w = 1 - SQUARED_ECCENTRICITY * Math.sin(phi) ** 2;
  const lon = (SEMI_MAJOR_M * Math.cos(phi)) / Math.sqrt(w);
  const lat = (SEMI_MAJOR_M * (1 - SQUARED_ECCENTRICITY)) / w ** 1.5;
  return [(lon * Math.PI) / 180, (lat * Math.PI) / 180];
}

type Parts = Building["parts"];
type Spot = readonly [number, number];

function apart(one: Parts, other: Parts): number {
  const [lon0, lat0] = one[0]![0]!;
  const [perLon, perLat] = metersPerDegree(lat0);
  const onPlane = (parts: Parts) =>
    parts.map((outline) =>
      outline.map(([lon, lat]): Spot => [(lon - lon0) * perLon, (lat - lat0) * perLat]),
    );
  const [a, b] = [onPlane(one), onPlane(other)];
  return Math.min(...a.flatMap((outline) => b.map((against) => outlinesApart(outline, against))));
}

function outlinesApart(a: readonly Spot[], b: readonly Spot[]): number {
  if (holds(a, b[0]!) || holds(b, a[0]!)) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, from] of a.entries()) {
    const to = a[(i + 1) % a.length]!;
    for (const [j, start] of b.entries()) {
      const end = b[(j + 1) % b.length]!;
      if (crosses(from, to, start, end)) return 0;
      least = Math.min(least, toLeg(start, from, to), toLeg(from, start, end));
    }
  }
  return least;
}

/** Distance of a point from a leg. */
function toLeg([x, y]: Spot, [x1, y1]: Spot, [x2, y2]: Spot): number {
  const [alongX, alongY] = [x2 - x1, y2 - y1];
  const square = alongX * alongX + alongY * alongY;
  const share = square === 0 ? 0 : ((x - x1) * alongX + (y - y1) * alongY) / square;
  const held = Math.min(1, Math.max(0, share));
  return Math.hypot(x - x1 - held * alongX, y - y1 - held * alongY);
}

function crosses(a: Spot, b: Spot, c: Spot, d: Spot): boolean {
  const side = (p: Spot, q: Spot, r: Spot) =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Even-odd rule. */
function holds(outline: readonly Spot[], [x, y]: Spot): boolean {
  let isInside = false;
  for (const [i, [x1, y1]] of outline.entries()) {
    const [x2, y2] = outline[(i + 1) % outline.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) isInside = !isInside;
  }
  return isInside;
}

import {
  BUILDINGS,
  DITCH,
  DRIVE,
  OLD_CHANNEL,
  POND,
  RIVER_HALF_WIDTH_M,
  ROAD,
  ROAD_SOUTH,
  riverNorthM,
  SAND_RIDGE,
  SIZE_M,
  type Spot,
} from "./layout.ts";
import { ease, mix, smoothNoise } from "./noise.ts";

const SEED = 20260;

/** Water in the river on the day of the survey at the west edge, metres, and its fall per metre. */
const SURVEY_WATER_M = 262.1;
const VALLEY_FALL = 0.0003;

const broad = smoothNoise(SEED);
const middling = smoothNoise(SEED + 1);
const fine = smoothNoise(SEED + 2);

/**
 * Ground of the demo site, metres, at a place east and north of its lower left corner; NaN in the pond.
 * A valley floor with a fall of 0.3 m in 1 km, and on it, one after the other: the river with its natural
 * levees, the old channel, a sand ridge, the yard, a ditch, a raised drive and a road bank.
 */
function siteGroundM(east: number, north: number): number {
  if (inPond(east, north)) return Number.NaN;
  const fromRiver = riverDistance(east, north);
  if (fromRiver < RIVER_HALF_WIDTH_M - 6) return SURVEY_WATER_M - VALLEY_FALL * east;

  let ground = 266.02 - VALLEY_FALL * (east - 500) + roughness(east, north);
  ground += valleySide(north);
  ground += naturalLevee(fromRiver - RIVER_HALF_WIDTH_M, east, north);
  ground -= 1.15 * hump(pathDistance(OLD_CHANNEL, east, north), 11, 34);
  ground +=
    0.26 * hump(pathDistance(SAND_RIDGE, east, north), 4, 18) * taper(SAND_RIDGE, east, north);
  ground = raiseTo(ground, yardTop(east, north), yardDistance(east, north), 3, 17);
  ground -= 0.68 * hump(pathDistance(DITCH, east, north), 0.7, 2.5) * ditchDepth(east, north);
  ground = raiseTo(ground, 266.36, pathDistance(DRIVE, east, north), 2.2, 6);
  ground = raiseTo(ground, 268.1, roadDistance(east, north), 4.5, 10.5);
  return bank(ground, fromRiver, east);
}

function roughness(east: number, north: number): number {
  return (
    0.1 * broad(east / 95, north / 80) +
    0.06 * middling(east / 23, north / 23) +
    0.012 * fine(east / 2.7, north / 2.7)
  );
}

/** The valley floor climbs to a terrace in the far north. */
function valleySide(north: number): number {
  return 0.0012 * Math.max(0, north - 500) + 3.4 * ease((north - 800) / 170);
}

/** Higher towards the road, wider and lower on the far bank. */
function naturalLevee(fromBank: number, east: number, north: number): number {
  const farBank = north < riverNorthM(east);
  const crest = farBank ? 0.3 : 0.37 + 0.08 * ease((east - 510) / 80);
  const width = farBank ? 60 : 24;
  if (fromBank < 14) return crest * ease((fromBank + 8) / 22);
  return crest * Math.exp(-(((fromBank - 14) / width) ** 2));
}

/** The yard drains to its back, away from the river. */
function yardTop(east: number, north: number): number {
  return 266.15 - 0.0042 * (north - 335) + 0.07 * middling(east / 17, north / 17);
}

/** Blends the ground into the river's side. */
function bank(ground: number, fromRiver: number, east: number): number {
  const share = ease((fromRiver - (RIVER_HALF_WIDTH_M - 6)) / 12);
  return mix(SURVEY_WATER_M - VALLEY_FALL * east, ground, share);
}

/** 1 within `half` of the middle, falling to 0 at `reach`. */
function hump(distance: number, half: number, reach: number): number {
  return 1 - ease((distance - half) / (reach - half));
}

function raiseTo(
  ground: number,
  top: number,
  distance: number,
  half: number,
  reach: number,
): number {
  return mix(ground, Math.max(ground, top), hump(distance, half, reach));
}

function taper(path: readonly Spot[], east: number, north: number): number {
  const end = path.at(-1)!;
  return ease(Math.hypot(east - end[0], north - end[1]) / 30);
}

function ditchDepth(east: number, north: number): number {
  const head = DITCH[0]!;
  return ease((Math.hypot(east - head[0], north - head[1]) - 4) / 40);
}

function inPond(east: number, north: number): boolean {
  const x = (east - POND.at[0]) / POND.alongM;
  const y = (north - POND.at[1]) / POND.acrossM;
  return x * x + y * y < 1 + 0.25 * broad(east / 9, north / 9);
}

/** Distance to the middle of the river, to first order in the river's slope. */
function riverDistance(east: number, north: number): number {
  const slope = (riverNorthM(east + 1) - riverNorthM(east - 1)) / 2;
  return Math.abs(north - riverNorthM(east)) / Math.hypot(1, slope);
}

function roadDistance(east: number, north: number): number {
  return Math.min(pathDistance(ROAD, east, north), pathDistance(ROAD_SOUTH, east, north));
}

function yardDistance(east: number, north: number): number {
  return Math.min(...BUILDINGS.map(({ outline }) => outlineDistance(outline, east, north)));
}

function outlineDistance(outline: readonly Spot[], east: number, north: number): number {
  if (contains(outline, east, north)) return 0;
  return pathDistance([...outline, outline[0]!], east, north);
}

function contains(outline: readonly Spot[], east: number, north: number): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[i]!;
    const [bx, by] = outline[j]!;
    if (ay > north !== by > north && east < ((bx - ax) * (north - ay)) / (by - ay) + ax) {
      inside = !inside;
    }
  }
  return inside;
}

function pathDistance(path: readonly Spot[], east: number, north: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < path.length; i++) {
    nearest = Math.min(nearest, legDistance(path[i - 1]!, path[i]!, east, north));
  }
  return nearest;
}

function legDistance(from: Spot, to: Spot, east: number, north: number): number {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const along = ((east - from[0]) * dx + (north - from[1]) * dy) / (dx * dx + dy * dy);
  const held = Math.min(1, Math.max(0, along));
  return Math.hypot(east - from[0] - held * dx, north - from[1] - held * dy);
}

/** The site as rows from the north, columns from the west, at cell centres, rounded to 1/1024 m. */
export function siteGrid(): Float32Array {
  const heights = new Float32Array(SIZE_M * SIZE_M);
  for (let row = 0; row < SIZE_M; row++) {
    for (let column = 0; column < SIZE_M; column++) {
      const ground = siteGroundM(column + 0.5, SIZE_M - row - 0.5);
      heights[row * SIZE_M + column] = Math.round(ground * 1024) / 1024;
    }
  }
  return heights;
}

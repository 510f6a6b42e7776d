import type { GroundSampler } from "../../shared/ground.ts";
import type { Outline, SearchRequest, SectionModel } from "../../workers/search/types.ts";

/** Seeded stand-in for chance: mulberry32 (public domain, T. Ettinger). Values in [0, 1). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A square raster centred on the plane's origin, bilinear between cell centres, NaN outside. */
export function rasterGround(
  sizeM: number,
  cellM: number,
  heightAt: (xM: number, yM: number) => number,
): GroundSampler {
  const count = Math.round(sizeM / cellM) + 1;
  const from = -((count - 1) * cellM) / 2;
  const heights = new Float32Array(count * count);
  for (let j = 0; j < count; j++) {
    for (let i = 0; i < count; i++) {
      heights[j * count + i] = heightAt(from + i * cellM, from + j * cellM);
    }
  }
  return {
    cellM,
    heightAt: (xM, yM) => {
      const u = (xM - from) / cellM;
      const v = (yM - from) / cellM;
      const i = Math.min(count - 2, Math.floor(u));
      const j = Math.min(count - 2, Math.floor(v));
      if (!(u >= 0 && v >= 0 && u <= count - 1 && v <= count - 1)) return Number.NaN;
      const at = j * count + i;
      const south = heights[at]! + (u - i) * (heights[at + 1]! - heights[at]!);
      const above = at + count;
      const north = heights[above]! + (u - i) * (heights[above + 1]! - heights[above]!);
      return south + (v - j) * (north - south);
    },
  };
}

/** Smooth hills and hollows, a fall, a ditch and survey noise; heights about 0 near the origin, metres. */
export function roughTerrain(seed: number, reachM: number): (xM: number, yM: number) => number {
  const chance = seeded(seed);
  const between = (low: number, high: number) => low + (high - low) * chance();
  const hills = Array.from({ length: 14 }, () => ({
    x: between(-reachM, reachM),
    y: between(-reachM, reachM),
    width: between(6, 35),
    rise: between(-0.7, 0.8),
  }));
  const [fallX, fallY] = [between(-0.012, 0.012), between(-0.012, 0.012)];
  const turn = between(0, Math.PI);
  const ditchAt = between(12, 40);
  const ditchDeep = between(0, 1);
  const noise = seeded(seed ^ 0x5bd1e995);
  return (x, y) => {
    let z = fallX * x + fallY * y + 0.03 * (noise() - 0.5);
    for (const hill of hills) {
      z += hill.rise * Math.exp(-((x - hill.x) ** 2 + (y - hill.y) ** 2) / (2 * hill.width ** 2));
    }
    const across = x * Math.cos(turn) + y * Math.sin(turn) - ditchAt;
    return z - ditchDeep * Math.exp(-(across ** 2) / 6);
  };
}

/** A rectangle turned about its middle. */
export function rectangle(
  widthM: number,
  depthM: number,
  turnedDeg: number,
  [xM, yM]: readonly [number, number] = [0, 0],
): Outline {
  const turn = (turnedDeg * Math.PI) / 180;
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ];
  return corners.map(([a, b]) => {
    const [u, v] = [(a! * widthM) / 2, (b! * depthM) / 2];
    return [
      xM + u * Math.cos(turn) - v * Math.sin(turn),
      yM + u * Math.sin(turn) + v * Math.cos(turn),
    ] as const;
  });
}

export function regularPolygon(radiusM: number, corners: number): Outline {
  return Array.from({ length: corners }, (_, k) => {
    const angle = (2 * Math.PI * k) / corners;
    return [radiusM * Math.cos(angle), radiusM * Math.sin(angle)] as const;
  });
}

export const BASE_RATIO = 3;
const CROWN_M = 0.2286;

/** The default section on level ground, written out again here: base 3 h, crown 0.75 ft. */
export const LEVEL_SECTION: SectionModel = {
  areaAt: (h) => (h > 0 ? (h * (Math.max(BASE_RATIO * h, CROWN_M) + CROWN_M)) / 2 : 0),
  halfBaseAt: (h) => (h > 0 ? Math.max(BASE_RATIO * h, CROWN_M) / 2 : 0),
};

export const SETBACK_M = 2.4384;

/** A request round one structure with the usual rules; override what a test is about. */
export function requestFor(
  ground: GroundSampler,
  structure: Outline,
  crestM: number,
  other: Partial<SearchRequest> = {},
): SearchRequest {
  return {
    ground,
    crestAt: () => crestM,
    section: LEVEL_SECTION,
    structures: [structure],
    noGo: [],
    water: [],
    rule: { setbackM: SETBACK_M, limitM: 1.2192, keyInM: 2, marginM: 0.025, maxCorners: 24 },
    window: { reachM: 60 },
    ...other,
  };
}

/** A seeded house of 12 to 20 by 8 to 12 m on seeded rough ground, to be kept dry 0.4 to 0.9 m above it. */
export function seededSite(seed: number, reachM: number): SearchRequest {
  const chance = seeded(seed * 77 + 1);
  const house = rectangle(12 + 8 * chance(), 8 + 4 * chance(), 360 * chance());
  const ground = rasterGround(160, 1, roughTerrain(seed, 80));
  const floorM = house.reduce((sum, [x, y]) => sum + ground.heightAt(x, y) / house.length, 0);
  const crestM = floorM + 0.4 + 0.5 * chance();
  return requestFor(ground, house, crestM, { window: { reachM } });
}

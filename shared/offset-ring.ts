import { convexHull } from "./convex-hull.ts";
import { failureOf, type Outcome } from "./failure.ts";
import type { LonLat, Structure } from "./plan.ts";
import { planPlane } from "./plan-plane.ts";

/** Sharpest turn one corner of the ring takes, radians; a right-angled building corner gets two. */
const TURN_PER_CORNER = Math.PI / 3;

/** Corners of the outline that stand out less than this are left out; the ring runs that much further away, metres. */
const STANDS_OUT_M = 0.05;

/** Furthest the ring may run from the buildings, metres. */
const FURTHEST_M = 500;

/** Decimals of a degree kept, about a tenth of a millimetre: drawing tools refuse more than nine. */
const DECIMALS = 9;

export interface OffsetRingRequest {
  /** Buildings to go round; one ring holds them all. */
  readonly structures: readonly Structure[];
  /** Least distance from any building to the ring's centre line, metres > 0. */
  readonly distanceM: number;
}

/**
 * Distance from the building to the centre line that keeps the landside toe a setback away from it where the
 * levee is `heightM` high: half of the base stands on the landside.
 */
export function centreLineDistanceM(setbackM: number, heightM: number, baseRatio: number): number {
  return setbackM + (baseRatio * heightM) / 2;
}

/**
 * Corners of a ring whose straight sides run parallel to the outer sides of the buildings at `distanceM`, with
 * corners cut so that no part of it comes closer: the shortest such ring is convex, so it goes round the convex
 * outline of the buildings. A round buffer is not used because its chords cut inside the distance asked for.
 * Counter-clockwise, the first corner not repeated.
 */
export function offsetRing(request: OffsetRingRequest): Outcome<readonly LonLat[]> {
  const points = request.structures.flatMap((structure) => [...structure.outline]);
  const first = points[0];
  if (!first) return { ok: false, failure: failureOf("ring/no-structure") };
  const { distanceM: cameM } = request;
  if (!(cameM > 0 && cameM <= FURTHEST_M)) {
    return { ok: false, failure: failureOf("ring/distance", { mostM: FURTHEST_M, cameM }) };
  }
  const plane = planPlane(first);
  const places = points.map((each): Point => plane.toPlane(each));
  const outline = convexOutline(places);
  if (!outline) return { ok: false, failure: failureOf("ring/flat-structure") };
  const distanceM = request.distanceM + furthestOutside(places, outline);
  const corners = outline.flatMap((_, index) => cornersAround(outline, index, distanceM));
  return {
    ok: true,
    value: corners.map(([x, y]) => {
      const [lon, lat] = plane.toLonLat(x, y);
      return [Number(lon.toFixed(DECIMALS)), Number(lat.toFixed(DECIMALS))] as const;
    }),
  };
}

type Point = readonly [number, number];

/** The convex hull, counter-clockwise, without corners that stand out by less than a bag; null when it is flat. */
function convexOutline(points: readonly Point[]): readonly Point[] | null {
  let outline: readonly Point[] = convexHull(points);
  for (let index = flattest(outline); index >= 0; index = flattest(outline)) {
    outline = outline.filter((_, i) => i !== index);
  }
  return outline.length >= 3 ? outline : null;
}

/** The corner that stands out least from the side its neighbours would make, if by less than {@link STANDS_OUT_M}. */
function flattest(outline: readonly Point[]): number {
  const heights = outline.map((at, i) => {
    const before = outline[(i + outline.length - 1) % outline.length]!;
    return beyondSide(at, before, outline[(i + 1) % outline.length]!);
  });
  const least = Math.min(...heights);
  return least < STANDS_OUT_M ? heights.indexOf(least) : -1;
}

/** How far a place lies to the right of the side from `a` to `b`, metres; 0 for a side without length. */
function beyondSide([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const lengthM = Math.hypot(bx - ax, by - ay);
  if (!(lengthM > 0)) return 0;
  return ((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / lengthM;
}

function furthestOutside(points: readonly Point[], outline: readonly Point[]): number {
  const sides = outline.map((from, i) => [from, outline[(i + 1) % outline.length]!] as const);
  return Math.max(0, ...points.flatMap((at) => sides.map(([a, b]) => beyondSide(at, a, b))));
}

/** The ring's corners round one corner of the convex outline: each on the tangents of the circle of `distanceM`. */
function cornersAround(outline: readonly Point[], index: number, distanceM: number): Point[] {
  const at = outline[index]!;
  const before = outline[(index + outline.length - 1) % outline.length]!;
  const after = outline[(index + 1) % outline.length]!;
  const inward = Math.atan2(at[1] - before[1], at[0] - before[0]);
  const outward = Math.atan2(after[1] - at[1], after[0] - at[0]);
  const turn = (outward - inward + 2 * Math.PI) % (2 * Math.PI);
  const count = Math.max(1, Math.ceil(turn / TURN_PER_CORNER - 1e-9));
  const reachM = distanceM / Math.cos(turn / (2 * count));
  return Array.from({ length: count }, (_, step) => {
    const direction = inward - Math.PI / 2 + (turn * (step + 0.5)) / count;
    return [at[0] + reachM * Math.cos(direction), at[1] + reachM * Math.sin(direction)] as const;
  });
}

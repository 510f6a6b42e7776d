import { type BentLine, beside, legCount, moveCornerIfBetter, moveIfBetter } from "./bent-line.ts";
import { driven, SHAPING } from "./progress.ts";
import type { SearchTerms } from "./search-terms.ts";
import type { SearchStep } from "./types.ts";

const COMPASS = Array.from({ length: 8 }, (_, k): [number, number] => [
  Math.cos((k * Math.PI) / 4),
  Math.sin((k * Math.PI) / 4),
]);
const MOST_SWEEPS = 12;
/** A leg is slid along its neighbours only where they stand at least this square to it (sine). */
const LEAST_SINE = 0.2;

/** Radii of a search, metres: from first to last, each a share of the one before. */
export function radii(firstM: number, lastM: number, share = 0.5): number[] {
  const list: number[] = [];
  for (let r = firstM; r >= lastM; r *= share) list.push(r);
  return list;
}

/**
 * Pattern search: at each radius corners are moved and legs shifted by that much as long as the price
 * falls. Pinned corners stay.
 * @param limits corners to move (all when left out), and when to stop early
 */
export function slideCorners(
  terms: SearchTerms,
  line: BentLine,
  radiiM: readonly number[],
  limits: SlideLimits = {},
): void {
  driven(slideSteps(terms, line, radiiM, limits));
}

/** The same in steps. */
export function* slideSteps(
  terms: SearchTerms,
  line: BentLine,
  radiiM: readonly number[],
  limits: SlideLimits = {},
): Generator<SearchStep, void> {
  for (const radius of radiiM) {
    line.still.fill(false);
    for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
      if (!(yield* sweepOnce(terms, line, radius, limits))) break;
    }
  }
}

interface SlideLimits {
  readonly only?: ReadonlySet<number>;
  readonly outOfTime?: () => boolean;
}

/** @returns whether anything was moved, in time */
function* sweepOnce(
  terms: SearchTerms,
  line: BentLine,
  radius: number,
  { only, outOfTime }: SlideLimits,
): Generator<SearchStep, boolean> {
  let better = false;
  const wanted = (k: number) => !line.pinned[k] && !(only && !only.has(k));
  for (let k = 0; k < line.x.length; k++) {
    if (line.still[k]) continue;
    yield SHAPING;
    if (outOfTime?.()) return false;
    line.still[k] = true;
    if (wanted(k) && moveCorner(terms, line, k, radius)) better = true;
    const n = beside(line, k, 1);
    if (k >= legCount(line) || !wanted(k) || !wanted(n)) continue;
    if (shiftLeg(terms, line, k, radius)) better = true;
  }
  return better;
}

function moveCorner(terms: SearchTerms, line: BentLine, k: number, radius: number): boolean {
  let better = false;
  for (const [ux, uy] of directionsAt(line, k)) {
    for (let go = 0; go < 8; go++) {
      const x = line.x[k]! + radius * ux;
      const y = line.y[k]! + radius * uy;
      if (!moveCornerIfBetter(terms, line, k, x, y)) break;
      better = true;
    }
  }
  return better;
}

/** The eight points of the compass, and along and across both legs. */
function directionsAt(line: BentLine, k: number): [number, number][] {
  const directions = [...COMPASS];
  for (const by of [-1, 1]) {
    const n = beside(line, k, by);
    if (n < 0 || n >= line.x.length) continue;
    const [ux, uy] = unit(line.x[n]! - line.x[k]!, line.y[n]! - line.y[k]!);
    directions.push([ux, uy], [-ux, -uy], [-uy, ux], [uy, -ux]);
  }
  return directions;
}

function shiftLeg(terms: SearchTerms, line: BentLine, k: number, radius: number): boolean {
  const n = beside(line, k, 1);
  const [ux, uy] = unit(line.x[n]! - line.x[k]!, line.y[n]! - line.y[k]!);
  let better = false;
  for (const signed of [radius, -radius]) {
    const shiftX = -uy * signed;
    const shiftY = ux * signed;
    const [p, q] = [
      slideAlong(line, k, -1, shiftX, shiftY),
      slideAlong(line, n, 1, shiftX, shiftY),
    ];
    const ways: [number, number, number, number][] = [
      [shiftX, shiftY, shiftX, shiftY],
      [shiftX, shiftY, -shiftX, -shiftY],
      [p[0], p[1], q[0], q[1]],
    ];
    for (const [x1, y1, x2, y2] of ways) {
      const xs = [line.x[k]! + x1, line.x[n]! + x2];
      const ys = [line.y[k]! + y1, line.y[n]! + y2];
      if (moveIfBetter(terms, line, k, xs, ys)) better = true;
    }
  }
  return better;
}

/** Move of a leg's end along its other leg that shifts the end by (shiftX, shiftY) square to the leg. */
function slideAlong(
  line: BentLine,
  k: number,
  by: number,
  shiftX: number,
  shiftY: number,
): [number, number] {
  const n = beside(line, k, by);
  if (n < 0 || n >= line.x.length) return [shiftX, shiftY];
  const [ux, uy] = unit(line.x[n]! - line.x[k]!, line.y[n]! - line.y[k]!);
  const shift = Math.hypot(shiftX, shiftY);
  const sine = (ux * shiftX + uy * shiftY) / shift;
  if (Math.abs(sine) < LEAST_SINE) return [shiftX, shiftY];
  return [(ux * shift) / sine, (uy * shift) / sine];
}

function unit(dx: number, dy: number): [number, number] {
  const length = Math.sqrt(dx * dx + dy * dy) || 1;
  return [dx / length, dy / length];
}

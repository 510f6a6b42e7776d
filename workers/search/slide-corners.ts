import { type BentLine, beside, legCount, moveCornerIfBetter, moveIfBetter } from "./bent-line.ts";
import { driven, SHAPING } from "./progress.ts";
import type { SearchTerms } from "./search-terms.ts";
import type { SearchStep } from "./types.ts";

const COMPASS = Float64Array.from({ length: 16 }, (_, k) =>
  (k & 1 ? Math.sin : Math.cos)(((k >> 1) * Math.PI) / 4),
);
const MOST_SWEEPS = 12;
/** A leg is slid along its neighbours only where they stand at least this square to it (sine). */
const LEAST_SINE = 0.2;

/** Corners looked at between two steps. */
const STRETCH = 8;

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
    if (k % STRETCH === 0) yield SHAPING;
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
  const end = directionsAt(line, k);
  for (let at = 0; at < end; at += 2) {
    for (let go = 0; go < 8; go++) {
      const x = line.x[k]! + radius * directions[at]!;
      const y = line.y[k]! + radius * directions[at + 1]!;
      if (!moveCornerIfBetter(terms, line, k, x, y)) break;
      better = true;
    }
  }
  return better;
}

/** Directions a corner is moved in, x and y interleaved. */
const directions = new Float64Array(32);
directions.set(COMPASS);

/** The eight points of the compass, and along and across both legs. @returns where they end in `directions` */
function directionsAt(line: BentLine, k: number): number {
  let end = COMPASS.length;
  for (let by = -1; by <= 1; by += 2) {
    const n = beside(line, k, by);
    if (n < 0 || n >= line.x.length) continue;
    const dx = line.x[n]! - line.x[k]!;
    const dy = line.y[n]! - line.y[k]!;
    const length = lengthOf(dx, dy);
    const ux = dx / length;
    const uy = dy / length;
    directions[end++] = ux;
    directions[end++] = uy;
    directions[end++] = -ux;
    directions[end++] = -uy;
    directions[end++] = -uy;
    directions[end++] = ux;
    directions[end++] = uy;
    directions[end++] = -ux;
  }
  return end;
}

function shiftLeg(terms: SearchTerms, line: BentLine, k: number, radius: number): boolean {
  const n = beside(line, k, 1);
  const dx = line.x[n]! - line.x[k]!;
  const dy = line.y[n]! - line.y[k]!;
  const length = lengthOf(dx, dy);
  let better = false;
  for (let side = 1; side >= -1; side -= 2) {
    const shiftX = -(dy / length) * side * radius;
    const shiftY = (dx / length) * side * radius;
    slideAlong(line, k, -1, shiftX, shiftY);
    const x1 = slid[0]!;
    const y1 = slid[1]!;
    slideAlong(line, n, 1, shiftX, shiftY);
    const x2 = slid[0]!;
    const y2 = slid[1]!;
    if (shift(terms, line, k, shiftX, shiftY, shiftX, shiftY)) better = true;
    if (shift(terms, line, k, shiftX, shiftY, -shiftX, -shiftY)) better = true;
    if (shift(terms, line, k, x1, y1, x2, y2)) better = true;
  }
  return better;
}

/** Moves the two ends of a leg by as much, if that is better. */
function shift(
  terms: SearchTerms,
  line: BentLine,
  k: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): boolean {
  const n = beside(line, k, 1);
  xs[0] = line.x[k]! + x1;
  xs[1] = line.x[n]! + x2;
  ys[0] = line.y[k]! + y1;
  ys[1] = line.y[n]! + y2;
  return moveIfBetter(terms, line, k, xs, ys);
}

/** Places tried for the two ends of a leg. */
const xs = new Float64Array(2);
const ys = new Float64Array(2);
/** The last move that `slideAlong` gave. */
const slid = new Float64Array(2);

/** Leaves in `slid` the move of a leg's end along its other leg that shifts the end by (shiftX, shiftY) square to the leg. */
function slideAlong(line: BentLine, k: number, by: number, shiftX: number, shiftY: number): void {
  slid[0] = shiftX;
  slid[1] = shiftY;
  const n = beside(line, k, by);
  if (n < 0 || n >= line.x.length) return;
  const dx = line.x[n]! - line.x[k]!;
  const dy = line.y[n]! - line.y[k]!;
  const length = lengthOf(dx, dy);
  const shift = Math.hypot(shiftX, shiftY);
  const sine = ((dx / length) * shiftX + (dy / length) * shiftY) / shift;
  if (Math.abs(sine) < LEAST_SINE) return;
  slid[0] = ((dx / length) * shift) / sine;
  slid[1] = ((dy / length) * shift) / sine;
}

function lengthOf(dx: number, dy: number): number {
  return Math.sqrt(dx * dx + dy * dy) || 1;
}

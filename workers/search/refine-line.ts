import {
  type BentLine,
  beside,
  copyOf,
  legCount,
  removeCorner,
  restore,
  splitLeg,
  totalPrice,
} from "./bent-line.ts";
import { legClass } from "./leg-class.ts";
import { legPrice } from "./leg-price.ts";
import { SHAPING } from "./progress.ts";
import { rollLegs } from "./roll-legs.ts";
import type { SearchTerms } from "./search-terms.ts";
import { radii, slideCorners, slideSteps } from "./slide-corners.ts";
import type { SearchStep } from "./types.ts";

export interface RefineOptions {
  /** A corner is worth keeping when it saves more than this, m3. */
  readonly cornerPrice: number;
  readonly maxCorners: number;
  /** First and last radius of the pattern search, metres. */
  readonly fromM: number;
  readonly toM: number;
  readonly outOfTime: () => boolean;
}

const MOST_ROUNDS = 6;
/** Share of a leg, and metres at most, that a new corner is set off from an old one. */
const CHAMFER_SHARE = 0.3;
const CHAMFER_M = 4;
const NEAR_START = -1;
/** Share from one radius to the next in a trial. */
const QUICK = 0.35;
/** A change that at first costs more corner prices than this is not tried further. */
const HOPELESS = 8;

/**
 * Improves a line in place: corners slide to cheaper places, corners that save too little go, and new ones
 * come where they save enough. Pinned corners stay; the line passes every anchor on the side it did.
 */
export function* refineLine(
  terms: SearchTerms,
  line: BentLine,
  options: RefineOptions,
): Generator<SearchStep, void> {
  yield* slideSteps(terms, line, radii(options.fromM, options.toM), options);
  yield* rollLegs(terms, line, options.outOfTime);
  const barren = new Set<string>();
  for (let round = 0; round < MOST_ROUNDS && !options.outOfTime(); round++) {
    const before = totalPrice(line) + line.x.length * options.cornerPrice;
    yield* dropCorners(terms, line, options, barren);
    yield* addCorners(terms, line, options, barren);
    yield* rollLegs(terms, line, options.outOfTime);
    yield* slideSteps(terms, line, radii(options.fromM / 4, options.toM), options);
    const after = totalPrice(line) + line.x.length * options.cornerPrice;
    if (after > before - 0.05 * options.cornerPrice) break;
  }
}

/**
 * Takes out corners whose saving is below the corner price.
 * @param barren places, by the prices of their legs, where that has been tried in vain
 */
export function* dropCorners(
  terms: SearchTerms,
  line: BentLine,
  options: RefineOptions,
  barren: Set<string>,
): Generator<SearchStep, void> {
  const fewest = line.closed ? 3 : 2;
  for (let k = 0; k < line.x.length && line.x.length > fewest; ) {
    yield SHAPING;
    const tooMany = line.x.length > options.maxCorners;
    if (!tooMany && options.outOfTime()) return;
    const worth = tooMany ? Infinity : options.cornerPrice;
    const key = placeOf(line, k, options);
    if (barren.has(key)) k++;
    else if (dropOne(terms, line, k, worth, options) || mergeLeg(terms, line, k, worth, options)) {
      k = Math.max(0, k - 2);
    } else {
      if (!tooMany) barren.add(key);
      k++;
    }
  }
}

/** A corner's surroundings as text: the same as long as its three legs cost about the same. */
function placeOf(line: BentLine, k: number, options: RefineOptions): string {
  const legs = [-1, 0, 1].map((by) => line.leg[beside(line, k, by)] ?? 0);
  return legs.map((price) => Math.round((4 * price) / options.cornerPrice)).join(" ");
}

function dropOne(
  terms: SearchTerms,
  line: BentLine,
  k: number,
  worth: number,
  options: RefineOptions,
): boolean {
  const p = beside(line, k, -1);
  const n = beside(line, k, 1);
  if (line.pinned[k] || p < 0 || n >= line.x.length) return false;
  const old = line.leg[p]! + line.leg[k]!;
  const direct = legPrice(
    terms,
    line.x[p]!,
    line.y[p]!,
    line.x[n]!,
    line.y[n]!,
    old + HOPELESS * options.cornerPrice,
  );
  if (direct === Infinity) return false;
  const bits = classAlong(terms, line, p, 2);
  if (bits !== legClass(terms, line.x[p]!, line.y[p]!, line.x[n]!, line.y[n]!)) return false;
  const copy = copyOf(line);
  const before = totalPrice(line);
  removeCorner(line, k);
  const at = p > k ? p - 1 : p;
  line.leg[at] = direct;
  if (direct > old + worth) {
    slideCorners(terms, line, radii(options.fromM / 2, options.toM * 4, QUICK), {
      only: around(line, at, 2),
    });
  }
  if (totalPrice(line) <= before + worth) return true;
  restore(line, copy);
  return false;
}

/** Replaces a leg by the point where its two neighbours, carried on, meet. */
function mergeLeg(
  terms: SearchTerms,
  line: BentLine,
  k: number,
  worth: number,
  options: RefineOptions,
): boolean {
  const n = beside(line, k, 1);
  const p = beside(line, k, -1);
  const q = beside(line, k, 2);
  if (k >= legCount(line) || p < 0 || q >= line.x.length || n >= line.x.length) return false;
  if (line.pinned[k] || line.pinned[n] || line.x.length <= 3) return false;
  const meet = crossing(line, p, k, q, n);
  if (!meet) return false;
  const old = line.leg[p]! + line.leg[k]! + line.leg[n]!;
  const limit = old + HOPELESS * options.cornerPrice;
  const one = legPrice(terms, line.x[p]!, line.y[p]!, meet[0], meet[1], limit);
  const two = legPrice(terms, meet[0], meet[1], line.x[q]!, line.y[q]!, limit - one);
  if (!(one + two < limit)) return false;
  const bits =
    legClass(terms, line.x[p]!, line.y[p]!, meet[0], meet[1]) ^
    legClass(terms, meet[0], meet[1], line.x[q]!, line.y[q]!);
  if (bits !== classAlong(terms, line, p, 3)) return false;
  const copy = copyOf(line);
  const before = totalPrice(line);
  line.x[k] = meet[0];
  line.y[k] = meet[1];
  line.leg[p] = one;
  line.leg[k] = two;
  removeCorner(line, n);
  const at = n < k ? k - 1 : k;
  if (one + two > old + worth) {
    slideCorners(terms, line, radii(options.fromM / 2, options.toM * 4, QUICK), {
      only: around(line, at, 1),
    });
  }
  if (totalPrice(line) <= before + worth) return true;
  restore(line, copy);
  return false;
}

/**
 * Adds corners where one saves more than its price: in the middle of a leg, or by cutting a corner off.
 * @param barren legs, by price, on which that has been tried in vain
 */
function* addCorners(
  terms: SearchTerms,
  line: BentLine,
  options: RefineOptions,
  barren: Set<string>,
): Generator<SearchStep, void> {
  for (let k = 0; k < legCount(line); k++) {
    if (line.x.length >= options.maxCorners || options.outOfTime()) return;
    if (line.held[k]) continue;
    yield SHAPING;
    for (const share of [0.5, NEAR_START]) {
      const key = `${share} ${Math.round((4 * line.leg[k]!) / options.cornerPrice)}`;
      if (barren.has(key)) continue;
      if (addOne(terms, line, k, share, options)) break;
      barren.add(key);
    }
  }
}

/** @param share where on leg k; `NEAR_START` cuts its first corner off */
function addOne(
  terms: SearchTerms,
  line: BentLine,
  k: number,
  share: number,
  options: RefineOptions,
): boolean {
  const n = beside(line, k, 1);
  const length = Math.hypot(line.x[n]! - line.x[k]!, line.y[n]! - line.y[k]!);
  if (length < 4 * options.toM + 1) return false;
  const t = share === NEAR_START ? Math.min(CHAMFER_SHARE, CHAMFER_M / length) : share;
  const copy = copyOf(line);
  const before = totalPrice(line);
  splitLeg(terms, line, k, t);
  slideCorners(terms, line, radii(options.fromM, options.fromM / 10, QUICK), {
    only: around(line, k + 1, 1),
  });
  if (totalPrice(line) < before - options.cornerPrice) return true;
  restore(line, copy);
  return false;
}

function around(line: BentLine, k: number, by: number): Set<number> {
  const set = new Set<number>();
  for (let m = -by; m <= by; m++) set.add(beside(line, k, m));
  return set;
}

function classAlong(terms: SearchTerms, line: BentLine, from: number, legs: number): number {
  let bits = 0;
  for (let m = 0; m < legs; m++) {
    const k = beside(line, from, m);
    const n = beside(line, from, m + 1);
    bits ^= legClass(terms, line.x[k]!, line.y[k]!, line.x[n]!, line.y[n]!);
  }
  return bits;
}

/** Where the lines a -> b and c -> d, carried on beyond b and d, meet; null when they do not. */
function crossing(
  line: BentLine,
  a: number,
  b: number,
  c: number,
  d: number,
): [number, number] | null {
  const ux = line.x[b]! - line.x[a]!;
  const uy = line.y[b]! - line.y[a]!;
  const vx = line.x[d]! - line.x[c]!;
  const vy = line.y[d]! - line.y[c]!;
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < 1e-9) return null;
  const wx = line.x[c]! - line.x[a]!;
  const wy = line.y[c]! - line.y[a]!;
  const s = (wx * vy - wy * vx) / cross;
  const t = (wx * uy - wy * ux) / cross;
  if (s < 1 || t < 1) return null;
  return [line.x[a]! + s * ux, line.y[a]! + s * uy];
}

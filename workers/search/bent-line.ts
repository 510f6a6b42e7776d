import { legClass } from "./leg-class.ts";
import { legPrice } from "./leg-price.ts";
import type { SearchTerms } from "./search-terms.ts";

/** A line being improved: corners with the price of the leg that starts at each. */
export interface BentLine {
  readonly closed: boolean;
  readonly x: number[];
  readonly y: number[];
  /** Corners that may not be moved or taken out. */
  readonly pinned: boolean[];
  /** Legs, by the corner they start at, that may not be bent. */
  readonly held: boolean[];
  /** Index that a corner had in the line as it came; -1 for one added since. */
  readonly mark: number[];
  /** Price of the leg from corner k to the next, m3; unused for the last corner of an open line. */
  readonly leg: number[];
  /** Corners whose surroundings have not changed since nothing better was found for them. */
  readonly still: boolean[];
}

/** What of a line must stay. */
export interface Pins {
  readonly corners: readonly number[];
  /** Legs by the index of the corner they start at; their corners stay too. */
  readonly legs: readonly number[];
}

export const NO_PINS: Pins = { corners: [], legs: [] };

/** @param corners x and y interleaved, metres */
export function bentLine(
  terms: SearchTerms,
  corners: Float64Array,
  closed: boolean,
  pins: Pins,
): BentLine {
  const count = corners.length / 2;
  const legEnds = pins.legs.flatMap((k) => [k, (k + 1) % count]);
  const pinned = new Set([...pins.corners, ...legEnds]);
  const held = new Set(pins.legs);
  const indices = Array.from({ length: count }, (_, k) => k);
  const line: BentLine = {
    closed,
    x: indices.map((k) => corners[2 * k]!),
    y: indices.map((k) => corners[2 * k + 1]!),
    pinned: indices.map((k) => pinned.has(k)),
    held: indices.map((k) => held.has(k)),
    mark: [...indices],
    leg: indices.map(() => 0),
    still: indices.map(() => false),
  };
  priceAgain(terms, line);
  return line;
}

export function cornersOf(line: BentLine): Float64Array {
  const corners = new Float64Array(2 * line.x.length);
  for (let k = 0; k < line.x.length; k++) {
    corners[2 * k] = line.x[k]!;
    corners[2 * k + 1] = line.y[k]!;
  }
  return corners;
}

export function legCount(line: BentLine): number {
  return line.closed ? line.x.length : line.x.length - 1;
}

export function totalPrice(line: BentLine): number {
  let sum = 0;
  for (let k = 0; k < legCount(line); k++) sum += line.leg[k]!;
  return sum;
}

/** Index of a neighbouring corner, around the ring; -1 or the count where an open line ends. */
export function beside(line: BentLine, k: number, by: number): number {
  const count = line.x.length;
  return line.closed ? (k + by + 2 * count) % count : Math.max(-1, Math.min(count, k + by));
}

function priceOfLeg(terms: SearchTerms, line: BentLine, k: number): number {
  const n = beside(line, k, 1);
  return legPrice(terms, line.x[k]!, line.y[k]!, line.x[n]!, line.y[n]!, Infinity);
}

/** Least saving worth a move, as a share of what it replaces: below it, rounding would be chased. */
const WORTH = 1 - 1e-9;

/** Prices of the legs that a move touches: of at most two corners. */
const newLegs = new Float64Array(3);

/**
 * Moves corners `first` ... `first + xs.length - 1` to new places if that lowers the price of the legs
 * they touch and no anchor is passed on another side.
 */
export function moveIfBetter(
  terms: SearchTerms,
  line: BentLine,
  first: number,
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
): boolean {
  const moved = xs.length;
  const before = beside(line, first, -1);
  const after = beside(line, first, moved);
  const hasBefore = before >= 0;
  const hasAfter = after < line.x.length;
  let old = 0;
  if (hasBefore) old += line.leg[before]!;
  for (let m = 0; m < moved; m++) {
    if (m < moved - 1 || hasAfter) old += line.leg[beside(line, first, m)]!;
  }
  let limit = old * WORTH;
  const legs = newLegs;
  let bits = 0;
  const start = hasBefore ? -1 : 0;
  const end = hasAfter ? moved : moved - 1;
  for (let m = start; m < end; m++) {
    const k = beside(line, first, m);
    const n = beside(line, first, m + 1);
    const x1 = m < 0 ? line.x[k]! : xs[m]!;
    const y1 = m < 0 ? line.y[k]! : ys[m]!;
    const x2 = m + 1 < moved ? xs[m + 1]! : line.x[n]!;
    const y2 = m + 1 < moved ? ys[m + 1]! : line.y[n]!;
    const price = legPrice(terms, x1, y1, x2, y2, limit);
    if (!(price < limit)) return false;
    limit -= price;
    legs[m - start] = price;
    bits ^= legClass(terms, x1, y1, x2, y2);
    bits ^= legClass(terms, line.x[k]!, line.y[k]!, line.x[n]!, line.y[n]!);
  }
  if (bits !== 0) return false;
  for (let m = start; m < end; m++) line.leg[beside(line, first, m)] = legs[m - start]!;
  for (let m = 0; m < moved; m++) {
    const k = beside(line, first, m);
    line.x[k] = xs[m]!;
    line.y[k] = ys[m]!;
  }
  for (let m = -1; m <= moved; m++) {
    const k = beside(line, first, m);
    if (k >= 0 && k < line.x.length) line.still[k] = false;
  }
  return true;
}

/** Moves one corner if that lowers the price of its legs and no anchor is passed on another side. */
export function moveCornerIfBetter(
  terms: SearchTerms,
  line: BentLine,
  k: number,
  x: number,
  y: number,
): boolean {
  const p = beside(line, k, -1);
  const n = beside(line, k, 1);
  const hasBefore = p >= 0;
  const hasAfter = n < line.x.length;
  const old = (hasBefore ? line.leg[p]! : 0) + (hasAfter ? line.leg[k]! : 0);
  const limit = old * WORTH;
  let before = 0;
  let after = 0;
  let bits = 0;
  if (hasBefore) {
    before = legPrice(terms, line.x[p]!, line.y[p]!, x, y, limit);
    if (!(before < limit)) return false;
  }
  if (hasAfter) {
    after = legPrice(terms, x, y, line.x[n]!, line.y[n]!, limit - before);
    if (!(before + after < limit)) return false;
  }
  if (hasBefore) bits = changeOfClass(terms, line, p, k, x, y);
  if (hasAfter) bits ^= changeOfClass(terms, line, n, k, x, y);
  if (bits !== 0) return false;
  if (hasBefore) {
    line.leg[p] = before;
    line.still[p] = false;
  }
  if (hasAfter) {
    line.leg[k] = after;
    line.still[n] = false;
  }
  line.x[k] = x;
  line.y[k] = y;
  line.still[k] = false;
  return true;
}

/** Anchors on whose other side the leg between a corner and corner k comes to lie when k moves. */
function changeOfClass(
  terms: SearchTerms,
  line: BentLine,
  fixed: number,
  k: number,
  x: number,
  y: number,
): number {
  const [u, v] = [line.x[fixed]!, line.y[fixed]!];
  return legClass(terms, u, v, x, y) ^ legClass(terms, u, v, line.x[k]!, line.y[k]!);
}

/** Prices every leg anew, after the terms have changed. */
function priceAgain(terms: SearchTerms, line: BentLine): void {
  for (let k = 0; k < legCount(line); k++) line.leg[k] = priceOfLeg(terms, line, k);
}

/** A copy that can be gone back to. */
export function copyOf(line: BentLine): BentLine {
  return {
    closed: line.closed,
    x: [...line.x],
    y: [...line.y],
    pinned: [...line.pinned],
    held: [...line.held],
    mark: [...line.mark],
    leg: [...line.leg],
    still: [...line.still],
  };
}

/** Makes a line equal to a copy taken earlier. */
export function restore(line: BentLine, copy: BentLine): void {
  for (const key of ["x", "y", "leg", "mark"] as const) refill(line[key], copy[key]);
  for (const key of ["pinned", "held", "still"] as const) refill(line[key], copy[key]);
}

function refill<T>(list: T[], from: readonly T[]): void {
  list.splice(0, list.length, ...from);
}

export function removeCorner(line: BentLine, k: number): void {
  for (const list of [line.x, line.y, line.leg, line.mark]) list.splice(k, 1);
  for (const list of [line.pinned, line.held, line.still]) list.splice(k, 1);
}

/** Adds a corner on leg k at a share of it, and prices the two legs. */
export function splitLeg(terms: SearchTerms, line: BentLine, k: number, share: number): void {
  const n = beside(line, k, 1);
  line.x.splice(k + 1, 0, line.x[k]! + share * (line.x[n]! - line.x[k]!));
  line.y.splice(k + 1, 0, line.y[k]! + share * (line.y[n]! - line.y[k]!));
  line.leg.splice(k + 1, 0, 0);
  line.mark.splice(k + 1, 0, -1);
  for (const list of [line.pinned, line.held, line.still]) list.splice(k + 1, 0, false);
  line.leg[k] = priceOfLeg(terms, line, k);
  line.leg[k + 1] = priceOfLeg(terms, line, k + 1);
}

import { bentLine, cornersOf, NO_PINS, totalPrice } from "./bent-line.ts";
import type { Lattice } from "./lattice.ts";
import { pushOut } from "./push-out.ts";
import { dropCorners, refineLine } from "./refine-line.ts";
import type { SearchTerms } from "./search-terms.ts";
import { simplifyRing } from "./simplify-ring.ts";
import type { SearchStep } from "./types.ts";

/** How a lattice ring becomes a line of straight legs. */
export interface LineOptions {
  /** A corner must save this share of the ring's price. */
  readonly cornerShare: number;
  readonly maxCorners: number;
  readonly outOfTime: () => boolean;
}

/** A closed line and its price, m3. */
export interface PricedRing {
  /** Corners, x and y interleaved, metres. */
  readonly corners: Float64Array;
  readonly priceM3: number;
}

/** A corner must save at least this, m3 (about two bags), however little the ring takes. */
const LEAST_CORNER_PRICE = 0.02;
const RAISE = 1.5;
const FIRST_RADIUS_M = 1.5;
const LAST_RADIUS_M = 0.01;

/** The line of few straight legs near a ring of lattice nodes. */
export function* lineFromLoop(
  terms: SearchTerms,
  lattice: Lattice,
  loop: Int32Array,
  loopPrice: number,
  options: LineOptions,
): Generator<SearchStep, PricedRing> {
  const points = pushOut(terms, lattice, loop);
  const least = Math.max(LEAST_CORNER_PRICE, options.cornerShare * loopPrice);
  let cornerPrice = least;
  let corners = yield* simplifyRing(terms, points, cornerPrice, options.outOfTime);
  while (corners.length / 2 > options.maxCorners && cornerPrice < loopPrice) {
    cornerPrice *= Math.max(RAISE, (corners.length / 2 / options.maxCorners) ** 2);
    corners = yield* simplifyRing(terms, points, cornerPrice, options.outOfTime);
  }
  const refine = {
    cornerPrice: least,
    maxCorners: options.maxCorners,
    fromM: FIRST_RADIUS_M,
    toM: LAST_RADIUS_M,
    outOfTime: options.outOfTime,
  };
  const line = bentLine(terms, corners, true, NO_PINS);
  if (corners.length / 2 > options.maxCorners) yield* dropCorners(terms, line, refine, new Set());
  yield* refineLine(terms, line, refine);
  return { corners: cornersOf(line), priceM3: totalPrice(line) };
}

import type { SearchTerms } from "./search-terms.ts";

/* Prices of the legs priced last: a pattern search comes back to a third of its legs within the same line. */

const SLOTS = 8192;
/** Corner coordinates of the leg in a slot, four a slot. */
const corners = new Float64Array(4 * SLOTS).fill(Number.NaN);
/** Its price, m3; Infinity where that is only known to be dearer than `dearerThan`. */
const prices = new Float64Array(SLOTS);
const breaches = new Float64Array(SLOTS);
const dearerThan = new Float64Array(SLOTS);
const sought = new Float64Array(4);
const soughtBits = new Int32Array(sought.buffer);
let owner: SearchTerms | null = null;
let withHoles = false;
let slot = 0;

/** What is kept is of one search's terms, and of what it has seen of holes in the ground. */
function belongTo(terms: SearchTerms): void {
  if (owner === terms && withHoles === terms.ground.seen.holes) return;
  owner = terms;
  withHoles = terms.ground.seen.holes;
  corners.fill(Number.NaN);
}

/**
 * Finds a leg.
 * @returns its price; Infinity where it is dearer than `limit`; NaN where that is not known
 */
export function knownPrice(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  limit: number,
): number {
  belongTo(terms);
  sought[0] = x1;
  sought[1] = y1;
  sought[2] = x2;
  sought[3] = y2;
  const mixed =
    Math.imul(soughtBits[0]! ^ (soughtBits[1]! << 7), 0x9e3779b1) +
    Math.imul(soughtBits[2]! ^ (soughtBits[3]! << 7), 0x85ebca6b) +
    Math.imul(soughtBits[4]! ^ (soughtBits[5]! << 7), 0xc2b2ae35) +
    Math.imul(soughtBits[6]! ^ (soughtBits[7]! << 7), 0x27d4eb2f);
  slot = ((mixed | 0) >>> 17) & (SLOTS - 1);
  const at = 4 * slot;
  const same =
    corners[at] === x1 &&
    corners[at + 1] === y1 &&
    corners[at + 2] === x2 &&
    corners[at + 3] === y2;
  if (!same) return Number.NaN;
  const price = prices[slot]!;
  if (price < Infinity) return price > limit ? Infinity : price;
  return limit <= dearerThan[slot]! ? Infinity : Number.NaN;
}

/** Breaches of the leg just found with a price below Infinity, m3. */
export function knownBreach(): number {
  return breaches[slot]!;
}

/** Keeps what has been worked out of the leg just looked for and not found. */
export function keepPrice(price: number, breach: number, limit: number): void {
  corners.set(sought, 4 * slot);
  prices[slot] = price;
  breaches[slot] = breach;
  dearerThan[slot] = limit;
}

import { spareAt } from "./clearance-field.ts";
import { keepPrice, knownBreach, knownPrice } from "./leg-memo.ts";
import { readAlong } from "./search-ground.ts";
import type { Obstacle, SearchTerms } from "./search-terms.ts";
import { legNearest, type Nearest, signedDistance } from "./shape.ts";

/**
 * Price of breaking a rule, m3 per metre of line: a first part for any breach, and one that grows with
 * its depth, so that a line that breaks a rule still knows which way is better.
 */
const BREACH_PRICE = 40;
const BREACH_DEPTH_PRICE = 2000;
const GAUSS = 0.5 / Math.sqrt(3);
/** Depth a sample without ground, or a crossed obstacle, counts as, metres. */
const BLIND_DEPTH_M = 1;

/** What breaches added to the last leg priced, m3. */
let lastBreach = 0;

/** Part of a leg's price that comes from breaking rules, m3; 0 when it keeps them all. */
export function legBreach(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): number {
  legPrice(terms, x1, y1, x2, y2, Infinity);
  return lastBreach;
}

/** Whether a leg keeps all rules. */
export function legIsClear(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): boolean {
  const known = knownPrice(terms, x1, y1, x2, y2, Infinity);
  if (!Number.isNaN(known)) return knownBreach() === 0;
  mostBreach = 0;
  const price = workedOut(terms, x1, y1, x2, y2, Infinity);
  mostBreach = Infinity;
  if (lastBreach === 0) keepPrice(price, 0, Infinity);
  return lastBreach === 0;
}

/** Breaches of the leg in hand are added up until they pass this, as a sum over its samples. */
let mostBreach = Infinity;

/** Heights of the samples of the leg in hand; grows as legs grow. */
let heights = new Float64Array(1024);

/**
 * Price of a straight leg, m3: the integral of the price per metre by two-point Gauss over stretches of
 * at most twice the sample spacing, on bilinear ground. Breaking a rule (clearance that grows with the
 * half base, missing ground under the line or its base, leaving the window) costs far more than any levee.
 * @returns Infinity as soon as the price is known to pass `limit`
 */
export function legPrice(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  limit: number,
): number {
  const known = knownPrice(terms, x1, y1, x2, y2, limit);
  if (!Number.isNaN(known)) {
    lastBreach = knownBreach();
    return known;
  }
  const price = workedOut(terms, x1, y1, x2, y2, limit);
  keepPrice(price, lastBreach, limit);
  return price;
}

function workedOut(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  limit: number,
): number {
  const dx = x2 - x1;
  const dy = y2 - y1;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length < 1e-9) {
    lastBreach = 0;
    return 0;
  }
  const { ground, crest, table } = terms;
  const { heightM, columns, rows, baseM } = ground;
  const { price, perM } = table;
  const lastPrice = price.length - 2;
  const stretches = Math.ceil(length / (2 * terms.sampleM));
  const samples = 2 * stretches;
  if (samples > heights.length) heights = new Float64Array(2 * samples);
  const weight = length / samples;
  const stop = limit / weight;
  // position in the lattice and crest at t along the leg: u1 + t du, v1 + t dv, crest1 + t dCrest
  const perCell = 1 / ground.spacingM;
  const u1 = (x1 - ground.x0M) * perCell;
  const v1 = (y1 - ground.y0M) * perCell;
  const du = dx * perCell;
  const dv = dy * perCell;
  const onLattice =
    Math.min(u1, v1, u1 + du, v1 + dv) >= 0 &&
    Math.max(u1, u1 + du) < columns - 1 &&
    Math.max(v1, v1 + dv) < rows - 1;
  if (onLattice) readAlong(ground, u1, v1, u1 + du, v1 + dv);
  const plane = crest.plane;
  const crest1 = plane ? plane[0] + plane[1] * x1 + plane[2] * y1 - baseM : 0;
  const dCrest = plane ? plane[1] * dx + plane[2] * dy : 0;
  // Gauss points of a stretch: its middle -+ half its length / sqrt(3)
  const step = 1 / stretches;
  const early = (0.5 - GAUSS) * step;
  const late = (0.5 + GAUSS) * step;
  let sum = 0;
  let blind = 0;
  let highest = 0;
  for (let i = 0; i < samples; i++) {
    const t = (i >> 1) * step + ((i & 1) === 0 ? early : late);
    let height = Number.NaN;
    if (onLattice) {
      const u = u1 + t * du;
      const v = v1 + t * dv;
      const column = u | 0;
      const row = v | 0;
      const at = row * columns + column;
      const fx = u - column;
      const h00 = heightM[at]!;
      const h01 = heightM[at + columns]!;
      const south = h00 + fx * (heightM[at + 1]! - h00);
      const north = h01 + fx * (heightM[at + columns + 1]! - h01);
      const crestM = plane ? crest1 + t * dCrest : crest.at(x1 + t * dx, y1 + t * dy) - baseM;
      height = crestM - south - (v - row) * (north - south);
    }
    heights[i] = height;
    if (height <= 0) {
      sum += price[0]!;
    } else if (height > 0) {
      if (height > highest) highest = height;
      const k = height * perM;
      let j = k | 0;
      if (j > lastPrice) j = lastPrice;
      sum += price[j]! + (k - j) * (price[j + 1]! - price[j]!);
    } else {
      blind += BREACH_PRICE + BREACH_DEPTH_PRICE * BLIND_DEPTH_M;
    }
    if (sum + blind > stop) return Infinity;
  }
  const most = Math.min(mostBreach, stop - sum - blind);
  const breach = blind + breachPrice(terms, x1, y1, x2, y2, samples, highest, most);
  lastBreach = breach * weight;
  const total = (sum + breach) * weight;
  return total > limit ? Infinity : total;
}

/** True when a leg surely comes too close to a structure: a quick look at three of its points. */
export function surelyTooClose(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): boolean {
  const { obstacles } = terms;
  for (let k = 0; k < obstacles.length; k++) {
    const { field, shape, clearM } = obstacles[k]!;
    if (!field) continue;
    if (Math.min(x1, x2) > shape.maxX + clearM || Math.max(x1, x2) < shape.minX - clearM) continue;
    if (Math.min(y1, y2) > shape.maxY + clearM || Math.max(y1, y2) < shape.minY - clearM) continue;
    for (let share = 0.25; share < 1; share += 0.25) {
      if (spareAt(field, x1 + share * (x2 - x1), y1 + share * (y2 - y1)) < -0.02) return true;
    }
  }
  return false;
}

/**
 * Price of the breaches along the leg whose heights are in hand, as a sum over its samples.
 * @param most where they pass this, so much is enough
 */
function breachPrice(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  samples: number,
  highest: number,
  most: number,
): number {
  const reach = halfBase(terms, highest);
  const minX = Math.min(x1, x2);
  const minY = Math.min(y1, y2);
  const maxX = Math.max(x1, x2);
  const maxY = Math.max(y1, y2);
  let breach = offWindow(terms, x1, y1, x2, y2, samples);
  if (terms.ground.seen.holes) breach += baseOverHoles(terms, x1, y1, x2, y2, samples);
  const { obstacles } = terms;
  for (let k = 0; k < obstacles.length && breach <= most; k++) {
    const { shape, clearM } = obstacles[k]!;
    const need = clearM + reach;
    if (minX > shape.maxX + need || maxX < shape.minX - need) continue;
    if (minY > shape.maxY + need || maxY < shape.minY - need) continue;
    breach += closeTo(terms, obstacles[k]!, x1, y1, x2, y2, samples, reach, most - breach);
  }
  return breach;
}

/**
 * Samples too close to one obstacle. From a sample with clearance to spare the walk goes on by as many
 * samples as that spare surely reaches over.
 * @param reach the widest half base along the leg, metres
 */
function closeTo(
  terms: SearchTerms,
  { shape, clearM, field }: Obstacle,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  samples: number,
  reach: number,
  most: number,
): number {
  const exact = !field || reach >= field.beyondM;
  const dx = x2 - x1;
  const dy = y2 - y1;
  // neighbouring Gauss points are at most 2 / sqrt(3) of their mean spacing apart
  const perM = samples / Math.sqrt(dx * dx + dy * dy) / 1.1548;
  let breach = 0;
  let deepest = 0;
  for (let i = 0; i < samples; ) {
    const t = sampleShare(i, samples);
    const x = x1 + t * dx;
    const y = y1 + t * dy;
    const spare = exact ? signedDistance(shape, x, y) - clearM : spareAt(field, x, y);
    if (spare < reach) {
      const depth = halfBase(terms, heights[i]!) - spare;
      if (depth > 0) {
        breach += BREACH_PRICE + BREACH_DEPTH_PRICE * depth;
        if (breach > most) return breach;
        if (depth > deepest) deepest = depth;
      }
      i++;
    } else {
      i += 1 + (((spare - reach) * perM) | 0);
    }
  }
  if (field || deepest > 0) return breach;
  legNearest(nearest, shape, x1, y1, x2, y2);
  const at = nearest.share;
  const depth =
    clearM + halfBase(terms, heightOn(terms, x1 + at * dx, y1 + at * dy)) - nearest.distance;
  if (depth > 1e-9) breach += BREACH_PRICE + BREACH_DEPTH_PRICE * depth;
  if (nearest.distance === 0) breach += samples * BREACH_DEPTH_PRICE * BLIND_DEPTH_M;
  return breach;
}

const nearest: Nearest = { distance: 0, share: 0 };

function heightOn({ crest, ground }: SearchTerms, x: number, y: number): number {
  return crest.at(x, y) - ground.heightAt(x, y);
}

function sampleShare(i: number, samples: number): number {
  return ((i >> 1) + 0.5 + ((i & 1) === 0 ? -GAUSS : GAUSS)) * (2 / samples);
}

function halfBase(terms: SearchTerms, heightM: number): number {
  if (!(heightM > 0)) return terms.table.halfBaseM[0]!;
  const { halfBaseM, perM } = terms.table;
  const k = heightM * perM;
  let j = k | 0;
  if (j > halfBaseM.length - 2) j = halfBaseM.length - 2;
  return halfBaseM[j]! + (k - j) * (halfBaseM[j + 1]! - halfBaseM[j]!);
}

function offWindow(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  samples: number,
): number {
  const { box, windowShape } = terms;
  const out =
    Math.max(0, box.minX - Math.min(x1, x2), Math.max(x1, x2) - box.maxX) +
    Math.max(0, box.minY - Math.min(y1, y2), Math.max(y1, y2) - box.maxY);
  if (out > 0) return samples * (BREACH_PRICE + BREACH_DEPTH_PRICE * out);
  if (!windowShape) return 0;
  let breach = 0;
  for (let i = 0; i < samples; i++) {
    const t = sampleShare(i, samples);
    const depth = signedDistance(windowShape, x1 + t * (x2 - x1), y1 + t * (y2 - y1));
    if (depth > 0) breach += BREACH_PRICE + BREACH_DEPTH_PRICE * depth;
  }
  return breach;
}

/** Samples whose base reaches over missing ground on either side. */
function baseOverHoles(
  terms: SearchTerms,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  samples: number,
): number {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const leftX = -(y2 - y1) / length;
  const leftY = (x2 - x1) / length;
  let breach = 0;
  for (let i = 0; i < samples; i++) {
    const half = halfBase(terms, heights[i]!) + terms.holeMarginM;
    const t = sampleShare(i, samples);
    const x = x1 + t * (x2 - x1);
    const y = y1 + t * (y2 - y1);
    let depth = 0;
    for (let share = 1; share > 0; share -= 0.25) {
      const left = terms.ground.heightAt(x + share * half * leftX, y + share * half * leftY);
      const right = terms.ground.heightAt(x - share * half * leftX, y - share * half * leftY);
      if (Number.isNaN(left) || Number.isNaN(right)) depth = half * (1.25 - share);
    }
    if (depth > 0) breach += BREACH_PRICE + BREACH_DEPTH_PRICE * depth;
  }
  return breach;
}

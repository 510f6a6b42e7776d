import { legClass } from "./leg-class.ts";
import { legPrice, surelyTooClose } from "./leg-price.ts";
import { SHAPING } from "./progress.ts";
import type { SearchTerms } from "./search-terms.ts";
import type { SearchStep } from "./types.ts";

/** Longest run of points that one leg may stand for. */
const LONGEST_SPAN = 120;
/** Longest leg tried, metres: longer ones come when corners are dropped. */
const LONGEST_LEG_M = 80;
/** Legs are sampled this many times as far apart as when they are priced for good. */
const ROUGH = 2;
/** Runs longer than these are tried only every second, every fourth point. */
const HALVED_FROM = 16;
const QUARTERED_FROM = 40;
/** Points are left out where the line turns by no more than this (cross product of unit steps). */
const STRAIGHT = 1e-6;
/** Of more points than this only every second, third ... is kept. */
const MOST_POINTS = 600;
/** Points no further apart than this are kept even where the line is straight, metres. */
const KEPT_EVERY_M = 4;

/**
 * The corners, out of a ring's points, with the least price plus `cornerPrice` for each: by dynamic
 * programming over the closed list, begun at one point and repeated from a corner half way round. A leg is
 * taken only if it passes every anchor on the same side as the points it stands for.
 * @param all the ring's points, x and y interleaved, metres
 * @param outOfTime when true it is not repeated
 */
export function* simplifyRing(
  terms: SearchTerms,
  all: Float64Array,
  cornerPrice: number,
  outOfTime: () => boolean,
): Generator<SearchStep, Float64Array> {
  const points = withoutStraights(all);
  const rough = { ...terms, sampleM: ROUGH * terms.sampleM };
  const first = yield* chosenFrom(rough, points, cornerPrice);
  if (first.length < 3) return points;
  if (outOfTime()) return cornersAt(points, first);
  const turned = startingAt(points, first[first.length >> 1]!);
  return cornersAt(turned, yield* chosenFrom(rough, turned, cornerPrice));
}

function cornersAt(points: Float64Array, chosen: readonly number[]): Float64Array {
  const corners = new Float64Array(2 * chosen.length);
  chosen.forEach((at, k) => {
    corners[2 * k] = points[2 * at]!;
    corners[2 * k + 1] = points[2 * at + 1]!;
  });
  return corners;
}

/** The points at which the line turns, and some between. */
function withoutStraights(all: Float64Array): Float64Array {
  const count = all.length / 2;
  const kept: number[] = [];
  let lastX = Infinity;
  let lastY = Infinity;
  for (let k = 0; k < count; k++) {
    const [p, n] = [(k + count - 1) % count, (k + 1) % count];
    const [x, y] = [all[2 * k]!, all[2 * k + 1]!];
    const [ax, ay] = [x - all[2 * p]!, y - all[2 * p + 1]!];
    const [bx, by] = [all[2 * n]! - x, all[2 * n + 1]! - y];
    const turn = Math.abs(ax * by - ay * bx);
    const straight = turn <= STRAIGHT * Math.hypot(ax, ay) * Math.hypot(bx, by);
    if (straight && Math.hypot(x - lastX, y - lastY) < KEPT_EVERY_M) continue;
    kept.push(x, y);
    lastX = x;
    lastY = y;
  }
  const every = Math.ceil(kept.length / (2 * MOST_POINTS));
  return Float64Array.from(kept.filter((_, k) => (k >> 1) % every === 0));
}

/** The same ring, begun at another of its points. */
function startingAt(points: Float64Array, first: number): Float64Array {
  const turned = new Float64Array(points.length);
  turned.set(points.subarray(2 * first));
  turned.set(points.subarray(0, 2 * first), points.length - 2 * first);
  return turned;
}

function strideAt(span: number): number {
  if (span < HALVED_FROM) return 1;
  return span < QUARTERED_FROM ? 2 : 4;
}

/** Indices of the points kept, the first among them. */
function* chosenFrom(
  terms: SearchTerms,
  points: Float64Array,
  cornerPrice: number,
): Generator<SearchStep, number[]> {
  const count = points.length / 2;
  const x = (k: number) => points[2 * (k % count)]!;
  const y = (k: number) => points[2 * (k % count) + 1]!;
  const passed = new Int32Array(count + 1);
  for (let k = 0; k < count; k++) {
    passed[k + 1] = passed[k]! ^ legClass(terms, x(k), y(k), x(k + 1), y(k + 1));
  }
  const best = new Float64Array(count + 1).fill(Infinity);
  const from = new Int32Array(count + 1);
  best[0] = 0;
  for (let j = 1; j <= count; j++) {
    yield SHAPING;
    for (let i = j - 1; i >= Math.max(0, j - LONGEST_SPAN); i -= strideAt(j - i)) {
      const limit = best[j]! - best[i]! - cornerPrice;
      if (!(limit > 0)) continue;
      if (i < j - 1) {
        if (Math.hypot(x(j) - x(i), y(j) - y(i)) > LONGEST_LEG_M) break;
        const bits = legClass(terms, x(i), y(i), x(j), y(j));
        if (bits !== (passed[i]! ^ passed[j]!)) continue;
        if (surelyTooClose(terms, x(i), y(i), x(j), y(j))) continue;
      }
      const price = legPrice(terms, x(i), y(i), x(j), y(j), limit);
      if (price >= limit) continue;
      best[j] = best[i]! + price + cornerPrice;
      from[j] = i;
    }
  }
  const kept: number[] = [];
  for (let j = count; j > 0; j = from[j]!) kept.push(from[j]!);
  return kept.reverse();
}

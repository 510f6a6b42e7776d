import { stepFor } from "../../shared/section.ts";
import { type BentLine, bentLine, cornersOf, NO_PINS, totalPrice } from "./bent-line.ts";
import { clearanceField } from "./clearance-field.ts";
import { cutAtCrest } from "./free-ground.ts";
import { ringClass } from "./leg-class.ts";
import { type LineWalk, walkLine } from "./line-figures.ts";
import type { PricedRing } from "./line-from-loop.ts";
import { crossingLegs } from "./line-shape.ts";
import { SHAPING } from "./progress.ts";
import type { SearchTerms } from "./search-terms.ts";
import { contains, signedArea } from "./shape.ts";
import { radii, slideSteps } from "./slide-corners.ts";
import type { FoundRing, Point, SearchStep } from "./types.ts";

const MOST_REPAIRS = 4;
/** Added to a clearance found wanting, metres. */
const REPAIR_MARGIN_M = 0.005;
/** Most that better placed toes may add to the price, as a factor. */
const WORTH_PRICE = 1.1;
/** The same of ground under the base that has data. */
const WORTH_DATA = 1.5;
const REPAIR_FROM_M = 0.5;
const REPAIR_TO_M = 0.01;
/** Length over the limit that is not worth a flag, metres. */
const NEGLIGIBLE_M = 0.05;

/**
 * Checks a ring on the ground itself and completes it. Where it comes closer to an obstacle than the rule
 * says, or its toe does because the ground falls toward the obstacle, that clearance is raised by what is
 * missing and the corners slide again, and so where its base reaches over missing ground; the ring that keeps the rule
 * and has its toes best placed is taken.
 * @param outOfTime when true no more is mended
 */
export function* finishRing(
  terms: SearchTerms,
  ring: PricedRing,
  outOfTime: () => boolean,
): Generator<SearchStep, FoundRing> {
  let best = checked(terms, { ...ring, corners: uncrossed(terms, ring.corners) });
  let next = best;
  let strict = terms;
  for (
    let repair = 0;
    repair < MOST_REPAIRS &&
    (next.blindM > 0 || least(next.toeSpareM, next.ruleSpareM) < 0) &&
    !outOfTime();
    repair++
  ) {
    strict = withMoreClearance(strict, next);
    const line = bentLine(strict, interleaved(next.corners), true, NO_PINS);
    yield* slideSteps(strict, line, radii(REPAIR_FROM_M, REPAIR_TO_M), { outOfTime });
    next = checked(terms, { corners: cornersOf(line), priceM3: priceOf(terms, line) });
    if (betterPlaced(next, best)) best = next;
  }
  yield SHAPING;
  const { corners, figures } = best;
  const { structures } = terms.request;
  const inside = (k: number) => contains(corners, ...terms.obstacles[k]!.shape.inside);
  const { pieces, free } = cutAtCrest(terms, corners);
  return {
    corners,
    encloses: structures.map((_, k) => k).filter(inside),
    enclosedM2: signedArea(corners),
    figures,
    priceM3: best.priceM3,
    overLimit: figures.overLimitM > NEGLIGIBLE_M,
    spareClearanceM: least(best.toeSpareM.subarray(0, structures.length)),
    blindM: best.blindM,
    pieces,
    free,
  };
}

interface CheckedRing extends LineWalk {
  readonly corners: readonly Point[];
  readonly priceM3: number;
}

function checked(terms: SearchTerms, ring: PricedRing): CheckedRing {
  const corners = counterClockwise(pointsOf(ring.corners));
  return { corners, priceM3: ring.priceM3, ...walkLine(terms, corners, true) };
}

/**
 * Keeping the rule comes first, then ground under the whole base, then room at the toes; none at a price that only a
 * broken rule has.
 */
function betterPlaced(next: CheckedRing, best: CheckedRing): boolean {
  const rule = Math.min(0, least(next.ruleSpareM)) - Math.min(0, least(best.ruleSpareM));
  if (rule !== 0) return rule > 0;
  if (next.blindM !== best.blindM) {
    return next.blindM < best.blindM && next.priceM3 < best.priceM3 * WORTH_DATA;
  }
  return least(next.toeSpareM) > least(best.toeSpareM) && next.priceM3 < best.priceM3 * WORTH_PRICE;
}

function least(...lists: Float64Array[]): number {
  return lists.reduce((low, list) => list.reduce((a, b) => Math.min(a, b), low), Infinity);
}

function priceOf(terms: SearchTerms, line: BentLine): number {
  return totalPrice(bentLine(terms, cornersOf(line), true, NO_PINS));
}

function pointsOf(corners: Float64Array): Point[] {
  const points: Point[] = [];
  for (let k = 0; k < corners.length; k += 2) points.push([corners[k]!, corners[k + 1]!]);
  return points;
}

function interleaved(points: readonly Point[]): Float64Array {
  return Float64Array.from(points.flat());
}

function counterClockwise(corners: Point[]): Point[] {
  return signedArea(corners) < 0 ? corners.reverse() : corners;
}

function withMoreClearance(terms: SearchTerms, walk: LineWalk): SearchTerms {
  const { ruleSpareM, toeSpareM, blindM } = walk;
  const obstacles = terms.obstacles.map((each, k) => {
    const missing = -Math.min(ruleSpareM[k]!, toeSpareM[k]!);
    if (!(missing > 0)) return each;
    const clearM = each.clearM + missing + REPAIR_MARGIN_M;
    return { ...each, clearM, field: clearanceField(each.shape, clearM) };
  });
  const holeMarginM = terms.holeMarginM + (blindM > 0 ? stepFor(terms.request.ground) : 0);
  return { ...terms, obstacles, holeMarginM };
}

/** Cuts off loops of a line that crosses itself, as long as they enclose nothing that matters. */
function uncrossed(terms: SearchTerms, corners: Float64Array): Float64Array {
  let points = pointsOf(corners);
  for (let crossing = crossingLegs(points); crossing; crossing = crossingLegs(points)) {
    const { first, second, at } = crossing;
    const loop = [...points.slice(first + 1, second + 1), at];
    const rest = [...points.slice(0, first + 1), at, ...points.slice(second + 1)];
    const matters = ringClass(terms, interleaved(loop)) !== 0;
    points = matters ? loop : rest;
  }
  return interleaved(points);
}

import { bentLine, cornersOf, NO_PINS, totalPrice } from "./bent-line.ts";
import { clearanceField } from "./clearance-field.ts";
import { cutAtCrest } from "./free-ground.ts";
import { ringClass } from "./leg-class.ts";
import { walkLine } from "./line-figures.ts";
import type { PricedRing } from "./line-from-loop.ts";
import { crossingLegs } from "./line-shape.ts";
import { contains, signedArea } from "./shape.ts";
import type { SiteTerms } from "./site-terms.ts";
import { radii, slideCorners } from "./slide-corners.ts";
import type { FoundRing, Point } from "./types.ts";

const MOST_REPAIRS = 4;
/** Added to a clearance found wanting, metres. */
const REPAIR_MARGIN_M = 0.005;
const REPAIR_FROM_M = 0.5;
const REPAIR_TO_M = 0.01;
/** Length over the limit that is not worth a flag, metres. */
const NEGLIGIBLE_M = 0.05;

/**
 * Checks a ring on the ground itself and completes it. Where ground falling toward a structure brings the
 * toe closer than the level section said, the clearance is raised by what is missing and the corners slide
 * again.
 */
export function finishRing(terms: SiteTerms, ring: PricedRing): FoundRing {
  let priced: PricedRing = { ...ring, corners: uncrossed(terms, ring.corners) };
  let corners = counterClockwise(pointsOf(priced.corners));
  let walk = walkLine(terms, corners, true);
  let strict = terms;
  for (let repair = 0; repair < MOST_REPAIRS && walk.spareM.some((each) => each < 0); repair++) {
    strict = withMoreClearance(strict, walk.spareM);
    const line = bentLine(strict, priced.corners, true, NO_PINS);
    slideCorners(strict, line, radii(REPAIR_FROM_M, REPAIR_TO_M));
    priced = { corners: cornersOf(line), priceM3: totalPrice(line) };
    corners = counterClockwise(pointsOf(priced.corners));
    walk = walkLine(terms, corners, true);
  }
  const { structures } = terms.request;
  const inside = (k: number) => contains(corners, ...terms.obstacles[k]!.shape.inside);
  const { pieces, free } = cutAtCrest(terms, corners);
  return {
    corners,
    encloses: structures.map((_, k) => k).filter(inside),
    enclosedM2: signedArea(corners),
    figures: walk.figures,
    priceM3: priced.priceM3,
    overLimit: walk.figures.overLimitM > NEGLIGIBLE_M,
    spareClearanceM: walk.spareM.reduce((least, each) => Math.min(least, each), Infinity),
    blindM: walk.blindM,
    pieces,
    free,
  };
}

export function pointsOf(corners: Float64Array): Point[] {
  const points: Point[] = [];
  for (let k = 0; k < corners.length; k += 2) points.push([corners[k]!, corners[k + 1]!]);
  return points;
}

export function interleaved(points: readonly Point[]): Float64Array {
  return Float64Array.from(points.flat());
}

function counterClockwise(corners: Point[]): Point[] {
  return signedArea(corners) < 0 ? corners.reverse() : corners;
}

function withMoreClearance(terms: SiteTerms, spareM: Float64Array): SiteTerms {
  const obstacles = terms.obstacles.map((each, k) => {
    const missing = k < spareM.length ? -spareM[k]! : 0;
    if (!(missing > 0)) return each;
    const clearM = each.clearM + missing + REPAIR_MARGIN_M;
    return { ...each, clearM, field: clearanceField(each.shape, clearM) };
  });
  return { ...terms, obstacles };
}

/** Cuts off loops of a line that crosses itself, as long as they enclose nothing that matters. */
function uncrossed(terms: SiteTerms, corners: Float64Array): Float64Array {
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

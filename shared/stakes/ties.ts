import { FOOT_M } from "../constants.ts";
import type { Structure } from "../plan.ts";
import type { PlanPlane } from "../plan-plane.ts";
import {
  distanceTo,
  isInside,
  type PlanePolygon,
  piecesMeet,
  planePolygon,
} from "../plane-polygon.ts";
import { namedCorners } from "./corner-names.ts";

/** Longest tape from a corner to a stake, metres (125 ft). Source: judgement. */
export const LONGEST_TIE_M = 125 * FOOT_M;
/** Angles between which two tapes cross well enough to fix a point, degrees. Source: common practice of ties. */
const TIE_ANGLES_DEG = { least: 30, most: 150 } as const;
/** A sight line ends this far before its own corner, metres, so that the corner's own walls do not count. */
const BEFORE_CORNER_M = 0.02;

/** The tape from one corner of a building to a stake. */
interface Tie {
  /** `H1`. */
  readonly corner: string;
  readonly distanceM: number;
}

/** The two tapes that fix a stake, the shorter first. */
export type TiePair = readonly [Tie, Tie];

interface Corner extends Tie {
  readonly x: number;
  readonly y: number;
}

/**
 * Finds, for a place on the plan plane, the two corners of one building whose tapes fix it best: both in sight, no
 * longer than 125 ft, crossing at 30 to 150 degrees; of several the pair whose tapes leave least doubt (an error in
 * proportion to its length on either, over the sine of the angle). Null where no building gives two.
 */
export function tieFinder(
  structures: readonly Structure[],
  plane: PlanPlane,
): (x: number, y: number) => TiePair | null {
  const walls = structures.map(({ outline }) => planePolygon(outline, plane));
  const named = namedCorners(structures);
  const corners = structures.map(({ id }) =>
    named.filter(({ structureId }) => structureId === id).map(({ name }) => name),
  );
  return (x, y) => {
    const near = walls.filter((each) => distanceTo(each, x, y) <= LONGEST_TIE_M);
    if (near.some((each) => isInside(each, x, y))) return null;
    const pairs = walls.flatMap((wall, i) =>
      near.includes(wall) ? pairsOf(cornersInSight(wall, corners[i]!, near, x, y), x, y) : [],
    );
    const [best] = pairs.sort((a, b) => a.doubt - b.doubt);
    return best ? best.tie : null;
  };
}

function cornersInSight(
  { xM, yM }: PlanePolygon,
  names: readonly string[],
  walls: readonly PlanePolygon[],
  x: number,
  y: number,
): Corner[] {
  return names.flatMap((corner, i) => {
    const at = { corner, x: xM[i]!, y: yM[i]! };
    const distanceM = Math.hypot(at.x - x, at.y - y);
    if (distanceM > LONGEST_TIE_M || distanceM < BEFORE_CORNER_M) return [];
    const share = 1 - BEFORE_CORNER_M / distanceM;
    const [endX, endY] = [x + share * (at.x - x), y + share * (at.y - y)];
    const isHidden = walls.some((wall) => crossesWall(wall, x, y, endX, endY));
    return isHidden ? [] : [{ ...at, distanceM }];
  });
}

function crossesWall(
  { xM, yM }: PlanePolygon,
  x: number,
  y: number,
  endX: number,
  endY: number,
): boolean {
  return xM.some((_, i) => {
    const j = (i + 1) % xM.length;
    return piecesMeet(x, y, endX, endY, xM[i]!, yM[i]!, xM[j]!, yM[j]!) !== null;
  });
}

function pairsOf(corners: readonly Corner[], x: number, y: number) {
  const pairs: { readonly tie: TiePair; readonly doubt: number }[] = [];
  corners.forEach((a, i) => {
    for (const b of corners.slice(i + 1)) {
      const crossing = Math.abs(
        Math.atan2(
          (a.x - x) * (b.y - y) - (a.y - y) * (b.x - x),
          (a.x - x) * (b.x - x) + (a.y - y) * (b.y - y),
        ),
      );
      const degrees = (crossing * 180) / Math.PI;
      if (degrees < TIE_ANGLES_DEG.least || degrees > TIE_ANGLES_DEG.most) continue;
      const doubt = Math.hypot(a.distanceM, b.distanceM) / Math.sin(crossing);
      const [first, second] = a.distanceM <= b.distanceM ? [a, b] : [b, a];
      pairs.push({ tie: [tieOf(first), tieOf(second)], doubt });
    }
  });
  return pairs;
}

function tieOf({ corner, distanceM }: Corner): Tie {
  return { corner, distanceM };
}

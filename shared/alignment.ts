import { refusal } from "./failure.ts";
import type { Alignment } from "./plan.ts";
import type { PlanPlane } from "./plan-plane.ts";

/**
 * An alignment laid on the plan plane: straight legs between corners, chainage along them. A ring has a
 * last leg back to its first corner. Legs without length (two corners at one place) stay in the count.
 */
export interface PlaneLine {
  readonly closed: boolean;
  /** Corners, metres; for a ring the first one again at the end: legs + 1 values. */
  readonly xM: Float64Array;
  readonly yM: Float64Array;
  /** Chainage at the start of each leg and, last, the length: legs + 1 values. */
  readonly chainageM: Float64Array;
  readonly legs: number;
  readonly lengthM: number;
}

/** A place on a line: on the plane, with the unit normal to the left of chainage. */
export interface PlaceOnLine {
  readonly leg: number;
  readonly xM: number;
  readonly yM: number;
  readonly leftX: number;
  readonly leftY: number;
}

const LEAST_LENGTH_M = 0.1;

/**
 * Lays an alignment on the plan plane. Lengths are the ellipsoid's to 1 part in a million within 9 km of
 * the plane's origin. Throws a `Refusal` when there are too few corners or no length.
 */
export function layLine(alignment: Alignment, plane: PlanPlane): PlaneLine {
  const closed = alignment.kind === "ring";
  const least = closed ? 3 : 2;
  if (alignment.corners.length < least) {
    const { kind, name, corners } = alignment;
    throw refusal("line/too-few-corners", { kind, name, corners: corners.length, least });
  }
  const corners = closed ? [...alignment.corners, alignment.corners[0]!] : alignment.corners;
  const xM = new Float64Array(corners.length);
  const yM = new Float64Array(corners.length);
  const chainageM = new Float64Array(corners.length);
  for (const [i, corner] of corners.entries()) {
    const [x, y] = plane.toPlane(corner);
    xM[i] = x;
    yM[i] = y;
    if (i > 0) chainageM[i] = chainageM[i - 1]! + Math.hypot(x - xM[i - 1]!, y - yM[i - 1]!);
  }
  const lengthM = chainageM[corners.length - 1]!;
  if (!(lengthM > LEAST_LENGTH_M)) {
    throw refusal("line/no-length", { name: alignment.name });
  }
  return { closed, xM, yM, chainageM, legs: corners.length - 1, lengthM };
}

/** Chainage of each corner, metres; one value per corner of the alignment. */
export function cornerChainages(line: PlaneLine): number[] {
  return Array.from(line.closed ? line.chainageM.subarray(0, line.legs) : line.chainageM);
}

/**
 * The place at a chainage, kept inside the line. At a corner it belongs to the leg that leaves it, at the
 * end of the line to the last leg.
 */
export function placeAt(line: PlaneLine, chainageM: number): PlaceOnLine {
  const at = Math.min(Math.max(chainageM, 0), line.lengthM);
  let leg = 0;
  for (let i = 0; i < line.legs; i++) {
    const fromM = line.chainageM[i]!;
    const isLeg = line.chainageM[i + 1]! > fromM;
    if (isLeg && fromM <= at + 1e-9) leg = i;
  }
  const lengthM = line.chainageM[leg + 1]! - line.chainageM[leg]!;
  const eastward = (line.xM[leg + 1]! - line.xM[leg]!) / lengthM;
  const northward = (line.yM[leg + 1]! - line.yM[leg]!) / lengthM;
  const alongM = at - line.chainageM[leg]!;
  return {
    leg,
    xM: line.xM[leg]! + eastward * alongM,
    yM: line.yM[leg]! + northward * alongM,
    leftX: -northward,
    leftY: eastward,
  };
}

/** Area inside a ring with its sign: positive when the corners run counter-clockwise; 0 for a line. m2. */
export function signedAreaM2(line: PlaneLine): number {
  if (!line.closed) return 0;
  let twice = 0;
  for (let i = 0; i < line.legs; i++) {
    twice += (line.xM[i]! - line.xM[0]!) * (line.yM[i + 1]! - line.yM[0]!);
    twice -= (line.xM[i + 1]! - line.xM[0]!) * (line.yM[i]! - line.yM[0]!);
  }
  return twice / 2;
}

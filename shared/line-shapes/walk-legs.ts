import type { Position } from "geojson";
import type { Walk } from "../sizing-types.ts";
import { moved, type Place } from "./offset.ts";

/** Turn of one facet of a rounded outer corner, radians. */
const FACET = Math.PI / 12;
/** A corner that turns less than this has no gap to fill, radians. */
const STRAIGHT = 0.01;

/** The place of a sample. */
export function place(walk: Walk, i: number): Place {
  return [walk.lonLat[2 * i]!, walk.lonLat[2 * i + 1]!];
}

/** A stretch of one kind on one leg; samples `from` to `to`, both included. */
export interface LegRun<Kind> {
  readonly kind: Kind;
  readonly from: number;
  readonly to: number;
  /** Index of the sample whose leg, and so whose normal, the run lies on. */
  readonly normalOf: number;
}

/** The walk as stretches of one kind on one leg; `kindBetween` is asked for the step from sample i to the next. */
export function legRuns<Kind>(walk: Walk, kindBetween: (i: number) => Kind): LegRun<Kind>[] {
  const found: LegRun<Kind>[] = [];
  for (let i = 0; i + 1 < walk.chainageM.length; i++) {
    if (!(walk.chainageM[i + 1]! > walk.chainageM[i]!)) continue;
    const normalOf = legOf(walk, i);
    const kind = kindBetween(i);
    const last = found.at(-1);
    const goesOn =
      last !== undefined &&
      last.to === i &&
      last.kind === kind &&
      walk.leg[last.normalOf] === walk.leg[normalOf];
    if (goesOn) found[found.length - 1] = { ...last, to: i + 1 };
    else found.push({ kind, from: i, to: i + 1, normalOf });
  }
  return found;
}

/** The sample of a pair that lies on the leg between them: the one whose normal stands square to it. */
function legOf(walk: Walk, i: number): number {
  if (walk.leg[i] === walk.leg[i + 1]) return i;
  const alongEast = (walk.lonLat[2 * i + 2]! - walk.lonLat[2 * i]!) * Math.cos(latitude(walk, i));
  const alongNorth = walk.lonLat[2 * i + 3]! - walk.lonLat[2 * i + 1]!;
  const skew = (k: number) =>
    Math.abs(walk.leftNormal[2 * k]! * alongEast + walk.leftNormal[2 * k + 1]! * alongNorth);
  return skew(i) <= skew(i + 1) ? i : i + 1;
}

function latitude(walk: Walk, i: number): number {
  return (walk.lonLat[2 * i + 1]! * Math.PI) / 180;
}

/** Pairs of samples on either side of a corner, a ring's closing corner included. */
export function corners(walk: Walk, ring: boolean): [number, number][] {
  const pairs: [number, number][] = [];
  const count = walk.chainageM.length;
  for (let i = 0; i + 1 < count; i++) {
    if (walk.leg[i] !== walk.leg[i + 1]) pairs.push([i, i + 1]);
  }
  if (ring && count > 2) pairs.push([count - 1, 0]);
  return pairs;
}

/** The outer gap that two straight strips leave at a corner, filled by a fan between their normals. */
export function cornerWedge(walk: Walk, before: number, after: number): Position[] | null {
  const arc = cornerArc(walk, before, after);
  if (!arc) return null;
  const at = cornerPlace(walk, before, after);
  return [at, ...arc, at];
}

/** The outer toe between the two strips that meet at a corner; null where they leave no gap. */
export function cornerArc(walk: Walk, before: number, after: number): Position[] | null {
  const turn = turnAt(walk, before, after);
  if (Math.abs(turn) < STRAIGHT) return null;
  const at = cornerPlace(walk, before, after);
  const from = bearingOf(walk, before);
  const toes = turn < 0 ? walk.toeLeftM : walk.toeRightM;
  const side = turn < 0 ? 1 : -1;
  const [fromM, toM] = [toes[before]! || 0, toes[after]! || 0];
  if (!(fromM + toM > 0)) return null;
  const facets = Math.max(1, Math.ceil(Math.abs(turn) / FACET));
  return Array.from({ length: facets + 1 }, (_, k) => {
    const angle = from + (turn * k) / facets;
    const outM = side * (fromM + ((toM - fromM) * k) / facets);
    return moved(at, Math.cos(angle) * outM, Math.sin(angle) * outM);
  });
}

/** How far the line turns between two samples, radians, to the left positive. */
export function turnAt(walk: Walk, before: number, after: number): number {
  const turn = bearingOf(walk, after) - bearingOf(walk, before);
  return Math.atan2(Math.sin(turn), Math.cos(turn));
}

function bearingOf(walk: Walk, i: number): number {
  return Math.atan2(walk.leftNormal[2 * i + 1]!, walk.leftNormal[2 * i]!);
}

/** The corner itself: the sample of the pair that stands on it is the one whose leg does not hold the way between them. */
function cornerPlace(walk: Walk, before: number, after: number): Place {
  if (after < before || walk.chainageM[before] === walk.chainageM[after]) return place(walk, after);
  return legOf(walk, before) === before ? place(walk, after) : place(walk, before);
}

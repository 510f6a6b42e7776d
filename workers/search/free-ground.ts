import { walkLine } from "./line-figures.ts";
import type { SearchTerms } from "./search-terms.ts";
import type { LeveePiece, Point, TieIn } from "./types.ts";

/** A ring cut at the crest: what must be built, and what runs over free ground. */
export interface CutRing {
  /** Empty when all of it must be built. */
  readonly pieces: readonly LeveePiece[];
  readonly free: readonly (readonly Point[])[];
}

/** A change from built to free ground or back, at a distance along the ring. */
interface Change {
  readonly atM: number;
  readonly intoFree: boolean;
}

const STEP_M = 0.25;
const ROOT_M = 1e-4;
/** A free stretch shorter than this is built through. */
const LEAST_FREE_M = 2;

/**
 * Cuts a ring where the ground reaches the crest. Each piece is carried on into the free ground by the
 * key-in length, or by half of the free stretch where that is shorter.
 */
export function cutAtCrest(terms: SearchTerms, corners: readonly Point[]): CutRing {
  const path = measured(corners);
  const heightAt = (atM: number) => {
    const [x, y] = pointAt(path, atM);
    return terms.crest.at(x, y) - terms.ground.source.heightAt(x, y);
  };
  const spans = freeSpans(changesAlong(path, heightAt), path.lengthM, heightAt);
  const wide = spans.filter(([from, to]) => to - from >= LEAST_FREE_M);
  if (wide.length === 0) return { pieces: [], free: [] };
  if (wide.length === 1 && wide[0]![1] - wide[0]![0] >= path.lengthM) {
    return { pieces: [], free: [[...corners, corners[0]!]] };
  }
  const pieces = wide.map(([from, to], k) => {
    const next = wide[(k + 1) % wide.length]!;
    const endsM = next[0] > to ? next[0] : next[0] + path.lengthM;
    const after = next[1] - next[0];
    return pieceBetween(terms, path, to, endsM, to - from, after);
  });
  const free = wide.map(([from, to]) => pointsBetween(path, from, to));
  return { pieces, free };
}

interface Path {
  readonly corners: readonly Point[];
  /** Distance of each corner along the ring, metres, and of the first again at the end. */
  readonly atM: readonly number[];
  readonly lengthM: number;
}

function measured(corners: readonly Point[]): Path {
  const atM = [0];
  for (let k = 0; k < corners.length; k++) {
    const [x1, y1] = corners[k]!;
    const [x2, y2] = corners[(k + 1) % corners.length]!;
    atM.push(atM[k]! + Math.hypot(x2 - x1, y2 - y1));
  }
  return { corners, atM, lengthM: atM[corners.length]! };
}

function pointAt({ corners, atM, lengthM }: Path, distanceM: number): Point {
  const at = ((distanceM % lengthM) + lengthM) % lengthM;
  let k = 0;
  while (k < corners.length - 1 && atM[k + 1]! <= at) k++;
  const [x1, y1] = corners[k]!;
  const [x2, y2] = corners[(k + 1) % corners.length]!;
  const leg = atM[k + 1]! - atM[k]!;
  const t = leg > 0 ? (at - atM[k]!) / leg : 0;
  return [x1 + t * (x2 - x1), y1 + t * (y2 - y1)];
}

function changesAlong(path: Path, heightAt: (atM: number) => number): Change[] {
  const steps = Math.ceil(path.lengthM / STEP_M);
  const changes: Change[] = [];
  let before = heightAt(0);
  for (let i = 1; i <= steps; i++) {
    const toM = (path.lengthM * i) / steps;
    const height = heightAt(toM);
    if (before > 0 !== height > 0) {
      const atM = rootBetween(heightAt, (path.lengthM * (i - 1)) / steps, toM, before > 0);
      changes.push({ atM, intoFree: before > 0 });
    }
    before = height;
  }
  return changes;
}

function rootBetween(
  heightAt: (atM: number) => number,
  fromM: number,
  toM: number,
  builtFirst: boolean,
): number {
  let low = fromM;
  let high = toM;
  while (high - low > ROOT_M) {
    const middle = (low + high) / 2;
    if (heightAt(middle) > 0 === builtFirst) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Free stretches as [from, to] along the ring, `to` beyond the length where one runs over the start. */
function freeSpans(
  changes: readonly Change[],
  lengthM: number,
  heightAt: (atM: number) => number,
): [number, number][] {
  if (changes.length === 0) return heightAt(0) > 0 ? [] : [[0, lengthM]];
  const spans: [number, number][] = [];
  changes.forEach((change, k) => {
    if (!change.intoFree) return;
    const next = changes[(k + 1) % changes.length]!;
    spans.push([change.atM, next.atM > change.atM ? next.atM : next.atM + lengthM]);
  });
  return spans;
}

/** @param beforeM @param afterM lengths of the free stretches at either end */
function pieceBetween(
  terms: SearchTerms,
  path: Path,
  fromM: number,
  toM: number,
  beforeM: number,
  afterM: number,
): LeveePiece {
  const wanted = terms.request.rule.keyInM;
  const first = Math.min(wanted, beforeM / 2);
  const last = Math.min(wanted, afterM / 2);
  const corners = pointsBetween(path, fromM - first, toM + last);
  const tieIn = (atM: number, keyInM: number): TieIn => {
    const at = pointAt(path, atM);
    return { at, elevationM: terms.crest.at(at[0], at[1]), keyInM };
  };
  return {
    corners,
    tieIns: [tieIn(fromM, first), tieIn(toM, last)],
    figures: walkLine(terms, corners, false).figures,
  };
}

function pointsBetween(path: Path, fromM: number, toM: number): Point[] {
  const points: Point[] = [pointAt(path, fromM)];
  const first = Math.floor(fromM / path.lengthM) - 1;
  for (let lap = first; lap * path.lengthM < toM; lap++) {
    for (let k = 0; k < path.corners.length; k++) {
      const atM = path.atM[k]! + lap * path.lengthM;
      if (atM > fromM + ROOT_M && atM < toM - ROOT_M) points.push(path.corners[k]!);
    }
  }
  points.push(pointAt(path, toM));
  return points;
}

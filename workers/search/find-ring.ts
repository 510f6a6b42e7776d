import type { PlaneBox } from "../../shared/site.ts";
import { boxAround } from "../../shared/site.ts";
import type { LatticeRing } from "./branch-and-bound.ts";
import type { Deadline } from "./deadline.ts";
import { type Lattice, siteLattice } from "./lattice.ts";
import { legBreach } from "./leg-price.ts";
import { type LineOptions, lineFromLoop, type PricedRing } from "./line-from-loop.ts";
import { partOf } from "./progress.ts";
import { type LatticeAnswer, searchLattice, USUAL_OPTIONS } from "./search-lattice.ts";
import { grown, type SearchTerms } from "./search-terms.ts";
import type { Point, RingToBeat, SearchStep } from "./types.ts";
import { linkStructures, linkWaters } from "./walls.ts";

/** How hard to look. */
export interface Effort {
  readonly line: Omit<LineOptions, "outOfTime">;
  readonly deadline: Deadline;
  /** False: only near the structure, for a first look. */
  readonly wholeWindow: boolean;
  readonly beat?: RingToBeat | undefined;
}

/** The best ring round a group of structures, and what the search did. */
export interface GroupRing {
  readonly ring: PricedRing | null;
  readonly cutShort: boolean;
  readonly runs: number;
  readonly settled: number;
  readonly cells: number;
  readonly bytes: number;
  /** The widest lattice searched, for saying why there is no ring; null when there is one. */
  readonly closed: Lattice | null;
}

/** Reach of the fine search near the structure, metres. */
const NEAR_REACH_M = 25;
/** Beyond this many nodes the near lattice takes every second node. */
const NEAR_NODES = 80_000;
/** Clearances are eased by this share of a cell, and the nodes pushed out afterwards. */
const EASED_CELLS = 0.4;
/** The same where the ring that this gave breaks a rule all the same: clearances are wider than the rule's. */
const STRICT_CELLS = -0.25;
/** A lattice prices a ring up to this much above the line it becomes. */
const LATTICE_SLACK = 1.08;
/** Rings dearer than the best by more than this share are not tried as lines. */
const RIVAL_SHARE = 0.03;
const MOST_RIVALS = 2;
/** Share of the work taken to be done once the near search is. */
const NEAR_SHARE = 0.3;
/** Rings that nowhere part by more than this are one and the same, metres. */
const SAME_WITHIN_M = 4;
const WINDOW_RUNS = 250;
/** Up to this many nodes the window is searched by branch and bound. */
const BRANCH_NODES = 20_000;

/**
 * The ring round some of the site's structures that needs the least: first finely near them, then over the
 * whole window with that ring as the price to beat.
 * @param group indices of the structures to enclose
 * @param before what an earlier search near the group gave: it is not repeated
 */
export function* findRing(
  terms: SearchTerms,
  group: readonly number[],
  effort: Effort,
  before: GroupRing | null = ringToBeat(effort),
): Generator<SearchStep, GroupRing> {
  const { deadline } = effort;
  const mostM3 = effort.beat?.mostM3 ?? Infinity;
  const inside = group.map((k) => terms.obstacles[k]!.shape.inside);
  const near = nearBox(terms, group);
  const nodes = ((near.maxX - near.minX) * (near.maxY - near.minY)) / terms.ground.spacingM ** 2;
  const stride = nodes > NEAR_NODES ? 2 : 1;
  let tally: Tally = before ?? NOTHING_DONE;
  let best: PricedRing | null = before?.ring ?? null;
  const lines: { lattice: Lattice; ring: LatticeRing }[] = [];
  const take = function* (lattice: Lattice, answer: LatticeAnswer, isStrict = false) {
    tally = counted(terms.ground.heightM.byteLength, tally, lattice, answer);
    for (const [k, ring] of rivals(lattice, answer.rings).entries()) {
      const isSame = () => lines.some((each) => sameRing(each.lattice, each.ring, lattice, ring));
      if (!isStrict && isSame()) continue;
      const late = deadline.over() && (k > 0 || (best !== null && ring.price > best.priceM3));
      if (best && (late || ring.price > best.priceM3 * LATTICE_SLACK)) continue;
      lines.push({ lattice, ring });
      const options = { ...effort.line, outOfTime: deadline.over };
      const line = yield* lineFromLoop(terms, lattice, ring.loop, ring.price, options);
      if (!best || line.priceM3 < best.priceM3) best = line;
    }
  };
  const limits = { outOfTime: deadline.latticesOver, givenUp: deadline.givenUp };
  let closed: Lattice | null = null;
  if (!best) {
    closed = yield* siteLattice(terms, near, stride, EASED_CELLS);
    yield* linkWaters(closed);
    if (yield* linkStructures(closed, inside)) {
      const options = { ...USUAL_OPTIONS, ...limits, by: "divide" as const };
      const answer = yield* partOf(searchLattice(closed, inside[0]!, options), 0, NEAR_SHARE);
      yield* partOf(take(closed, answer), NEAR_SHARE, NEAR_SHARE);
    }
  }
  const ended = (): GroupRing => ({ ...tally, ring: best, closed: best ? null : closed });
  const strictly = function* () {
    if (!best || !breaksRules(terms, best)) return;
    if (deadline.latticesOver()) {
      tally = { ...tally, cutShort: true };
      return;
    }
    const strict = yield* siteLattice(terms, terms.box, 2, STRICT_CELLS);
    yield* linkWaters(strict);
    if (!(yield* linkStructures(strict, inside))) return;
    const options = { ...USUAL_OPTIONS, ...limits, by: "divide" as const, runs: WINDOW_RUNS };
    yield* take(strict, yield* searchLattice(strict, inside[0]!, options), true);
  };
  if (!effort.wholeWindow) return ended();
  if (holdsWindow(terms, near)) {
    yield* partOf(strictly(), NEAR_SHARE, 1);
    return ended();
  }
  if (deadline.latticesOver() && (best || deadline.givenUp())) {
    tally = { ...tally, cutShort: true };
    return ended();
  }
  yield { share: NEAR_SHARE, doing: "Looking over the whole window" };
  const known = best as PricedRing | null;
  const wide = yield* partOf(wideLattice(terms), NEAR_SHARE, NEAR_SHARE);
  if (yield* linkStructures(wide, inside)) {
    const search = searchLattice(wide, inside[0]!, {
      ...USUAL_OPTIONS,
      ...limits,
      by: wide.price.length > BRANCH_NODES ? "divide" : "branch",
      knownPrice: known ? Math.min(known.priceM3, mostM3) * LATTICE_SLACK : null,
      runs: WINDOW_RUNS,
    });
    const answer = yield* partOf(search, NEAR_SHARE, 1);
    yield* partOf(take(wide, answer), 1, 1);
  }
  yield* partOf(strictly(), 1, 1);
  closed = wide;
  return ended();
}

const wideOf = new WeakMap<SearchTerms, Lattice>();

/** A copy of the lattice over the whole window, which is priced once for a site. */
function* wideLattice(terms: SearchTerms): Generator<SearchStep, Lattice> {
  let wide = wideOf.get(terms);
  if (!wide) {
    wide = yield* siteLattice(terms, terms.box, 2, EASED_CELLS);
    yield* linkWaters(wide);
    wideOf.set(terms, wide);
  }
  return { ...wide, price: wide.price.slice(), why: wide.why.slice() };
}

/** Whether a ring comes too close to an obstacle or lies over missing ground: a stretch too narrow for it seemed open. */
function breaksRules(terms: SearchTerms, { corners }: PricedRing): boolean {
  for (let k = 0; k < corners.length; k += 2) {
    const next = (k + 2) % corners.length;
    const leg = [corners[k]!, corners[k + 1]!, corners[next]!, corners[next + 1]!] as const;
    if (legBreach(terms, ...leg) > 0) return true;
  }
  return false;
}

type Tally = Omit<GroupRing, "ring" | "closed">;

const NOTHING_DONE: Tally = { cutShort: false, runs: 0, settled: 0, cells: 0, bytes: 0 };

function ringToBeat({ beat }: Effort): GroupRing | null {
  if (!beat) return null;
  const { corners, priceM3 } = beat.ring;
  const ring = { corners: Float64Array.from(corners.flat()), priceM3 };
  return { ...NOTHING_DONE, ring, closed: null };
}

function nearBox(terms: SearchTerms, group: readonly number[]): PlaneBox {
  const outlines = group.flatMap((k) => terms.request.structures[k]!);
  return grown(boxAround(outlines), NEAR_REACH_M);
}

function holdsWindow(terms: SearchTerms, near: PlaneBox): boolean {
  const { box } = terms;
  return (
    near.minX <= box.minX && near.minY <= box.minY && near.maxX >= box.maxX && near.maxY >= box.maxY
  );
}

function counted(
  groundBytes: number,
  tally: Tally,
  lattice: Lattice,
  answer: LatticeAnswer,
): Tally {
  return {
    cutShort: tally.cutShort || answer.cutShort,
    runs: tally.runs + answer.runs,
    settled: tally.settled + answer.settled,
    cells: Math.max(tally.cells, lattice.price.length),
    bytes: Math.max(tally.bytes, answer.bytes + groundBytes),
  };
}

/** The cheapest rings that are not the same as a cheaper one. */
function rivals(lattice: Lattice, rings: readonly LatticeRing[]): LatticeRing[] {
  const chosen: LatticeRing[] = [];
  for (const ring of rings) {
    if (chosen.length > MOST_RIVALS) break;
    if (chosen.length > 0 && ring.price > chosen[0]!.price * (1 + RIVAL_SHARE)) break;
    if (chosen.some((each) => sameRing(lattice, each, lattice, ring))) continue;
    chosen.push(ring);
  }
  return chosen;
}

/** Whether every part of either ring lies close to the other. */
function sameRing(on: Lattice, one: LatticeRing, at: Lattice, other: LatticeRing): boolean {
  const p = pointsOf(on, one.loop);
  const q = pointsOf(at, other.loop);
  return liesAlong(p, q) && liesAlong(q, p);
}

function pointsOf(lattice: Lattice, loop: Int32Array): Point[] {
  return Array.from(loop, (node) => {
    const i = node % lattice.columns;
    const j = (node - i) / lattice.columns;
    return [lattice.x0M + i * lattice.cellM, lattice.y0M + j * lattice.cellM] as const;
  });
}

function liesAlong(points: readonly Point[], other: readonly Point[]): boolean {
  for (let k = 0; k < points.length; k += 3) {
    const [x, y] = points[k]!;
    const near = other.some(([u, v]) => Math.abs(u - x) + Math.abs(v - y) < SAME_WITHIN_M);
    if (!near) return false;
  }
  return true;
}

import type { PlaneBox } from "../../shared/site.ts";
import type { LatticeRing } from "./branch-and-bound.ts";
import { type Lattice, siteLattice } from "./lattice.ts";
import { type LineWish, lineFromLoop, type PricedRing } from "./line-from-loop.ts";
import { partOf } from "./progress.ts";
import { type LatticeAnswer, searchLattice, USUAL_WISH } from "./search-lattice.ts";
import { boxOf, grown, type SiteTerms } from "./site-terms.ts";
import type { Point, SearchStep } from "./types.ts";
import { linkStructures, linkWaters } from "./walls.ts";

/** How hard to look. */
export interface Effort {
  readonly line: LineWish;
  /** Whether the lattices have been searched long enough: a part of the time is left for the lines. */
  readonly latticesLate: () => boolean;
  readonly outOfTime: () => boolean;
  /** False: only near the structure, for a first look. */
  readonly wholeWindow: boolean;
}

/** The best ring round a group of structures, and what the search did. */
export interface GroupRing {
  readonly ring: PricedRing | null;
  readonly cutShort: boolean;
  readonly runs: number;
  readonly settled: number;
  readonly cells: number;
  readonly bytes: number;
  /** The lattices searched, the last one the widest; for saying why there is no ring. */
  readonly widest: Lattice;
}

/** Reach of the fine search near the structure, metres. */
const NEAR_REACH_M = 25;
/** Beyond this many nodes the near lattice takes every second node. */
const NEAR_NODES = 80_000;
/** Clearances are eased by this share of a cell, and the nodes pushed out afterwards. */
const EASED_CELLS = 0.4;
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
 */
export function* findRing(
  terms: SiteTerms,
  group: readonly number[],
  effort: Effort,
): Generator<SearchStep, GroupRing> {
  const inside = group.map((k) => terms.obstacles[k]!.shape.inside);
  const near = nearBox(terms, group);
  const nodes = ((near.maxX - near.minX) * (near.maxY - near.minY)) / terms.ground.spacingM ** 2;
  const nearLattice = siteLattice(terms, near, nodes > NEAR_NODES ? 2 : 1, EASED_CELLS);
  let tally: Omit<GroupRing, "ring"> = emptyTally(nearLattice);
  let best: PricedRing | null = null;
  const lines: { lattice: Lattice; ring: LatticeRing }[] = [];
  const open = (lattice: Lattice) => {
    linkWaters(lattice);
    return linkStructures(lattice, inside);
  };
  const take = (lattice: Lattice, answer: LatticeAnswer) => {
    tally = counted(terms.ground.heightM.byteLength, tally, lattice, answer);
    for (const [k, ring] of rivals(lattice, answer.rings).entries()) {
      if (lines.some((each) => sameRing(each.lattice, each.ring, lattice, ring))) continue;
      const late = effort.outOfTime() && (k > 0 || (best !== null && ring.price > best.priceM3));
      if (best && (late || ring.price > best.priceM3 * LATTICE_SLACK)) continue;
      lines.push({ lattice, ring });
      const line = lineFromLoop(terms, lattice, ring.loop, ring.price, effort.line);
      if (!best || line.priceM3 < best.priceM3) best = line;
    }
  };
  if (open(nearLattice)) {
    const wish = { ...USUAL_WISH, by: "divide" as const, outOfTime: effort.latticesLate };
    const search = searchLattice(nearLattice, inside[0]!, wish);
    take(nearLattice, yield* partOf(search, 0, NEAR_SHARE));
  }
  const found = best as PricedRing | null;
  if (!effort.wholeWindow || holdsWindow(terms, near)) return { ring: found, ...tally };
  yield { share: NEAR_SHARE, doing: "Looking over the whole window" };
  const wide = siteLattice(terms, terms.box, 2, EASED_CELLS);
  tally = { ...tally, widest: wide };
  if (open(wide)) {
    const search = searchLattice(wide, inside[0]!, {
      ...USUAL_WISH,
      by: wide.price.length > BRANCH_NODES ? "divide" : "branch",
      knownPrice: found ? found.priceM3 * LATTICE_SLACK : null,
      runs: WINDOW_RUNS,
      outOfTime: effort.latticesLate,
    });
    take(wide, yield* partOf(search, NEAR_SHARE, 1));
  }
  return { ring: best, ...tally };
}

function nearBox(terms: SiteTerms, group: readonly number[]): PlaneBox {
  const outlines = group.flatMap((k) => terms.request.structures[k]!);
  return grown(boxOf(outlines), NEAR_REACH_M);
}

function holdsWindow(terms: SiteTerms, near: PlaneBox): boolean {
  const { box } = terms;
  return (
    near.minX <= box.minX && near.minY <= box.minY && near.maxX >= box.maxX && near.maxY >= box.maxY
  );
}

function emptyTally(widest: Lattice): Omit<GroupRing, "ring"> {
  return { cutShort: false, runs: 0, settled: 0, cells: 0, bytes: 0, widest };
}

function counted(
  groundBytes: number,
  tally: Omit<GroupRing, "ring">,
  lattice: Lattice,
  answer: LatticeAnswer,
): Omit<GroupRing, "ring"> {
  return {
    cutShort: tally.cutShort || answer.cutShort,
    runs: tally.runs + answer.runs,
    settled: tally.settled + answer.settled,
    cells: Math.max(tally.cells, lattice.price.length),
    bytes: Math.max(tally.bytes, answer.bytes + groundBytes),
    widest: lattice,
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

import { HIGHEST_RANK, type LoopSpace, LOWEST_RANK } from "./loop-space.ts";
import { type OddWalk, oddWalk } from "./odd-loop.ts";
import type { SearchStep } from "./types.ts";

/** Rings of a lattice, cheapest first, and what is known of the best. */
export interface LatticeRings {
  readonly rings: readonly LatticeRing[];
  /** No ring of the lattice is cheaper than this; Infinity when there is none. */
  readonly lowerBound: number;
  /** True when runs or time ran out before the bound met the best ring. */
  readonly cutShort: boolean;
}

export interface LatticeRing {
  readonly price: number;
  readonly loop: Int32Array;
}

/** When to stop. */
export interface SearchLimit {
  /** Rings dearer than this are of no interest. */
  readonly price: number;
  readonly runs: number;
  /** Asked before each run. */
  readonly outOfTime: () => boolean;
}

interface Span {
  readonly first: number;
  readonly end: number;
  readonly walk: OddWalk;
}

/** Rings within this share of each other count as equal. */
export const TOLERANCE = 1e-3;
/** Starts on either side of a bound's two ends that are split off together. */
const SPLIT_MARGIN = 8;
const RINGS_KEPT = 12;

/**
 * The cheapest ring over all starts: spans of starts are bounded by one run from all of them together,
 * the least bound first; a span whose bound is not a ring is priced through one start and split in three.
 * @param tolerance share by which a better ring may be missed; 0 for the exact optimum
 */
export function* branchAndBound(
  space: LoopSpace,
  limit: SearchLimit,
  tolerance: number,
): Generator<SearchStep, LatticeRings> {
  const found = ringStore(limit.price);
  const open: Span[] = [];
  const runsBefore = space.runs;
  const tried = new Set<number>();
  const bound = (first: number, end: number) => {
    if (end <= first) return;
    const walk = run(first, end);
    if (walk.price < found.best() * (1 - tolerance)) open.push({ first, end, walk });
  };
  const run = (first: number, end: number): OddWalk => {
    const walk = oddWalk(space, first, end, found.best(), LOWEST_RANK, HIGHEST_RANK);
    found.keep(walk);
    return walk;
  };
  bound(0, space.starts.length);
  while (open.length > 0) {
    const span = takeLeast(open);
    if (span.walk.price >= found.best() * (1 - tolerance)) continue;
    const { from, to } = span.walk;
    if (from === to) continue;
    if (space.runs - runsBefore >= limit.runs || limit.outOfTime()) {
      return { rings: found.rings(), lowerBound: span.walk.price, cutShort: true };
    }
    yield { share: Math.min(1, span.walk.price / found.best()), doing: "Comparing rings" };
    const middle = (from + to) >> 1;
    for (const start of [from, to]) {
      if (tried.has(start)) continue;
      tried.add(start);
      run(start, start + 1);
    }
    let first = Math.max(span.first, Math.min(from, to) - SPLIT_MARGIN);
    let end = Math.min(span.end, Math.max(from, to) + SPLIT_MARGIN + 1);
    if (first === span.first && end === span.end) {
      first = middle;
      end = middle + 1;
    }
    bound(first, end);
    bound(span.first, first);
    bound(end, span.end);
  }
  const best = found.best();
  const lowerBound = found.rings().length > 0 ? best * (1 - tolerance) : best;
  return { rings: found.rings(), lowerBound, cutShort: false };
}

function takeLeast(open: Span[]): Span {
  let least = 0;
  for (let i = 1; i < open.length; i++) {
    if (open[i]!.walk.price < open[least]!.walk.price) least = i;
  }
  return open.splice(least, 1)[0]!;
}

/** Keeps the cheapest rings found, and the best price so far. */
export function ringStore(limit: number) {
  const kept: LatticeRing[] = [];
  let best = limit;
  return {
    best: () => best,
    rings: (): readonly LatticeRing[] => kept,
    keep(walk: OddWalk): void {
      if (walk.loop.length === 0) return;
      kept.push({ price: walk.loopPrice, loop: walk.loop });
      kept.sort((a, b) => a.price - b.price);
      if (kept.length > RINGS_KEPT) kept.pop();
      best = Math.min(best, walk.loopPrice);
    },
  };
}

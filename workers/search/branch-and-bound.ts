import { closeBeyond } from "./corridor.ts";
import { HIGHEST_RANK, LOWEST_RANK, type LoopSpace } from "./loop-space.ts";
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
  /** Runs after which it ends, over the life of the space. */
  readonly runs: number;
  /** Looked at before and during each run, with whether a ring has been found. */
  readonly outOfTime: (found: boolean) => boolean;
}

interface Span {
  readonly first: number;
  readonly end: number;
  readonly walk: OddWalk;
}

/** Starts on either side of a bound's two ends that are split off together. */
const SPLIT_MARGIN = 8;
const RINGS_KEPT = 12;
export const COMPARING = "Comparing rings";

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
  const late = () => limit.outOfTime(false);
  yield* closeBeyond(space, limit.price, { outOfTime: late, step: { share: 0, doing: COMPARING } });
  const all = Int32Array.from(space.starts, (_, k) => k);
  const whole = { starts: all, low: LOWEST_RANK, high: HIGHEST_RANK };
  const open = yield* branchWithin(space, whole, found, limit, tolerance);
  return summed(found, open, tolerance);
}

/** Some of the starts, in order, and the ranks of the region they lie in. */
export interface StartRegion {
  readonly starts: Int32Array;
  readonly low: number;
  readonly high: number;
}

/**
 * Branch and bound over the starts of a region.
 * @returns the least bound left open when time or runs ran out, else null
 */
export function* branchWithin(
  space: LoopSpace,
  { starts, low, high }: StartRegion,
  found: RingStore,
  limit: SearchLimit,
  tolerance: number,
): Generator<SearchStep, number | null> {
  const open: Span[] = [];
  const tried = new Set<number>();
  const late = () => limit.outOfTime(found.rings().length > 0);
  const run = function* (first: number, end: number, share: number) {
    const step = { share, doing: COMPARING };
    const limitM3 = found.best();
    const where = { from: starts, first, end, limit: limitM3, low, high };
    const walk = yield* oddWalk(space, { ...where, outOfTime: late, step });
    found.keep(walk);
    return walk;
  };
  const bound = function* (first: number, end: number, share: number) {
    if (end <= first) return true;
    const walk = yield* run(first, end, share);
    if (walk.price < found.best() * (1 - tolerance)) open.push({ first, end, walk });
    return !walk.cutShort;
  };
  if (!(yield* bound(0, starts.length, 0))) return 0;
  while (open.length > 0) {
    const span = takeLeast(open);
    if (span.walk.price >= found.best() * (1 - tolerance)) continue;
    if (span.walk.from === span.walk.to) continue;
    if (space.runs >= limit.runs || late()) return span.walk.price;
    const share = Math.min(1, span.walk.price / found.best());
    const step = { share, doing: COMPARING };
    yield step;
    yield* closeBeyond(space, found.best(), { outOfTime: late, step });
    const from = starts.indexOf(span.walk.from);
    const to = starts.indexOf(span.walk.to);
    for (const start of [from, to]) {
      if (tried.has(start)) continue;
      tried.add(start);
      yield* run(start, start + 1, share);
    }
    let first = Math.max(span.first, Math.min(from, to) - SPLIT_MARGIN);
    let end = Math.min(span.end, Math.max(from, to) + SPLIT_MARGIN + 1);
    if (first === span.first && end === span.end) {
      first = (from + to) >> 1;
      end = first + 1;
    }
    let whole = yield* bound(first, end, share);
    whole = (yield* bound(span.first, first, share)) && whole;
    whole = (yield* bound(end, span.end, share)) && whole;
    if (!whole) return span.walk.price;
  }
  return null;
}

/** What is known when a search ends. */
export function summed(found: RingStore, open: number | null, tolerance: number): LatticeRings {
  const reached = found.rings().length > 0 ? found.best() * (1 - tolerance) : found.best();
  const lowerBound = open === null ? reached : Math.min(open, reached);
  return { rings: found.rings(), lowerBound, cutShort: open !== null };
}

function takeLeast(open: Span[]): Span {
  let least = 0;
  for (let i = 1; i < open.length; i++) {
    if (open[i]!.walk.price < open[least]!.walk.price) least = i;
  }
  return open.splice(least, 1)[0]!;
}

/** The cheapest rings found, and the best price so far. */
export interface RingStore {
  best(): number;
  rings(): readonly LatticeRing[];
  keep(walk: OddWalk): void;
}

export function ringStore(limit: number): RingStore {
  const kept: LatticeRing[] = [];
  let best = limit;
  return {
    best: () => best,
    rings: () => kept,
    keep(walk) {
      if (walk.loop.length === 0 || walk.loopPrice > limit) return;
      kept.push({ price: walk.loopPrice, loop: walk.loop });
      kept.sort((a, b) => a.price - b.price);
      if (kept.length > RINGS_KEPT) kept.pop();
      best = Math.min(best, walk.loopPrice);
    },
  };
}

import {
  branchWithin,
  COMPARING,
  type LatticeRings,
  ringStore,
  type SearchLimit,
  type StartRegion,
  summed,
} from "./branch-and-bound.ts";
import { closeBeyond, open } from "./corridor.ts";
import { HIGHEST_RANK, LOWEST_RANK, type LoopSpace, regionOf } from "./loop-space.ts";
import { type OddWalk, oddWalk, type WalkOptions } from "./odd-loop.ts";
import type { SearchStep } from "./types.ts";

interface Region extends StartRegion {
  readonly bound: number;
}

/** Regions with no more starts than this are finished by branch and bound. */
const FEW_STARTS = 16;
/** Starts on either side of the chosen one that are settled with it, before the region is split. */
const SPLIT_MARGIN = 8;
/** A ring through a start is looked for up to this many times the best price. */
const THROUGH_LIMIT = 4;
const NEAR_LIMIT = 1.25;

/**
 * The cheapest ring over all starts in a large window, by divide and conquer: beside the ring through one
 * start, the best ring lies wholly inside it or wholly outside it (two rings that cross can be uncrossed
 * at no greater price), so each half is bounded by one run and split again. The ring and the nodes next
 * to it belong to both halves. On a lattice edges may cross without sharing a node, which leaves the
 * answer up to a few parts in a thousand above the exact one. The starts next to the chosen one, and small
 * regions, are settled by branch and bound.
 */
export function* nestedRegions(
  space: LoopSpace,
  limit: SearchLimit,
  tolerance: number,
): Generator<SearchStep, LatticeRings> {
  const found = ringStore(limit.price);
  const ranks = regionOf(space);
  const all = Int32Array.from(space.starts, (_, k) => k);
  const regions: Region[] = [{ starts: all, low: LOWEST_RANK, high: HIGHEST_RANK, bound: 0 }];
  let open: number | null = null as number | null;
  const late = () => limit.outOfTime(found.rings().length > 0);
  const leave = (bound: number) => {
    open = Math.min(open ?? Infinity, bound);
  };
  while (regions.length > 0) {
    regions.sort((p, q) => q.bound - p.bound);
    const region = regions.pop()!;
    const { starts, low, high, bound } = region;
    const goodEnough = found.best() * (1 - tolerance);
    if (bound >= goodEnough || starts.length === 0) continue;
    if (space.runs >= limit.runs || late()) {
      leave(bound);
      continue;
    }
    if (starts.length <= FEW_STARTS || high - low < 2) {
      const left = yield* branchWithin(space, region, found, limit, tolerance);
      if (left !== null) leave(Math.max(bound, left));
      continue;
    }
    const step = { share: Math.min(1, bound / found.best()), doing: COMPARING };
    yield step;
    yield* closeBeyond(space, found.best(), { outOfTime: late, step });
    const inRegion = { low, high, outOfTime: late, step };
    const whole = { from: starts, first: 0, end: starts.length, limit: found.best() };
    const walk = yield* oddWalk(space, { ...whole, ...inRegion });
    found.keep(walk);
    if (walk.cutShort) {
      leave(bound);
      continue;
    }
    if (walk.from === walk.to || walk.price >= goodEnough) continue;
    const next = Math.max(bound, walk.price);
    const at = starts.indexOf(nearestTo(starts, walk.from, walk.to));
    const through = yield* throughRing(space, starts[at]!, found.best(), inRegion);
    found.keep(through);
    yield* closeBeyond(space, found.best(), { outOfTime: late, step });
    const first = Math.max(0, at - SPLIT_MARGIN);
    const end = Math.min(starts.length, at + SPLIT_MARGIN + 1);
    const near = { starts: starts.subarray(first, end), low, high };
    const unsettled = yield* branchWithin(space, near, found, limit, tolerance);
    if (unsettled !== null) leave(Math.max(next, unsettled));
    const left = Int32Array.from([...starts.subarray(0, first), ...starts.subarray(end)]);
    if (through.loop.length === 0) {
      regions.push({ starts: left, low, high, bound: next });
      continue;
    }
    const middle = (low + high) >> 1;
    splitRanks(space, ranks, through.loop, low, middle, high);
    for (const [from, to] of [
      [low, middle],
      [middle + 1, high],
    ] as const) {
      const within = left.filter((each) => belongs(ranks[space.starts[each]!]!, from, to));
      regions.push({ starts: within, low: from, high: to, bound: next });
    }
  }
  return summed(found, open, tolerance);
}

function belongs(value: number, low: number, high: number): boolean {
  return value >>> 16 <= high && (value & 0xffff) >= low;
}

/** Of the two ends of a bound, the one nearer to the middle of the region's starts. */
function nearestTo(starts: Int32Array, from: number, to: number): number {
  const middle = starts[starts.length >> 1]!;
  return Math.abs(from - middle) < Math.abs(to - middle) ? from : to;
}

/** The cheapest ring through one start, dearer than the best so far if need be. */
function* throughRing(
  space: LoopSpace,
  start: number,
  best: number,
  options: Pick<WalkOptions, "low" | "high" | "outOfTime" | "step">,
): Generator<SearchStep, OddWalk> {
  const one = { ...options, from: [start], first: 0, end: 1 };
  for (const limit of [best, best * NEAR_LIMIT]) {
    if (limit > best) open(space);
    const through = yield* oddWalk(space, { ...one, limit });
    if (through.loop.length > 0 || through.cutShort) return through;
  }
  return yield* oddWalk(space, { ...one, limit: best * THROUGH_LIMIT });
}

/**
 * Splits the nodes of ranks low..high at a ring: those inside it end at `middle`, those outside begin
 * after it, the ring and the nodes next to it stay in both.
 */
function splitRanks(
  space: LoopSpace,
  ranks: Uint32Array,
  loop: Int32Array,
  low: number,
  middle: number,
  high: number,
): void {
  const { columns, count } = space;
  const onRing = new Set<number>();
  for (const node of loop) {
    for (let j = -1; j <= 1; j++) {
      for (let i = -1; i <= 1; i++) onRing.add(node + j * columns + i);
    }
  }
  const cuts = rowCuts(loop, columns);
  for (let row = 0; row * columns < count; row++) {
    const crossings = cuts.get(row) ?? [];
    let passed = 0;
    for (let column = 0; column < columns; column++) {
      const node = row * columns + column;
      while (passed < crossings.length && crossings[passed]! <= column) passed++;
      const value = ranks[node]!;
      const from = value >>> 16;
      const to = value & 0xffff;
      if (from > high || to < low || onRing.has(node)) continue;
      const inside = (passed & 1) === 1;
      const newFrom = inside ? from : Math.max(from, middle + 1);
      const newTo = inside ? Math.min(to, middle) : to;
      ranks[node] = ((newFrom << 16) | newTo) >>> 0;
    }
  }
}

/** Columns at which the loop crosses each row, sorted: node rows count half open, so every row's count is even. */
function rowCuts(loop: Int32Array, columns: number): Map<number, number[]> {
  const cuts = new Map<number, number[]>();
  for (let k = 0; k < loop.length; k++) {
    const here = loop[k]!;
    const there = loop[(k + 1) % loop.length]!;
    const i1 = here % columns;
    const j1 = (here - i1) / columns;
    const i2 = there % columns;
    const j2 = (there - i2) / columns;
    for (let row = Math.min(j1, j2); row < Math.max(j1, j2); row++) {
      const at = i1 + ((row + 1e-6 - j1) / (j2 - j1)) * (i2 - i1);
      const list = cuts.get(row);
      if (list) list.push(at);
      else cuts.set(row, [at]);
    }
  }
  for (const list of cuts.values()) list.sort((p, q) => p - q);
  return cuts;
}

import { BUCKETS, IN_HAND, type LoopSpace, NOT_WAITING } from "./loop-space.ts";
import type { SearchStep } from "./types.ts";

/** What one run found: the cheapest odd walk between two of its start nodes. */
export interface OddWalk {
  /** Infinity when there is none within the limit. */
  readonly price: number;
  /** Indices of the starts at its two ends. Equal: the walk is a closed loop. */
  readonly from: number;
  readonly to: number;
  /** Nodes of the closed loop in order, not repeated; empty unless `from` equals `to`. */
  readonly loop: Int32Array;
  /** Price of that loop alone, without the stem that leads to it. */
  readonly loopPrice: number;
  /** True when time ran out: nothing is known then. */
  readonly cutShort: boolean;
}

const NOTHING: OddWalk = {
  price: Infinity,
  from: -1,
  to: -1,
  loop: new Int32Array(0),
  loopPrice: Infinity,
  cutShort: false,
};
const SIDE_BITS = 3;
const PARITY_BIT = 4;
const TIE = 1 + 1e-12;

/** What one run looks for, and when it gives up. */
export interface WalkOptions {
  /** Indices of starts, of which `first` to `end - 1` are taken. */
  readonly from: ArrayLike<number>;
  readonly first: number;
  readonly end: number;
  /** Walks dearer than this are not looked for. */
  readonly limit: number;
  /** Ranks of the region that the walk stays in. */
  readonly low: number;
  readonly high: number;
  /** Looked at every few milliseconds: when true the run ends and finds nothing. */
  readonly outOfTime: () => boolean;
  /** Told between stretches of a long run. */
  readonly step: SearchStep;
}

/** A run in hand. */
interface Run {
  readonly scale: number;
  best: number;
  closeU: number;
  closeV: number;
  touched: number;
  bucket: number;
}

/** Nodes settled between two looks at the clock. */
const STRETCH = 20_000;

/**
 * Dijkstra's search from several starts together, one label a node with the parity of ray
 * crossings. Every edge between labels of unlike parity closes an odd walk; the cheapest of them is the
 * cheapest odd walk that leaves and re-enters the set of starts (three-path property). With one start
 * that is the cheapest ring through it; with several it is a bound for the rings through any of them.
 * Buckets over [0, limit / 2], the one in hand as a heap, so that each node is settled once whatever the limit
 * (heap-on-top queue: Cherkassky, Goldberg and Silverstein 1999).
 */
export function* oddWalk(space: LoopSpace, options: WalkOptions): Generator<SearchStep, OddWalk> {
  const run = begun(space, options);
  let late = false;
  while (!late && !settle(space, run, options.low, options.high)) {
    yield options.step;
    late = options.outOfTime();
  }
  const nothing = late || run.closeU < 0;
  const found = nothing ? NOTHING : traced(space, run.closeU, run.closeV, run.best);
  cleaned(space, run);
  return { ...found, cutShort: late };
}

function begun(space: LoopSpace, { from, first, end, limit, low, high }: WalkOptions): Run {
  const { distance, root, next, previous, touched, heads, region, starts, shut } = space;
  const scale = (BUCKETS - 2) / (limit / 2);
  const run: Run = { scale, best: limit, closeU: -1, closeV: -1, touched: 0, bucket: -1 };
  heads.fill(-1);
  space.inHand.clear();
  space.runs++;
  for (let i = end - 1; i >= first; i--) {
    const s = from[i]!;
    const node = starts[s]!;
    if (distance[node] === 0 || shut[node] !== 0 || (region && !within(region[node]!, low, high)))
      continue;
    distance[node] = 0;
    root[node] = s;
    touched[run.touched++] = node;
    wait(heads, next, previous, node, 0);
  }
  return run;
}

/** Goes on with a run for a stretch. @returns true when it has ended */
function settle(space: LoopSpace, run: Run, low: number, high: number): boolean {
  const { price, tag, distance, root, next, previous, touched, heads, inHand, region } = space;
  const { shut } = space;
  const { count: edges, step, end: endShare, one, a, b, two, c, d } = space.stencil;
  const long = edges > 16;
  const { scale } = run;
  let { best, closeU, closeV, bucket } = run;
  let half = best / 2;
  let bestTie = best * TIE;
  let touchedCount = run.touched;
  let settled = 0;
  let ended = false;

  while (settled < STRETCH) {
    const u = inHand.pop();
    if (u < 0) {
      bucket++;
      while (bucket < BUCKETS && bucket <= half * scale && heads[bucket]! < 0) bucket++;
      if (bucket >= BUCKETS || bucket > half * scale) {
        ended = true;
        break;
      }
      takeInHand(space, bucket);
      continue;
    }
    if (previous[u] !== IN_HAND) continue;
    previous[u] = NOT_WAITING;
    const du = distance[u]!;
    if (du > half * TIE) {
      ended = true;
      break;
    }
    settled++;
    const fu = price[u]!;
    const tagU = tag[u]!;
    for (let k = 0; k < edges; k++) {
      const v = u + step[k]!;
      if (shut[v] !== 0) continue;
      const dv = distance[v]!;
      let nd = du + endShare[k]! * (fu + price[v]!);
      if (nd > bestTie - dv && nd >= dv) continue;
      nd += one[k]! * (price[u + a[k]!]! + price[u + b[k]!]!);
      if (long) nd += two[k]! * (price[u + c[k]!]! + price[u + d[k]!]!);
      const tagV = tag[v]!;
      const crosses = ((tagU | tagV) & SIDE_BITS) === 3 ? PARITY_BIT : 0;
      const parity = (tagU & PARITY_BIT) ^ crosses;
      if (nd < dv) {
        if (nd > half || (region && !within(region[v]!, low, high))) continue;
        if (dv === Infinity) touched[touchedCount++] = v;
        else if (previous[v]! > NOT_WAITING) leave(heads, next, previous, v, (dv * scale) | 0);
        distance[v] = nd;
        tag[v] = (tagV & SIDE_BITS) | parity | (k << 3);
        root[v] = root[u]!;
        const at = (nd * scale) | 0;
        if (at > bucket) wait(heads, next, previous, v, at);
        else {
          previous[v] = IN_HAND;
          inHand.push(v, nd);
        }
      } else if (nd + dv <= bestTie && (tagV & PARITY_BIT) !== parity) {
        best = Math.min(best, nd + dv);
        half = best / 2;
        bestTie = best * TIE;
        closeU = u;
        closeV = v;
      }
    }
  }
  space.settled += settled;
  Object.assign(run, { best, closeU, closeV, bucket, touched: touchedCount });
  return ended;
}

/** Leaves the space as it was before the run. */
function cleaned({ distance, previous, tag, touched }: LoopSpace, run: Run): void {
  for (let i = 0; i < run.touched; i++) {
    const node = touched[i]!;
    distance[node] = Infinity;
    previous[node] = NOT_WAITING;
    tag[node] = tag[node]! & SIDE_BITS;
  }
}

/** Moves the nodes of a bucket into the heap. */
function takeInHand({ heads, next, previous, distance, inHand }: LoopSpace, bucket: number): void {
  for (let node = heads[bucket]!; node >= 0; node = next[node]!) {
    previous[node] = IN_HAND;
    inHand.push(node, distance[node]!);
  }
  heads[bucket] = -1;
}

/** Puts a node at the head of a bucket. */
function wait(
  heads: Int32Array,
  next: Int32Array,
  previous: Int32Array,
  node: number,
  bucket: number,
): void {
  const head = heads[bucket]!;
  next[node] = head;
  previous[node] = -1;
  if (head >= 0) previous[head] = node;
  heads[bucket] = node;
}

/** Takes a node out of the bucket it waits in. */
function leave(
  heads: Int32Array,
  next: Int32Array,
  previous: Int32Array,
  node: number,
  bucket: number,
): void {
  const before = previous[node]!;
  const after = next[node]!;
  if (before >= 0) next[before] = after;
  else heads[bucket] = after;
  if (after >= 0) previous[after] = before;
  previous[node] = NOT_WAITING;
}

function within(ranks: number, low: number, high: number): boolean {
  return ranks >>> 16 <= high && (ranks & 0xffff) >= low;
}

/** The walk that edge (u, v) closes, its common stem dropped when it is a loop. */
function traced(space: LoopSpace, u: number, v: number, price: number): OddWalk {
  const from = space.root[u]!;
  const to = space.root[v]!;
  if (from !== to) return { ...NOTHING, price, from, to };
  const there = stemOf(space, u);
  const back = stemOf(space, v);
  let i = there.length - 1;
  let j = back.length - 1;
  while (i > 0 && j > 0 && there[i - 1] === back[j - 1]) {
    i--;
    j--;
  }
  const loop = [...there.slice(0, i + 1).reverse(), ...back.slice(0, j)];
  const stemPrice = space.distance[there[i]!]!;
  const loopPrice = price - 2 * stemPrice;
  return { price, from, to, loop: Int32Array.from(loop), loopPrice, cutShort: false };
}

/** Nodes from a label back to its start. */
function stemOf(space: LoopSpace, node: number): number[] {
  const start = space.starts[space.root[node]!]!;
  const stem = [node];
  let at = node;
  while (at !== start) {
    at -= space.stencil.step[space.tag[at]! >> 3]!;
    stem.push(at);
    if (stem.length > space.count) throw new Error("A label's way back does not end at its start.");
  }
  return stem;
}

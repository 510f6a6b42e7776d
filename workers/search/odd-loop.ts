import { BUCKETS, type LoopSpace, NOT_WAITING } from "./loop-space.ts";

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
}

const NOTHING: OddWalk = {
  price: Infinity,
  from: -1,
  to: -1,
  loop: new Int32Array(0),
  loopPrice: Infinity,
};
const SIDE_BITS = 3;
const PARITY_BIT = 4;
const TIE = 1 + 1e-12;

/**
 * Dijkstra's search from several starts together, one label a node with the parity of ray
 * crossings. Every edge between labels of unlike parity closes an odd walk; the cheapest of them is the
 * cheapest odd walk that leaves and re-enters the set of starts (three-path property). With one start
 * that is the cheapest ring through it; with several it is a bound for the rings through any of them.
 * Buckets over [0, limit / 2], corrected inside a bucket, so the answer is exact.
 * @param from indices of starts, of which `first` to `end - 1` are taken
 * @param limit walks dearer than this are not looked for
 * @param low @param high ranks of the region that the walk stays in
 */
export function oddWalk(
  space: LoopSpace,
  from: ArrayLike<number>,
  first: number,
  end: number,
  limit: number,
  low: number,
  high: number,
): OddWalk {
  const { price, tag, distance, root, next, previous, touched, heads, region, starts } = space;
  const { count: edges, step, end: endShare, one, a, b, two, c, d } = space.stencil;
  const long = edges > 16;
  const scale = (BUCKETS - 2) / (limit / 2);
  heads.fill(-1);
  space.runs++;
  let best = limit;
  let half = best / 2;
  let bestTie = best * TIE;
  let closeU = -1;
  let closeV = -1;
  let touchedCount = 0;
  let settled = 0;

  for (let i = end - 1; i >= first; i--) {
    const s = from[i]!;
    const node = starts[s]!;
    if (distance[node] === 0 || (region && !within(region[node]!, low, high))) continue;
    distance[node] = 0;
    root[node] = s;
    touched[touchedCount++] = node;
    wait(heads, next, previous, node, 0);
  }

  let bucket = 0;
  for (let u = heads[0]!; bucket < BUCKETS && bucket <= half * scale; u = heads[bucket]!) {
    if (u < 0) {
      bucket++;
      continue;
    }
    leave(heads, next, previous, u, bucket);
    settled++;
    const du = distance[u]!;
    const fu = price[u]!;
    const tagU = tag[u]!;
    for (let k = 0; k < edges; k++) {
      const v = u + step[k]!;
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
        else if (previous[v] !== NOT_WAITING) leave(heads, next, previous, v, (dv * scale) | 0);
        distance[v] = nd;
        tag[v] = (tagV & SIDE_BITS) | parity | (k << 3);
        root[v] = root[u]!;
        wait(heads, next, previous, v, (nd * scale) | 0);
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
  const found = closeU >= 0 ? traced(space, closeU, closeV, best) : NOTHING;
  for (let i = 0; i < touchedCount; i++) {
    const node = touched[i]!;
    distance[node] = Infinity;
    previous[node] = NOT_WAITING;
    tag[node] = tag[node]! & SIDE_BITS;
  }
  return found;
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
  return { price, from, to, loop: Int32Array.from(loop), loopPrice: price - 2 * stemPrice };
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

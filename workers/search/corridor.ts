import type { LoopSpace } from "./loop-space.ts";
import type { SearchStep } from "./types.ts";

const SIDE_BITS = 3;
/** Room for rounding in a sum of prices. */
const ROUNDING = 1 + 1e-9;
/** A corridor is made narrower for prices below this share of those it is for. */
const WORTH_SHARE = 0.99;
/** Labels settled between two looks at the clock. */
const STRETCH = 20_000;

/** When a corridor is given up. */
interface CorridorOptions {
  readonly outOfTime: () => boolean;
  readonly step: SearchStep;
}

/**
 * Closes the nodes of a space that no ring up to a price can pass: a ring through a node goes from it to the starts
 * twice, with unlike parity of ray crossings, so it costs no less than the least price of both ways together. Both
 * are found by one Dijkstra search with two labels a node. Ways that are too dear are not followed: on the cheapest way to
 * a node that stays open every node does. Where time runs out nothing is closed.
 */
export function* closeBeyond(
  space: LoopSpace,
  limit: number,
  { outOfTime, step }: CorridorOptions,
): Generator<SearchStep, void> {
  const { count, shut, starts } = space;
  if (limit > space.shutBeyond * WORTH_SHARE) return;
  const even = space.distance;
  const odd = space.oddDistance ?? new Float64Array(count);
  space.oddDistance = odd.fill(Infinity);
  space.inHand.clear();
  for (const node of starts) {
    if (shut[node] !== 0) continue;
    even[node] = 0;
    space.inHand.push(node, 0);
  }
  const most = limit * ROUNDING;
  let isDone = spread(space, odd, most);
  let isLate = false;
  while (!isDone && !isLate) {
    yield step;
    isLate = outOfTime();
    isDone = !isLate && spread(space, odd, most);
  }
  for (let node = 0; node < count; node++) {
    shut[node] = isDone && !(even[node]! + odd[node]! <= most) ? 1 : 0;
  }
  even.fill(Infinity);
  space.shutBeyond = isDone ? limit : Infinity;
}

/** Opens what was closed, before rings are looked for that cost more. */
export function open(space: LoopSpace): void {
  space.shut.fill(0);
  space.shutBeyond = Infinity;
}

/** Goes on for a stretch. @returns true when no label is left in hand */
function spread(space: LoopSpace, odd: Float64Array, most: number): boolean {
  const { count, price, tag, inHand, shut, distance: even } = space;
  const { count: edges, step, end, one, a, b, two, c, d } = space.stencil;
  const long = edges > 16;
  for (let settled = 0; settled < STRETCH; settled++) {
    const key = inHand.leastKey();
    const label = inHand.pop();
    if (label < 0) return true;
    const isOdd = label >= count;
    const u = isOdd ? label - count : label;
    const at = isOdd ? odd[u]! : even[u]!;
    if (key > at) continue;
    const priceU = price[u]!;
    for (let k = 0; k < edges; k++) {
      const v = u + step[k]!;
      if (shut[v] !== 0) continue;
      const crosses = ((tag[u]! | tag[v]!) & SIDE_BITS) === 3;
      const toOdd = isOdd !== crosses;
      const same = toOdd ? odd : even;
      const other = toOdd ? even : odd;
      let way = at + end[k]! * (priceU + price[v]!);
      if (way >= same[v]!) continue;
      way += one[k]! * (price[u + a[k]!]! + price[u + b[k]!]!);
      if (long) way += two[k]! * (price[u + c[k]!]! + price[u + d[k]!]!);
      // a label of the other parity that is still to be settled will be no less than the one in hand
      if (way >= same[v]! || way + Math.min(other[v]!, at) > most) continue;
      same[v] = way;
      inHand.push(toOdd ? count + v : v, way);
    }
  }
  return false;
}

import { type Effort, findRing, type GroupRing } from "./find-ring.ts";
import { finishRing } from "./finish-ring.ts";
import { partOf } from "./progress.ts";
import { ringsApart } from "./rings-apart.ts";
import { signedDistance } from "./shape.ts";
import type { SiteTerms } from "./site-terms.ts";
import type { FoundRing, SearchStep } from "./types.ts";

/** Up to this many structures every way of grouping them is compared. */
export const COMPARED_EXACTLY = 4;

/** How the structures are best grouped into rings, and what was learnt on the way. */
export interface Grouping {
  /** Empty when some structure has no ring at all. */
  readonly rings: readonly FoundRing[];
  /** Searches done, for the figures and for saying why there is no ring. */
  readonly searches: readonly GroupRing[];
  /** A structure that no ring can be found round; null when all have one. */
  readonly without: number | null;
  readonly exact: boolean;
}

type Group = readonly number[];

/** Beyond four structures a group is tried together with this many of its nearest. */
const NEIGHBOURS_TRIED = 2;

/**
 * One ring or several, whichever takes less. Up to four structures: the cheapest of all ways of grouping
 * them whose rings keep clear of each other. More: from one ring each, the two groups whose joint ring
 * saves most are joined, again and again, as long as it saves; only the nearest groups are tried.
 */
export function* chooseGroups(terms: SiteTerms, effort: Effort): Generator<SearchStep, Grouping> {
  const all = terms.request.structures.map((_, k) => k);
  const exact = all.length <= COMPARED_EXACTLY;
  const book = ringBook(terms, effort, exact ? 2 ** all.length - 1 : 4 * all.length);
  for (const k of all) {
    const alone = yield* book.ring([k]);
    if (!alone && all.length === 1) {
      return { rings: [], searches: book.searches, without: k, exact: true };
    }
  }
  const groups = exact
    ? yield* cheapestGrouping(terms, book, all)
    : yield* joined(terms, book, all);
  if (!groups) {
    const without = all.find((k) => !book.kept([k])) ?? all[0]!;
    return { rings: [], searches: book.searches, without, exact };
  }
  const rings = new Set(groups.map((group) => book.kept(group)!));
  return { rings: [...rings], searches: book.searches, without: null, exact };
}

/** Rings found so far, by group. */
interface RingBook {
  /** Searches for the ring round a group, once. */
  ring(group: Group): Generator<SearchStep, FoundRing | null>;
  /** The cheapest ring known that encloses the group. */
  kept(group: Group): FoundRing | null;
  readonly searches: GroupRing[];
}

/** @param expected searches expected, to tell how far it is */
function ringBook(terms: SiteTerms, effort: Effort, expected: number): RingBook {
  const searched = new Set<string>();
  const rings: FoundRing[] = [];
  const searches: GroupRing[] = [];
  const kept = (group: Group): FoundRing | null => {
    let best: FoundRing | null = null;
    for (const ring of rings) {
      if (best && ring.priceM3 >= best.priceM3) continue;
      if (group.every((k) => ring.encloses.includes(k))) best = ring;
    }
    return best;
  };
  return {
    searches,
    kept,
    *ring(group) {
      const key = group.join();
      if (searched.has(key)) return kept(group);
      searched.add(key);
      const share = (done: number) => Math.min(1, done / expected);
      const steps = findRing(terms, group, effort);
      const search = yield* partOf(steps, share(searches.length), share(searches.length + 1));
      searches.push(search);
      if (search.ring) rings.push(finishRing(terms, search.ring));
      return kept(group);
    },
  };
}

function* cheapestGrouping(
  terms: SiteTerms,
  book: RingBook,
  all: readonly number[],
): Generator<SearchStep, Group[] | null> {
  const priced: { groups: Group[]; price: number }[] = [];
  for (const groups of partitions(all)) {
    for (const group of groups) yield* book.ring(group);
    const rings = groups.map((group) => book.kept(group));
    const price = rings.reduce((sum, ring) => sum + (ring?.priceM3 ?? Infinity), 0);
    if (price < Infinity) priced.push({ groups, price });
  }
  priced.sort((a, b) => a.price - b.price);
  const clear = priced.find(({ groups }) =>
    ringsApart(
      terms,
      groups.map((group) => book.kept(group)!),
    ),
  );
  return (clear ?? priced[0])?.groups ?? null;
}

/** Every way of dividing some numbers into groups. */
function partitions(all: readonly number[]): number[][][] {
  const [first, ...rest] = all;
  if (first === undefined) return [[]];
  return partitions(rest).flatMap((groups) => [
    [[first], ...groups],
    ...groups.map((_, k) => groups.map((group, at) => (at === k ? [first, ...group] : group))),
  ]);
}

function* joined(
  terms: SiteTerms,
  book: RingBook,
  all: readonly number[],
): Generator<SearchStep, Group[] | null> {
  let groups: Group[] = all.map((k) => [k]);
  for (;;) {
    let best: { groups: Group[]; saving: number } | null = null;
    for (const [p, q] of nearPairs(terms, groups)) {
      const joint = [...p, ...q].sort((a, b) => a - b);
      const ring = yield* book.ring(joint);
      if (!ring) continue;
      const saving = priceApart(terms, book.kept(p), book.kept(q)) - ring.priceM3;
      if (saving <= 0 || (best && saving <= best.saving)) continue;
      best = { saving, groups: [...groups.filter((each) => each !== p && each !== q), joint] };
    }
    if (!best) break;
    groups = best.groups;
  }
  return groups.every((group) => book.kept(group)) ? groups : null;
}

/** Far above any levee, and finite so that joint rings can still be told apart. */
const MUST_JOIN = 1e9;

function priceApart(terms: SiteTerms, one: FoundRing | null, two: FoundRing | null): number {
  if (!one || !two || !ringsApart(terms, [one, two])) return MUST_JOIN;
  return one.priceM3 + two.priceM3;
}

/** Each group with its nearest ones, every pair once. */
function nearPairs(terms: SiteTerms, groups: readonly Group[]): [Group, Group][] {
  const pairs = new Map<string, [Group, Group]>();
  groups.forEach((group, i) => {
    const others = groups
      .map((other, j) => ({ j, gap: j === i ? Infinity : gapBetween(terms, group, other) }))
      .sort((a, b) => a.gap - b.gap)
      .slice(0, Math.min(NEIGHBOURS_TRIED, groups.length - 1));
    for (const { j } of others) {
      const [low, high] = [Math.min(i, j), Math.max(i, j)];
      pairs.set(`${low} ${high}`, [groups[low]!, groups[high]!]);
    }
  });
  return [...pairs.values()];
}

function gapBetween(terms: SiteTerms, one: Group, other: Group): number {
  let least = Infinity;
  for (const p of one) {
    for (const q of other) {
      const shape = terms.obstacles[q]!.shape;
      for (const [x, y] of terms.request.structures[p]!) {
        least = Math.min(least, signedDistance(shape, x, y));
      }
    }
  }
  return least;
}

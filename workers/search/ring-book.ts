import { type Effort, findRing, type GroupRing } from "./find-ring.ts";
import { finishRing } from "./finish-ring.ts";
import { partOf } from "./progress.ts";
import { ringsApart } from "./rings-apart.ts";
import type { SearchTerms } from "./search-terms.ts";
import type { FoundRing, SearchStep } from "./types.ts";

export type Group = readonly number[];

/** Rings found so far, by group. */
export interface RingBook {
  /** Searches for the ring round a group, once, unless time is up and the group has a ring already. */
  ring(group: Group, effort?: Effort): Generator<SearchStep, FoundRing | null>;
  /** The cheapest ring known that encloses the group. */
  kept(group: Group): FoundRing | null;
  /** Whether two rings can be built side by side. */
  apart(one: FoundRing, other: FoundRing): boolean;
  /** The last search round a group; undefined when there was none. */
  searchRound(group: Group): GroupRing | undefined;
  searches(): GroupRing[];
  /** True once a group was left without a search. */
  leftOut(): boolean;
}

interface KnownRing {
  readonly ring: FoundRing;
  readonly holds: ReadonlySet<number>;
}

/**
 * @param usual how hard to look, unless told otherwise
 * @param expected searches expected, to tell how far it is
 */
export function ringBook(terms: SearchTerms, usual: Effort, expected: number): RingBook {
  const searches = new Map<string, GroupRing>();
  const wholly = new Set<string>();
  const rings: KnownRing[] = [];
  const apart = new Map<FoundRing, Map<FoundRing, boolean>>();
  let leftOut = false;
  const kept = (group: Group): FoundRing | null => {
    let best: FoundRing | null = null;
    for (const { ring, holds } of rings) {
      if (best && ring.priceM3 >= best.priceM3) continue;
      if (group.every((k) => holds.has(k))) best = ring;
    }
    return best;
  };
  const share = (done: number) => Math.min(1, done / expected);
  return {
    kept,
    searchRound: (group) => searches.get(group.join()),
    searches: () => [...searches.values()],
    leftOut: () => leftOut,
    apart(one, other) {
      const known = apart.get(one)?.get(other);
      if (known !== undefined) return known;
      const answer = one === other || farApart(one, other) || ringsApart(terms, [one, other]);
      for (const [p, q] of [
        [one, other],
        [other, one],
      ] as const) {
        apart.set(p, (apart.get(p) ?? new Map()).set(q, answer));
      }
      return answer;
    },
    *ring(group, effort = usual) {
      const key = group.join();
      if (wholly.has(key) || (searches.has(key) && !effort.wholeWindow)) return kept(group);
      const { deadline } = effort;
      if (deadline.givenUp() || (deadline.over() && kept(group))) {
        leftOut = true;
        return kept(group);
      }
      const [from, to] = [share(searches.size), share(searches.size + 1)];
      const search = yield* partOf(findRing(terms, group, effort, searches.get(key)), from, to);
      searches.set(key, search);
      if (effort.wholeWindow) wholly.add(key);
      if (search.ring) {
        const ring = yield* partOf(finishRing(terms, search.ring, deadline.givenUp), to, to);
        rings.push({ ring, holds: new Set(ring.encloses) });
      }
      return kept(group);
    },
  };
}

/** Farther than any two bases reach toward each other, metres. */
const FAR_M = 60;

/** A quick look at the boxes round two rings. */
function farApart({ corners: p }: FoundRing, { corners: q }: FoundRing): boolean {
  return [0, 1].some((axis) => {
    const [mine, others] = [p.map((at) => at[axis]!), q.map((at) => at[axis]!)];
    const gap = Math.max(
      Math.min(...mine) - Math.max(...others),
      Math.min(...others) - Math.max(...mine),
    );
    return gap > FAR_M;
  });
}

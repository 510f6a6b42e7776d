import type { Effort, GroupRing } from "./find-ring.ts";
import { joinGroups } from "./join-groups.ts";
import { type Group, type RingBook, ringBook } from "./ring-book.ts";
import type { SearchTerms } from "./search-terms.ts";
import type { FoundRing, SearchStep } from "./types.ts";

/** Up to this many structures every way of grouping them is compared. */
export const COMPARED_EXACTLY = 4;
/** Share of the time for the one ring round everything. */
const TOGETHER_SHARE = 0.3;
/** Of more structures than four, the time after which groups are no longer joined, as a share. */
const JOINING_SHARE = 0.8;
/** How far one of the groups still to be searched may use more than its share of the time. */
const FAIR = 2;

/** How the structures are best grouped into rings, and what was learnt on the way. */
export interface Grouping {
  /** Empty when some structure has no ring at all. */
  readonly rings: readonly FoundRing[];
  /** Searches done, for the figures. */
  readonly searches: readonly GroupRing[];
  /** A structure that no ring was found round, and the search for one; null when all have one. */
  readonly without: { readonly structure: number; readonly search: GroupRing | null } | null;
  readonly exact: boolean;
  /** True when some groups were not looked at for want of time. */
  readonly cutShort: boolean;
}

/**
 * One ring or several, whichever takes less. First one ring round all structures: whatever time is left, the
 * answer is never worse than that. Up to four structures: the cheapest of all ways of grouping them whose
 * rings keep clear of each other. More: near each of them first, groups are joined as long as that
 * saves, and then the chosen ones are searched for over the whole window.
 */
export function* chooseGroups(terms: SearchTerms, effort: Effort): Generator<SearchStep, Grouping> {
  const all = terms.request.structures.map((_, k) => k);
  const exact = all.length <= COMPARED_EXACTLY;
  const book = ringBook(terms, effort, exact ? 2 ** all.length - 1 : 4 * all.length);
  const { deadline } = effort;
  const one = all.length === 1;
  const together = one ? effort : { ...effort, deadline: deadline.part(TOGETHER_SHARE) };
  yield* book.ring(all, together);
  if (!one && exact) yield* searchAll(book, all, effort);
  const groups = exact ? cheapestOf(book, partitions(all)) : yield* manyGroups(terms, book, effort);
  const cutShort = book.leftOut() || (!exact && deadline.over());
  const result = { searches: book.searches(), exact, cutShort };
  if (!groups) {
    const structure = all.find((k) => !book.kept([k])) ?? all[0]!;
    const search = book.searchRound([structure]) ?? book.searchRound(all) ?? null;
    return { ...result, rings: [], without: { structure, search } };
  }
  return { ...result, rings: ringsOf(book, groups)!, without: null };
}

/** The ring round every group, the time shared out among them. */
function* searchAll(book: RingBook, all: Group, effort: Effort): Generator<SearchStep, void> {
  const groups = subsets(all).sort((p, q) => p.length - q.length);
  for (const [k, group] of groups.entries()) {
    const share = Math.min(1, FAIR / (groups.length - k));
    yield* book.ring(group, { ...effort, deadline: effort.deadline.part(share) });
  }
}

function subsets(all: Group): Group[] {
  return Array.from({ length: 2 ** all.length - 1 }, (_, k) =>
    all.filter((_each, bit) => ((k + 1) >> bit) & 1),
  );
}

/** The cheapest of some groupings whose rings keep clear of each other, or failing that the cheapest; null without any. */
function cheapestOf(book: RingBook, ways: readonly (readonly Group[])[]): readonly Group[] | null {
  const priced = ways.flatMap((groups) => {
    const rings = ringsOf(book, groups);
    return rings
      ? [{ groups, rings, price: rings.reduce((sum, each) => sum + each.priceM3, 0) }]
      : [];
  });
  priced.sort((a, b) => a.price - b.price);
  const clear = priced.find(({ rings }) => allApart(book, rings));
  return (clear ?? priced[0])?.groups ?? null;
}

/** The rings round some groups, each once; null when one has none. */
function ringsOf(book: RingBook, groups: readonly Group[]): FoundRing[] | null {
  const rings = groups.map((group) => book.kept(group));
  return rings.includes(null) ? null : [...new Set(rings as FoundRing[])];
}

function allApart(book: RingBook, rings: readonly FoundRing[]): boolean {
  return rings.every((ring, k) => rings.slice(k + 1).every((other) => book.apart(ring, other)));
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

function* manyGroups(
  terms: SearchTerms,
  book: RingBook,
  effort: Effort,
): Generator<SearchStep, readonly Group[] | null> {
  const all = terms.request.structures.map((_, k) => k);
  const deadline = effort.deadline.part(JOINING_SHARE);
  const nearBook: RingBook = {
    ...book,
    ring: (group) => book.ring(group, { ...effort, deadline, wholeWindow: false }),
  };
  for (const k of all) {
    yield* nearBook.ring([k]);
    if (!book.kept([k])) yield* book.ring([k]);
  }
  const joined = yield* joinGroups(terms, nearBook, deadline);
  if (effort.wholeWindow) {
    for (const [k, group] of joined.entries()) {
      const share = Math.min(1, FAIR / (joined.length - k));
      yield* book.ring(group, { ...effort, deadline: effort.deadline.part(share) });
    }
  }
  return cheapestOf(book, [joined, [all]]);
}

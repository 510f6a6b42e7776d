import { convexHull } from "../../shared/convex-hull.ts";
import type { Deadline } from "./deadline.ts";
import type { Group, RingBook } from "./ring-book.ts";
import type { SearchTerms } from "./search-terms.ts";
import { signedDistance } from "./shape.ts";
import type { FoundRing, Point, SearchStep } from "./types.ts";

/** A group is tried together with this many of its nearest. */
const NEIGHBOURS_TRIED = 2;
/** Far above any levee, and finite so that joint rings can still be told apart. */
const MUST_JOIN = 1e9;
/** Share of the cheaper ring's price per metre that a joint ring is taken to have at least. */
const CHEAPER_JOINT = 0.7;

/** Some structures that stand in one ring. */
interface Joined {
  readonly members: Group;
  readonly ring: FoundRing | null;
  /** Least distance to each structure, metres; 0 to its own. */
  readonly gapsM: Float64Array;
}

/**
 * From one ring each, the two groups whose joint ring saves most are joined, again and again, as long as it
 * saves and there is time; only the nearest groups are tried. A joint ring is searched for only when what it
 * could save at most passes what is known of all others.
 */
export function* joinGroups(
  terms: SearchTerms,
  book: RingBook,
  deadline: Deadline,
): Generator<SearchStep, Group[]> {
  const gaps = gapsBetween(terms);
  let groups = gaps.map((gapsM, k): Joined => ({ members: [k], ring: book.kept([k]), gapsM }));
  const tried = new Set<string>();
  while (!deadline.over()) {
    let best: { pair: Pair; saving: number } | null = null;
    for (const pair of nearPairs(groups)) {
      const joint = jointOf(pair);
      const saving = tried.has(joint.join())
        ? savingOf(book, pair, book.kept(joint))
        : mostSaved(book, pair);
      if (saving > 0 && !(best && saving <= best.saving)) best = { pair, saving };
    }
    if (!best) break;
    const [p, q] = best.pair;
    const members = jointOf(best.pair);
    const key = members.join();
    if (!tried.has(key)) {
      tried.add(key);
      yield* book.ring(members);
      continue;
    }
    const gapsM = p.gapsM.map((gap, k) => Math.min(gap, q.gapsM[k]!));
    const one = { members, ring: book.kept(members), gapsM };
    groups = [...groups.filter((each) => each !== p && each !== q), one];
  }
  return groups.map(({ members }) => members);
}

type Pair = readonly [Joined, Joined];

function jointOf([p, q]: Pair): Group {
  return [...p.members, ...q.members].sort((a, b) => a - b);
}

function savingOf(book: RingBook, pair: Pair, joint: FoundRing | null): number {
  return joint ? priceApart(book, pair) - joint.priceM3 : 0;
}

function priceApart(book: RingBook, [{ ring: one }, { ring: two }]: Pair): number {
  if (!one || !two || !book.apart(one, two)) return MUST_JOIN;
  return one.priceM3 + two.priceM3;
}

/** What a joint ring not yet searched for might save at most: it costs no less than either ring, or than its length. */
function mostSaved(book: RingBook, pair: Pair): number {
  const apart = priceApart(book, pair);
  const [{ ring: one }, { ring: two }] = pair;
  if (!one || !two || apart >= MUST_JOIN) return apart;
  const perM = (ring: FoundRing) => ring.priceM3 / Math.max(1, ring.figures.lengthM);
  const round = hullLength([...one.corners, ...two.corners]);
  const least = CHEAPER_JOINT * Math.min(perM(one), perM(two)) * round;
  return apart - Math.max(one.priceM3, two.priceM3, least);
}

/** Each group with its nearest ones, every pair once. */
function nearPairs(groups: readonly Joined[]): Pair[] {
  const pairs = new Map<number, Pair>();
  groups.forEach((group, i) => {
    const others = groups
      .map((other, j) => ({ j, gap: j === i ? Infinity : gapTo(group, other) }))
      .sort((a, b) => a.gap - b.gap)
      .slice(0, Math.min(NEIGHBOURS_TRIED, groups.length - 1));
    for (const { j } of others) {
      const [low, high] = [Math.min(i, j), Math.max(i, j)];
      pairs.set(low * groups.length + high, [groups[low]!, groups[high]!]);
    }
  });
  return [...pairs.values()];
}

function gapTo({ gapsM }: Joined, { members }: Joined): number {
  let least = Infinity;
  for (const k of members) if (gapsM[k]! < least) least = gapsM[k]!;
  return least;
}

/** Least distance from the corners of each structure to each other structure, metres. */
function gapsBetween(terms: SearchTerms): Float64Array[] {
  const { structures } = terms.request;
  const from = (p: number, q: number) => {
    const { shape } = terms.obstacles[q]!;
    return structures[p]!.reduce(
      (gap, [x, y]) => Math.min(gap, signedDistance(shape, x, y)),
      Infinity,
    );
  };
  return structures.map((_, p) =>
    Float64Array.from(structures, (_each, q) => (p === q ? 0 : Math.min(from(p, q), from(q, p)))),
  );
}

/** Length of the convex hull of some points, metres. */
function hullLength(points: readonly Point[]): number {
  const hull = convexHull(points);
  return hull.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = hull[(k + 1) % hull.length]!;
    return sum + Math.hypot(nextX - x, nextY - y);
  }, 0);
}

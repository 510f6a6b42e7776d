import { siteLattice } from "./lattice.ts";
import { unlessLate } from "./progress.ts";
import { searchLattice, USUAL_OPTIONS } from "./search-lattice.ts";
import type { SearchTerms } from "./search-terms.ts";
import type { BestPossible, SearchStep } from "./types.ts";
import { linkStructures, linkWaters } from "./walls.ts";

/** How far clearances are eased, in cells of the lattice. */
const EASED_CELLS = 0.75;
/** Farthest that a path of a 32-neighbour stencil may be longer than a straight one: 1 / cos(half its widest angle). */
const WORST_STRETCH = 1.0131;
const MOST_RUNS = 40;
/** A bound below this share of the price comes from a search that had no time. */
const LEAST_KNOWN_SHARE = 0.1;

/**
 * An estimate of the best price possible in the window, for one ring round some structures: the bound of a
 * search with 32 neighbours on the fine lattice with eased clearances, less the most that such a lattice can
 * lengthen a straight line. It is no proof: how a lattice follows ground that varies is not bounded.
 * @param priceM3 price of the line found
 * @returns null when time ran out before anything worth saying was known
 */
export function* estimateBest(
  terms: SearchTerms,
  group: readonly number[],
  priceM3: number,
  outOfTime: () => boolean,
): Generator<SearchStep, BestPossible | null> {
  const lattice = yield* unlessLate(siteLattice(terms, terms.box, 1, EASED_CELLS), outOfTime);
  if (!lattice) return null;
  const inside = group.map((k) => terms.obstacles[k]!.shape.inside);
  yield* linkWaters(lattice);
  yield* linkStructures(lattice, inside);
  const answer = yield* searchLattice(lattice, inside[0]!, {
    ...USUAL_OPTIONS,
    neighbours: 32,
    knownPrice: priceM3,
    runs: MOST_RUNS,
    outOfTime,
    givenUp: outOfTime,
  });
  if (!(answer.lowerBound > LEAST_KNOWN_SHARE * priceM3)) return null;
  const bestM3 = Math.min(priceM3, answer.lowerBound / WORST_STRETCH);
  const gapShare = priceM3 / bestM3 - 1;
  return {
    kind: "estimate",
    priceM3: bestM3,
    gapShare,
  };
}

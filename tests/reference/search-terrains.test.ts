import { describe, expect, it } from "vitest";
import { siteLattice } from "../../workers/search/lattice.ts";
import { lineFromLoop } from "../../workers/search/line-from-loop.ts";
import { driven } from "../../workers/search/progress.ts";
import { searchGround } from "../../workers/search/search-ground.ts";
import { searchLattice, USUAL_OPTIONS } from "../../workers/search/search-lattice.ts";
import { searchRing } from "../../workers/search/search-ring.ts";
import { grown, searchTerms, windowBox } from "../../workers/search/search-terms.ts";
import type { SearchRequest } from "../../workers/search/types.ts";
import { howMany } from "../helpers/how-many.ts";
import { seededSite } from "../helpers/search-terrain.ts";

/** An even number. */
const TERRAINS = howMany(16, 40);

/**
 * Seeded terrains: the ring of at most 24 corners against the best of a much finer search, with four
 * times the nodes (0.25 m), a corner for every tenth of the usual saving and up to 90 of them.
 */
function finerSearch(request: SearchRequest): number {
  const box = windowBox(request.window, request.structures);
  const terms = searchTerms({
    ...request,
    ground: searchGround(request.ground, grown(box, 13), 0.25),
  });
  const lattice = driven(siteLattice(terms, terms.box, 1, 0.4));
  const steps = searchLattice(lattice, terms.obstacles[0]!.shape.inside, {
    ...USUAL_OPTIONS,
    by: "divide",
    tolerance: 2e-3,
  });
  const fine = { cornerShare: 1e-4, maxCorners: 90, outOfTime: () => false };
  const lines = driven(steps)
    .rings.slice(0, 2)
    .map(({ loop, price }) => driven(lineFromLoop(terms, lattice, loop, price, fine)).priceM3);
  return Math.min(...lines);
}

describe(`rings on ${TERRAINS} seeded terrains`, () => {
  it("lie within 0.8 % (median) and 2 % (worst) of a much finer search", () => {
    const excess = Array.from({ length: TERRAINS }, (_, k) => {
      const request = seededSite(k + 1, 20);
      const { rings, cutShort } = searchRing(request, { timeCapMs: 60_000 });
      expect(cutShort).toBe(false);
      expect(rings[0]!.corners.length).toBeLessThanOrEqual(24);
      return rings[0]!.priceM3 / finerSearch(request) - 1;
    });
    excess.sort((a, b) => a - b);
    const middle = TERRAINS / 2;
    expect((excess[middle - 1]! + excess[middle]!) / 2).toBeLessThan(0.008);
    expect(excess.at(-1)!).toBeLessThan(0.02);
  });
});

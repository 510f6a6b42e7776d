import { describe, expect, it } from "vitest";
import type { GroundSampler } from "../../shared/ground.ts";
import { biggerCordons } from "../../workers/search/bigger-cordons.ts";
import { inTurns } from "../../workers/search/in-turns.ts";
import { searchGround } from "../../workers/search/search-ground.ts";
import { ringSteps, searchRing } from "../../workers/search/search-ring.ts";
import type { SearchStep } from "../../workers/search/types.ts";
import { rectangle, requestFor, seededSite } from "../helpers/search-terrain.ts";

/** A hollow whose rim stands above the crest but for a gap of 8 m to the east, 60 m away. */
const hollow: GroundSampler = {
  cellM: 1,
  heightAt: (x, y) => {
    const off = Math.hypot(x, y);
    const gap = x > 0 && Math.abs(y) < 4;
    return off > 60 && off < 66 && !gap ? 1.5 : 0;
  },
};

describe("bigger cordons", () => {
  const request = requestFor(hollow, rectangle(10, 8, 0), 0.9);
  const cordons = driven(biggerCordons(request, { timeCapMs: 60_000 }, [15, 30, 45, 90]));

  it("offer the far loop over free ground as a choice: less to build, more enclosed", () => {
    expect(cordons.map((each) => each.reachM)).toEqual([15, 30, 45, 90]);
    const [house, wider, , rim] = cordons;
    expect(wider!.sameAsBefore).toBe(true);
    expect(rim!.sameAsBefore).toBe(false);
    expect(rim!.ring!.enclosedM2).toBeGreaterThan(10 * house!.ring!.enclosedM2);
    expect(rim!.ring!.figures.builtLengthM).toBeLessThan(14);
    expect(rim!.savedM3).toBeCloseTo(
      house!.ring!.figures.volumeM3 - rim!.ring!.figures.volumeM3,
      9,
    );
  });

  it("are never dearer than the smaller ones", () => {
    const prices = cordons.map((each) => each.ring!.priceM3);
    for (let k = 1; k < prices.length; k++) expect(prices[k]).toBeLessThanOrEqual(prices[k - 1]!);
  });

  it("have no ring where the window is too small for one", () => {
    const none = driven(biggerCordons(request, {}, [3, 15]));
    expect(none[0]!.ring).toBeNull();
    expect(none[1]!.ring).not.toBeNull();
  });
});

describe("a search in turns", () => {
  it("gives the answer of the search in one go", async () => {
    const request = seededSite(2, 30);
    const at = await inTurns(ringSteps(request, { timeCapMs: 60_000 }));
    expect(at.rings).toEqual(searchRing(request, { timeCapMs: 60_000 }).rings);
  });

  it("reports progress and stops when it is cancelled", async () => {
    const abort = new AbortController();
    const shares: number[] = [];
    const steps = endless();
    const search = inTurns(steps, {
      signal: abort.signal,
      onProgress: (share) => {
        shares.push(share);
        if (shares.length === 3) abort.abort();
      },
    });
    await expect(search).rejects.toMatchObject({ code: "cancelled" });
    expect(shares).toHaveLength(3);
  });

  function* endless(): Generator<SearchStep, never> {
    for (;;) yield { share: 0.5, doing: "Comparing rings" };
  }
});

describe("a search cut short", () => {
  it("by the clock still has a ring, and says that it was cut short", () => {
    let ticks = 0;
    const result = searchRing(seededSite(5, 60), { timeCapMs: 1, now: () => ticks++ });
    expect(result.cutShort).toBe(true);
    expect(result.rings).toHaveLength(1);
    expect(result.notes).toContainEqual({ kind: "cut-short" });
  });
});

describe("the memory of a search", () => {
  it("stays under 60 bytes a node of its lattice, the ground under it included", () => {
    const { statistics } = searchRing(
      requestFor(hollow, rectangle(10, 8, 0), 0.9, { window: { reachM: 150 } }),
      { timeCapMs: 60_000 },
    );
    expect(statistics.cells).toBeGreaterThan(90_000);
    expect(statistics.bytes / statistics.cells).toBeLessThan(60);
  });
});

describe("ground that is kept between searches", () => {
  it("is read once", () => {
    const request = seededSite(3, 30);
    let reads = 0;
    const counted: GroundSampler = {
      cellM: 1,
      heightAt: (x, y) => {
        reads++;
        return request.ground.heightAt(x, y);
      },
    };
    const ground = searchGround(counted, { minX: -60, minY: -60, maxX: 60, maxY: 60 });
    const first = searchRing({ ...request, ground }, { timeCapMs: 60_000 });
    const afterFirst = reads;
    const again = searchRing({ ...request, ground }, { timeCapMs: 60_000 });
    expect(again.rings).toEqual(first.rings);
    expect(reads - afterFirst).toBeLessThan(afterFirst / 2);
  });
});

function driven<T>(steps: Generator<SearchStep, T>): T {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

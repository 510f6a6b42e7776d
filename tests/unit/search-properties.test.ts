import { describe, expect, it } from "vitest";
import type { GroundSampler } from "../../shared/ground.ts";
import { searchRing } from "../../workers/search/search-ring.ts";
import type { Point, SearchRequest } from "../../workers/search/types.ts";
import { rectangle, requestFor, roughTerrain, seededSite } from "../helpers/search-terrain.ts";

/**
 * What must not change, or must change one way only. A line is improved step by step from where the lattice
 * puts it, so two searches of one site seen from another side may end a little apart: 1 %.
 */
const SAME = 0.01;

function priceOf(request: SearchRequest): number {
  return searchRing(request, { timeCapMs: 60_000 }).priceM3;
}

/** The site moved by a map of the plane that keeps lengths; `back` is its inverse. */
function moved(
  request: SearchRequest,
  there: (point: Point) => Point,
  back: (point: Point) => Point,
): SearchRequest {
  const ground: GroundSampler = {
    cellM: request.ground.cellM,
    heightAt: (x, y) => request.ground.heightAt(...back([x, y])),
  };
  const structures = request.structures.map((outline) => outline.map(there));
  return { ...request, ground, structures };
}

describe("the price of the ring", () => {
  const request = seededSite(4, 25);
  const price = priceOf(request);

  it.each([
    {
      what: "turned by a right angle",
      there: ([x, y]: Point): Point => [-y, x],
      back: ([x, y]: Point): Point => [y, -x],
    },
    {
      what: "turned half round",
      there: ([x, y]: Point): Point => [-x, -y],
      back: ([x, y]: Point): Point => [-x, -y],
    },
    {
      what: "mirrored",
      there: ([x, y]: Point): Point => [-x, y],
      back: ([x, y]: Point): Point => [-x, y],
    },
    {
      what: "shifted by whole metres",
      there: ([x, y]: Point): Point => [x + 137, y - 48],
      back: ([x, y]: Point): Point => [x - 137, y + 48],
    },
    {
      what: "turned by 30 degrees",
      there: ([x, y]: Point): Point => [x * 0.8660254 - y * 0.5, x * 0.5 + y * 0.8660254],
      back: ([x, y]: Point): Point => [x * 0.8660254 + y * 0.5, -x * 0.5 + y * 0.8660254],
    },
  ])("is the same on a site $what", ({ there, back }) => {
    expect(Math.abs(priceOf(moved(request, there, back)) / price - 1)).toBeLessThan(SAME);
  });

  it("is exactly the same when a hill far away is raised", () => {
    const hill: GroundSampler = {
      cellM: 1,
      heightAt: (x, y) => request.ground.heightAt(x, y) + (Math.hypot(x - 70, y - 70) < 8 ? 30 : 0),
    };
    expect(priceOf({ ...request, ground: hill })).toBe(price);
  });

  it("is not lowered by a no-go area, wherever it lies", () => {
    for (const [x, y] of [
      [11, 0],
      [-9, 8],
      [0, -10],
      [14, 12],
    ] as const) {
      const noGo = [rectangle(5, 3, 40, [x, y])];
      expect(priceOf({ ...request, noGo })).toBeGreaterThan(price * (1 - SAME));
    }
  });

  it("is not lowered by a higher stage", () => {
    let before = 0;
    for (let riseM = -0.3; riseM <= 0.31; riseM += 0.1) {
      const higher = priceOf({ ...request, crestAt: () => request.crestAt(0, 0) + riseM });
      expect(higher).toBeGreaterThan(before * (1 - SAME));
      before = higher;
    }
  });

  it("is not raised by a larger window", () => {
    expect(priceOf({ ...request, window: { reachM: 45 } })).toBeLessThan(price * (1 + SAME));
  });

  it("is that of the crest's plane where the crest falls", () => {
    const level = requestFor({ heightAt: () => 0, cellM: 1 }, rectangle(12, 8, 15), 0.8);
    const fall = 0.01;
    const tilted = {
      ...level,
      ground: { heightAt: (x: number) => -fall * x, cellM: 1 },
      crestAt: (x: number) => 0.8 - fall * x,
    };
    expect(Math.abs(priceOf(tilted) / priceOf(level) - 1)).toBeLessThan(1e-3);
  });
});

describe("a ring over the limit", () => {
  it("is found and flagged, and says so in words", () => {
    const deep = requestFor(
      { heightAt: roughTerrain(3, 60), cellM: 1 },
      rectangle(12, 9, 10),
      2.4,
      {
        window: { reachM: 25 },
      },
    );
    const result = searchRing(deep);
    expect(result.overLimit).toBe(true);
    expect(result.rings[0]!.figures.greatestHeightM).toBeGreaterThan(deep.rule.limitM);
    expect(result.notes).toContainEqual({ kind: "over-limit" });
  });

  it("is avoided where a detour keeps below it", () => {
    const pit: GroundSampler = {
      cellM: 1,
      heightAt: (x, y) => (Math.hypot(x - 11, y) < 3 ? -1 : 0),
    };
    const result = searchRing(
      requestFor(pit, rectangle(12, 9, 0), 0.9, { window: { reachM: 25 } }),
    );
    expect(result.overLimit).toBe(false);
    expect(result.rings[0]!.figures.greatestHeightM).toBeLessThanOrEqual(1.2192);
  });
});

import { describe, expect, it } from "vitest";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import { asFailure } from "../../shared/failure.ts";
import { searchRing } from "../../workers/search/search-ring.ts";
import { sectionModel } from "../../workers/search/section-model.ts";
import type { SearchRequest } from "../../workers/search/types.ts";
import { said } from "../helpers/said.ts";
import {
  rasterGround,
  rectangle,
  regularPolygon,
  requestFor,
  seeded,
} from "../helpers/search-terrain.ts";

/** Impossible cases end in words: what was expected, what came, what to do. */
const flat = { heightAt: () => 0, cellM: 1 };
const house = rectangle(12, 8, 10);
const usual = requestFor(flat, house, 0.8, { window: { reachM: 30 } });

function refusalOf(request: SearchRequest) {
  try {
    searchRing(request);
  } catch (thrown) {
    return said(asFailure(thrown));
  }
  throw new Error("Expected a refusal; a ring was found.");
}

describe("a site without a possible ring", () => {
  it.each<{ what: string; request: SearchRequest; code: string; says: RegExp }>([
    {
      what: "no structure chosen",
      request: { ...usual, structures: [] },
      code: "site/no-structure",
      says: /footprint/,
    },
    {
      what: "an outline without area",
      request: {
        ...usual,
        structures: [
          [
            [0, 0],
            [5, 0],
            [10, 0],
          ],
        ],
      },
      code: "site/flat-structure",
      says: /Draw the footprint again/,
    },
    {
      what: "the structure at the edge of the data",
      request: { ...usual, ground: { cellM: 1, heightAt: (x) => (x > 9 ? Number.NaN : 0) } },
      code: "site/edge-of-data",
      says: /east .*missing/,
    },
    {
      what: "the footprint in a hole that fills the window",
      request: { ...usual, ground: { cellM: 1, heightAt: () => Number.NaN } },
      code: "site/no-ground",
      says: /gap of the elevation data/,
    },
    {
      what: "everything no-go",
      request: { ...usual, noGo: [rectangle(200, 200, 0)] },
      code: "site/all-no-go",
      says: /no-go/,
    },
    {
      what: "a no-go strip from the house to the edge of the window",
      request: { ...usual, noGo: [rectangle(4, 80, 0, [0, 45])] },
      code: "site/all-no-go",
      says: /north/,
    },
    {
      what: "a window too small",
      request: { ...usual, window: { reachM: 3 } },
      code: "site/window-too-small",
      says: /window larger/,
    },
    {
      what: "a drawn window that misses the house",
      request: { ...usual, window: { outline: rectangle(20, 20, 0, [15, 0]) } },
      code: "site/window-misses-structure",
      says: /include the whole building/,
    },
    {
      what: "permanent water against the house",
      request: { ...usual, water: [rectangle(100, 60, 0, [0, 35])] },
      code: "site/water-in-the-way",
      says: /water/,
    },
    {
      what: "a spread of structures beyond reason",
      request: { ...usual, structures: [house, rectangle(10, 10, 0, [5000, 0])] },
      code: "site/too-wide",
      says: /spread over 16,639 ft; at most 6,562 ft/,
    },
  ])("is refused with a reason: $what", ({ request, code, says }) => {
    const refusal = refusalOf(request);
    expect(refusal.code).toBe(code);
    expect(`${refusal.message} ${refusal.remedy}`).toMatch(says);
    expect(refusal.remedy.length).toBeGreaterThan(10);
  });
});

describe("missing ground that can be gone round", () => {
  const holed = (x: number, y: number) => (Math.hypot(x - 12, y) < 3 ? Number.NaN : 0);

  it("is gone round, with the whole base", () => {
    const { rings } = searchRing({ ...usual, ground: { cellM: 1, heightAt: holed } });
    const [ring] = rings;
    expect(ring!.blindM).toBe(0);
    const whole = searchRing(usual).rings[0]!;
    expect(ring!.figures.volumeM3).toBeGreaterThan(whole.figures.volumeM3);
    for (const [x, y] of alongRing(ring!.corners))
      expect(Math.hypot(x - 12, y)).toBeGreaterThan(4.1);
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    "is gone round with a step to spare where it lies in many places, site %i",
    (seed) => {
      const ground = rasterGround(160, 0.75, manyHoles(seed));
      const section = sectionModel(DEFAULT_SECTION, ground);
      const request = { ...requestFor(ground, house, 0.9, { window: { reachM: 60 } }), section };
      const [ring] = searchRing(request, { timeCapMs: 60_000 }).rings;
      expect(ring!.blindM).toBe(0);
      const { corners } = ring!;
      for (const [k, [x1, y1]] of corners.entries()) {
        const [x2, y2] = corners[(k + 1) % corners.length]!;
        const lengthM = Math.hypot(x2 - x1, y2 - y1);
        const [leftX, leftY] = [-(y2 - y1) / lengthM, (x2 - x1) / lengthM];
        for (let share = 0; share <= 1; share += 0.02) {
          const [x, y] = [x1 + share * (x2 - x1), y1 + share * (y2 - y1)];
          const halfM = section.halfBaseAt(0.9 - ground.heightAt(x, y));
          for (const offM of [-halfM, 0, halfM]) {
            expect(ground.heightAt(x + offM * leftX, y + offM * leftY)).not.toBeNaN();
          }
        }
      }
    },
  );

  /** Gently sloping ground with 12 round or square holes about the house. */
  function manyHoles(seed: number) {
    const chance = seeded(seed);
    const between = (low: number, high: number) => low + (high - low) * chance();
    const holes = Array.from({ length: 12 }, () => {
      const [turn, farM] = [between(0, 2 * Math.PI), between(13, 45)];
      const [x, y] = [farM * Math.cos(turn), farM * Math.sin(turn)];
      return { x, y, reachM: between(0.7, 5), isSquare: chance() < 0.5 };
    });
    const [east, north] = [between(-0.006, 0.006), between(-0.006, 0.006)];
    return (x: number, y: number) => {
      const isHole = holes.some((hole) => {
        const [dx, dy] = [Math.abs(x - hole.x), Math.abs(y - hole.y)];
        return (hole.isSquare ? Math.max(dx, dy) : Math.hypot(dx, dy)) < hole.reachM;
      });
      return isHole ? Number.NaN : east * x + north * y;
    };
  }

  it("under the house itself does not matter", () => {
    const ground = {
      cellM: 1,
      heightAt: (x: number, y: number) => (Math.hypot(x, y) < 5 ? Number.NaN : 0),
    };
    const price = searchRing({ ...usual, ground }).priceM3;
    expect(Math.abs(price / searchRing(usual).priceM3 - 1)).toBeLessThan(0.01);
  });

  function alongRing(corners: readonly (readonly [number, number])[]) {
    return corners.flatMap(([x1, y1], k) => {
      const [x2, y2] = corners[(k + 1) % corners.length]!;
      const steps = Math.ceil(Math.hypot(x2 - x1, y2 - y1) / 0.2);
      return Array.from(
        { length: steps },
        (_, i) => [x1 + ((x2 - x1) * i) / steps, y1 + ((y2 - y1) * i) / steps] as const,
      );
    });
  }
});

describe("water that must stay outside", () => {
  /** Ground falls toward a pond, so that a ring round house and pond together would be the cheaper one. */
  const pond = regularPolygon(5, 12).map(([x, y]) => [x + 19, y] as const);
  const ground = {
    cellM: 1,
    heightAt: (x: number, y: number) => {
      const off = Math.hypot(x - 19, y);
      if (off > 9) return Math.hypot(x - 9, y) > 24 ? 0.75 : 0.1;
      return -0.3;
    },
  };
  const open = requestFor(ground, rectangle(8, 8, 0), 0.8, { window: { reachM: 45 } });

  it("would be enclosed if it were not marked", () => {
    expect(encloses(searchRing(open).rings[0]!.corners, 19, 0)).toBe(true);
  });

  it("is left outside when it is marked", () => {
    const { rings } = searchRing({ ...open, water: [pond] });
    expect(encloses(rings[0]!.corners, 0, 0)).toBe(true);
    for (const [x, y] of pond) expect(encloses(rings[0]!.corners, x, y)).toBe(false);
  });

  function encloses(
    corners: readonly (readonly [number, number])[],
    x: number,
    y: number,
  ): boolean {
    let turns = 0;
    corners.forEach(([x1, y1], k) => {
      const [x2, y2] = corners[(k + 1) % corners.length]!;
      turns += Math.atan2(
        (x1 - x) * (y2 - y) - (x2 - x) * (y1 - y),
        (x1 - x) * (x2 - x) + (y1 - y) * (y2 - y),
      );
    });
    return Math.abs(turns) > Math.PI;
  }
});

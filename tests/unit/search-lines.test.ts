import { describe, expect, it } from "vitest";
import type { GroundSampler } from "../../shared/ground.ts";
import { improveLine } from "../../workers/search/improve-line.ts";
import { driven } from "../../workers/search/progress.ts";
import { searchRing } from "../../workers/search/search-ring.ts";
import { sidewaysCost } from "../../workers/search/sideways-cost.ts";
import type { Point } from "../../workers/search/types.ts";
import { LEVEL_SECTION, rectangle, requestFor, seededSite } from "../helpers/search-terrain.ts";

const house = rectangle(12, 8, 0);
const flat: GroundSampler = { heightAt: () => 0, cellM: 1 };

describe("improving a drawn line", () => {
  const request = seededSite(6, 30);
  const drawn: Point[] = rectangle(34, 30, 10).map(([x, y]) => [x, y]);

  it("moves corners to where the line takes less, and keeps the rules", () => {
    const closed = { corners: drawn, closed: true, pinnedCorners: [], pinnedLegs: [] };
    const better = driven(improveLine(request, closed, { timeCapMs: 60_000 }));
    expect(better.after.volumeM3).toBeLessThan(better.before.volumeM3);
    expect(better.keepsRules).toBe(true);
    const best = searchRing(request, { timeCapMs: 60_000 }).rings[0]!;
    expect(better.after.volumeM3).toBeGreaterThan(best.figures.volumeM3 * 0.98);
  });

  it("leaves pinned corners and legs where they are", () => {
    const pins = { corners: drawn, closed: true, pinnedCorners: [0], pinnedLegs: [2] };
    const better = driven(improveLine(request, pins, { timeCapMs: 60_000 }));
    for (const k of [0, 2, 3]) {
      const at = better.pinned.indexOf(k);
      expect(better.corners[at]).toEqual(drawn[k]);
    }
    const first = better.pinned.indexOf(2);
    expect(better.pinned[(first + 1) % better.pinned.length]).toBe(3);
  });

  it("keeps the ends of an open line", () => {
    const corners: Point[] = [
      [-30, 12],
      [0, 20],
      [30, 12],
    ];
    const open = { corners, closed: false, pinnedCorners: [], pinnedLegs: [] };
    const better = driven(improveLine(request, open, { timeCapMs: 60_000 }));
    expect(better.corners[0]).toEqual(corners[0]);
    expect(better.corners.at(-1)).toEqual(corners[2]);
    expect(better.after.levelVolumeM3).toBeLessThanOrEqual(better.before.levelVolumeM3);
  });

  it("mends a line that stands too close", () => {
    const close = {
      corners: rectangle(15, 11, 0),
      closed: true,
      pinnedCorners: [],
      pinnedLegs: [],
    };
    const better = driven(improveLine(requestFor(flat, house, 0.6), close, { timeCapMs: 60_000 }));
    expect(better.keptRulesBefore).toBe(false);
    expect(better.keepsRules).toBe(true);
  });

  it("refuses a line without corners", () => {
    const none = { corners: [[0, 0] as const], closed: false, pinnedCorners: [], pinnedLegs: [] };
    expect(() => driven(improveLine(request, none))).toThrow(/^site\/too-few-corners/);
  });
});

describe("what a move sideways costs", () => {
  const FALL = 0.04;
  const slope: GroundSampler = { heightAt: (_, y) => FALL * y, cellM: 1 };
  /** A line east along y = 20 on ground that rises to the north: the height is 1.6 - 0.04 y. */
  const line: Point[] = [
    [-20, 20],
    [20, 20],
  ];
  const request = requestFor(slope, house, 1.6);

  it("is the change of the section's area, per metre, on either side", () => {
    const cost = driven(sidewaysCost(request, line, false, 0.5));
    const here = LEVEL_SECTION.areaAt(0.8);
    const up = (LEVEL_SECTION.areaAt(0.8 - 0.5 * FALL) - here) / 0.5;
    const down = (LEVEL_SECTION.areaAt(0.8 + 0.5 * FALL) - here) / 0.5;
    expect(cost.chainageM).toHaveLength(20);
    for (let k = 0; k < 20; k++) {
      expect(cost.left[k]).toBeCloseTo(up, 4);
      expect(cost.right[k]).toBeCloseTo(down, 4);
    }
  });

  it("is not given where the move would break a rule or leave the ground", () => {
    const ground: GroundSampler = { cellM: 1, heightAt: (_, y) => (y > 20.2 ? Number.NaN : 0) };
    const blind = driven(sidewaysCost({ ...request, ground, crestAt: () => 0.5 }, line, false));
    expect([...blind.left].every(Number.isNaN)).toBe(true);
    const near: Point[] = [
      [-3, 7.8],
      [3, 7.8],
    ];
    const tight = driven(sidewaysCost(requestFor(flat, house, 0.8), near, false));
    expect([...tight.right].every(Number.isNaN)).toBe(true);
    expect([...tight.left].every(Number.isNaN)).toBe(false);
  });
});

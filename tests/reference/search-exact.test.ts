import { describe, expect, it } from "vitest";
import type { GroundSampler } from "../../shared/ground.ts";
import { searchRing } from "../../workers/search/search-ring.ts";
import type { Outline } from "../../workers/search/types.ts";
import {
  BASE_RATIO,
  LEVEL_SECTION,
  rectangle,
  regularPolygon,
  requestFor,
  SETBACK_M,
} from "../helpers/search-terrain.ts";

/**
 * Sites whose best line is known in closed form. On level ground the price of a metre is the same
 * everywhere, so the best ring is the shortest one at the rule's distance d = setback + base / 2.
 */
const HEIGHT_M = 0.8;
const AREA_M2 = LEVEL_SECTION.areaAt(HEIGHT_M);
const CLEAR_M = SETBACK_M + (BASE_RATIO * HEIGHT_M) / 2;
const FLAT: GroundSampler = { heightAt: () => 0, cellM: 1 };

describe("level ground: the shortest ring at setback plus half base", () => {
  /** Shortest closed line at distance d from an outline: its hull's perimeter and one full circle of radius d (Steiner). */
  const cases: readonly { what: string; outline: Outline; hullM: number }[] = [
    {
      what: "a disc of 10 m radius",
      outline: regularPolygon(10, 96),
      hullM: 2 * 96 * 10 * Math.sin(Math.PI / 96),
    },
    { what: "a rectangle of 15 x 10 m, turned", outline: rectangle(15, 10, 20), hullM: 50 },
    { what: "a rectangle of 40 x 25 m, turned", outline: rectangle(40, 25, 33), hullM: 130 },
    {
      what: "an L, whose ring follows its hull",
      outline: [
        [-9, -7],
        [9, -7],
        [9, -1],
        [-1, -1],
        [-1, 7],
        [-9, 7],
      ],
      hullM: 18 + 6 + Math.hypot(10, 8) + 8 + 14,
    },
  ];
  it.each(cases)("$what: within 1.5 % with at most 24 corners", ({ outline, hullM }) => {
    const exactM3 = AREA_M2 * (hullM + 2 * Math.PI * CLEAR_M);
    const { rings } = searchRing(requestFor(FLAT, outline, HEIGHT_M), { timeCapMs: 60_000 });
    expect(rings).toHaveLength(1);
    expect(rings[0]!.corners.length).toBeLessThanOrEqual(24);
    expect(rings[0]!.figures.volumeM3).toBeGreaterThan(exactM3 * (1 - 1e-3));
    expect(rings[0]!.figures.volumeM3).toBeLessThan(exactM3 * 1.015);
  });
});

/** Ground that is low west of `edgeM` and steps up to `highM` within the half metre before it. */
function step(edgeM: number, highM: number): GroundSampler {
  return {
    heightAt: (x) => highM * Math.min(1, Math.max(0, (x - edgeM + 0.5) / 0.5)),
    cellM: 1,
  };
}

describe("a step in height beside a round structure", () => {
  const RADIUS_M = 10;
  const disc = regularPolygon(RADIUS_M, 96);
  const ringM = RADIUS_M + CLEAR_M;
  const EDGE_M = 15;

  /**
   * Snell's law. The line leaves the circle of radius p along a tangent, meets the step at the critical
   * angle (sine = f2 / f1 to the step's normal, f the price of a metre), and runs along the top of the
   * step. The tangent at angle t from the x axis meets x = a after (a - p cos t) / sin t, and cos t is
   * the sine of the angle to the normal: cos t = f2 / f1. By symmetry the whole ring costs
   *   f1 (2 pi - 2 t) p + 2 f1 (a - p cos t) / sin t + 2 f2 (p sin t - (a - p cos t) cos t / sin t).
   */
  it("is met at the critical angle: within 2 %", () => {
    const lowHeightM = HEIGHT_M - 0.5;
    const low = LEVEL_SECTION.areaAt(lowHeightM);
    const ratio = low / AREA_M2;
    const t = Math.acos(ratio);
    const legM = (EDGE_M - ringM * ratio) / Math.sin(t);
    const alongM = ringM * Math.sin(t) - legM * ratio;
    const exactM3 = AREA_M2 * ((2 * Math.PI - 2 * t) * ringM + 2 * legM) + 2 * low * alongM;
    expect(exactM3).toBeLessThan(0.97 * AREA_M2 * 2 * Math.PI * ringM);
    const { rings } = searchRing(requestFor(step(EDGE_M, 0.5), disc, HEIGHT_M), {
      timeCapMs: 60_000,
    });
    expect(Math.abs(rings[0]!.figures.volumeM3 / exactM3 - 1)).toBeLessThan(0.02);
    const east = Math.max(...rings[0]!.corners.map(([x]) => x));
    expect(east).toBeGreaterThan(EDGE_M - 0.3);
  });

  /**
   * A bank above the crest is free, so the line meets it square: half the circle and two straight legs of
   * length a. It is cheaper than the ring where 2 a < pi p.
   */
  it("above the crest becomes a line tied in at both ends: within 2 %", () => {
    const exactM = Math.PI * ringM + 2 * EDGE_M;
    const { rings } = searchRing(requestFor(step(EDGE_M, 1.2), disc, HEIGHT_M), {
      timeCapMs: 60_000,
    });
    const ring = rings[0]!;
    expect(Math.abs(ring.figures.volumeM3 / (AREA_M2 * exactM) - 1)).toBeLessThan(0.02);
    expect(ring.pieces).toHaveLength(1);
    expect(ring.free).toHaveLength(1);
    const [piece] = ring.pieces;
    for (const tieIn of piece!.tieIns) {
      expect(tieIn.elevationM).toBeCloseTo(HEIGHT_M, 6);
      expect(step(EDGE_M, 1.2).heightAt(...tieIn.at)).toBeCloseTo(HEIGHT_M, 2);
      expect(tieIn.keyInM).toBe(2);
      expect(Math.abs(tieIn.at[0] - EDGE_M)).toBeLessThan(0.5);
    }
    expect(piece!.figures.lengthM).toBeCloseTo(ring.figures.builtLengthM + 4, 1);
  });
});

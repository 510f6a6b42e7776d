import { lineString, nearestPointOnLine } from "@turf/turf";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layLine, placeAt } from "../../shared/alignment.ts";
import { carriedBreaks } from "../../shared/carry-breaks.ts";
import { withCorners } from "../../shared/pins.ts";
import type { Alignment } from "../../shared/plan.ts";
import { type Corner, lonLats, openLine, PLANE, ring } from "../helpers/grounds.ts";

const SQUARE: Corner[] = [
  [0, 0],
  [100, 0],
  [100, 80],
  [0, 80],
];
const moved = (corners: readonly Corner[], index: number, to: Corner) =>
  lonLats(corners.map((corner, i) => (i === index ? to : corner)));
const length = (of: Alignment) => layLine(of, PLANE).lengthM;

describe("reach breaks while corners change", () => {
  it("keep a stretch on its leg when the line before it grows longer", () => {
    const before = ring(SQUARE, [220, 260]);
    const after = carriedBreaks(before, moved(SQUARE, 1, [130, 0]));
    const grown = Math.hypot(30, 80) - 80 + 30;
    expect(after[0]).toBeCloseTo(220 + grown, 3);
    expect(after[1]).toBeCloseTo(260 + grown, 3);
  });

  it("keep their share of a leg that is itself moved, and come back with its corner", () => {
    const before = openLine(SQUARE, [50, 140]);
    const out = withCorners(before, moved(SQUARE, 1, [140, -30]));
    const firstLeg = Math.hypot(140, 30);
    expect(out.reachBreaksM[0]).toBeCloseTo(firstLeg / 2, 3);
    expect(out.reachBreaksM[1]).toBeCloseTo(firstLeg + Math.hypot(40, 110) / 2, 3);
    const back = withCorners(out, before.corners);
    expect(back.reachBreaksM[0]).toBeCloseTo(50, 6);
    expect(back.reachBreaksM[1]).toBeCloseTo(140, 6);
  });

  it("stay at their places when a corner is put in or taken out on a straight leg", () => {
    const before = ring(SQUARE, [30, 70, 250]);
    const more = lonLats([[0, 0], [45, 0], ...SQUARE.slice(1)]);
    const put = withCorners(before, more);
    for (const [i, breakM] of [30, 70, 250].entries()) {
      expect(put.reachBreaksM[i]).toBeCloseTo(breakM, 3);
    }
    expect(withCorners(put, before.corners).reachBreaksM[1]).toBeCloseTo(70, 3);
  });

  it("go to the nearest place of a line with fewer corners, as Turf finds it", () => {
    const before = openLine(SQUARE, [160]);
    const fewer = lonLats([SQUARE[0]!, SQUARE[2]!, SQUARE[3]!]);
    const { xM, yM } = placeAt(layLine(before, PLANE), 160);
    const path = lineString(fewer.map((at) => [...at]));
    const nearest = nearestPointOnLine(path, [...PLANE.toLonLat(xM, yM)]);
    const [after] = carriedBreaks(before, fewer);
    const place = placeAt(layLine({ ...before, corners: fewer }, PLANE), after!);
    const [turfX, turfY] = PLANE.toPlane(nearest.geometry.coordinates as [number, number]);
    expect(Math.hypot(place.xM - turfX, place.yM - turfY)).toBeLessThan(0.05);
  });

  it("are as they were where they could not stay in order, and are left alone past the end", () => {
    const before = openLine(SQUARE, [90, 110]);
    const folded = lonLats([
      [0, 0],
      [0, 80],
    ]);
    expect(carriedBreaks(before, folded)).toEqual([90, 110]);
    const past = carriedBreaks(openLine(SQUARE, [300]), moved(SQUARE, 3, [-20, 80]));
    expect(past[0]).toBeCloseTo(320, 3);
  });

  it("rise and number as many as before, whatever becomes of the corners", () => {
    const spot = fc.tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -200, max: 200 }));
    fc.assert(
      fc.property(fc.array(spot, { minLength: 3, maxLength: 8 }), (corners) => {
        const before = ring(SQUARE, [10, 55.5, 120, 240, 355]);
        const after = carriedBreaks(before, lonLats(corners));
        expect(after).toHaveLength(5);
        for (let i = 1; i < after.length; i++) expect(after[i]).toBeGreaterThan(after[i - 1]!);
        expect(after[0]).toBeGreaterThan(0);
      }),
      { seed: 25, numRuns: 300 },
    );
  });

  it("carry nothing but themselves: a line without breaks is as it was", () => {
    const before = ring(SQUARE);
    expect(withCorners(before, moved(SQUARE, 0, [-5, -5])).reachBreaksM).toBe(before.reachBreaksM);
    expect(length(before)).toBeCloseTo(360, 3);
  });
});

import {
  booleanPointInPolygon,
  lineIntersect,
  lineString,
  point,
  polygon as turfPolygon,
} from "@turf/turf";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  distanceTo,
  isInside,
  type PlanePolygon,
  piecesMeet,
  pieceTouches,
} from "../../shared/plane-polygon.ts";

const SQUARE: PlanePolygon = { xM: [0, 10, 10, 0], yM: [0, 0, 10, 10] };
const coordinate = fc.integer({ min: -20, max: 20 });
const place = fc.tuple(coordinate, coordinate);

describe("outlines on the plan plane", () => {
  it("know what is inside, as Turf does", () => {
    const corners = fc.array(place, { minLength: 3, maxLength: 7 });
    fc.assert(
      fc.property(corners, place, (list, [x, y]) => {
        const outline = { xM: list.map(([cx]) => cx), yM: list.map(([, cy]) => cy) };
        const at = point([x + 0.37, y + 0.21]);
        const ring = turfPolygon([[...list, list[0]!]]);
        expect(isInside(outline, x + 0.37, y + 0.21)).toBe(booleanPointInPolygon(at, ring));
      }),
      { seed: 3, numRuns: 400 },
    );
  });

  it("know their distance to a point, 0 inside", () => {
    expect(distanceTo(SQUARE, 5, 5)).toBe(0);
    expect(distanceTo(SQUARE, 5, -3)).toBeCloseTo(3, 12);
    expect(distanceTo(SQUARE, 13, 14)).toBeCloseTo(5, 12);
    expect(distanceTo({ xM: [2, 2, 2], yM: [3, 3, 3] }, 5, 7)).toBeCloseTo(5, 12);
  });

  it("know a piece that crosses, enters, or lies inside", () => {
    expect(pieceTouches(SQUARE, -5, 5, 15, 5)).toBe(true);
    expect(pieceTouches(SQUARE, -5, 5, 5, 5)).toBe(true);
    expect(pieceTouches(SQUARE, 4, 4, 6, 6)).toBe(true);
    expect(pieceTouches(SQUARE, -5, 5, -1, 5)).toBe(false);
    expect(pieceTouches(SQUARE, -5, -1, 15, -1)).toBe(false);
  });
});

describe("where two pieces meet", () => {
  it("is where Turf says, for pieces that cross at an angle", () => {
    fc.assert(
      fc.property(place, place, place, place, (a, b, c, d) => {
        const cross = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
        fc.pre(cross !== 0);
        const share = piecesMeet(a[0], a[1], b[0], b[1], c[0], c[1], d[0], d[1]);
        const theirs = lineIntersect(lineString([a, b]), lineString([c, d])).features[0];
        expect(share !== null).toBe(theirs !== undefined);
        if (share === null || !theirs) return;
        const [x, y] = theirs.geometry.coordinates as [number, number];
        expect(a[0] + share * (b[0] - a[0])).toBeCloseTo(x, 6);
        expect(a[1] + share * (b[1] - a[1])).toBeCloseTo(y, 6);
      }),
      { seed: 5, numRuns: 400 },
    );
  });

  it("counts touching and lying on one another, and not lying in one direction apart", () => {
    expect(piecesMeet(0, 0, 10, 0, 5, 0, 5, 5)).toBeCloseTo(0.5, 12);
    expect(piecesMeet(0, 0, 10, 0, 10, 0, 20, 5)).toBeCloseTo(1, 12);
    expect(piecesMeet(0, 0, 10, 0, 4, 0, 20, 0)).toBeCloseTo(0.4, 12);
    expect(piecesMeet(0, 0, 10, 0, 20, 0, 4, 0)).toBeCloseTo(0.4, 12);
    expect(piecesMeet(0, 0, 10, 0, 11, 0, 20, 0)).toBeNull();
    expect(piecesMeet(0, 0, 10, 0, 0, 1, 10, 1)).toBeNull();
    expect(piecesMeet(3, 3, 3, 3, 0, 0, 6, 6)).toBeNull();
  });
});

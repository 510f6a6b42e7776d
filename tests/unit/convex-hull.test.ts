import { convex, featureCollection, point } from "@turf/turf";
import fc from "fast-check";
import { expect, it } from "vitest";
import { convexHull } from "../../shared/convex-hull.ts";

/* Peer: the convex hull of @turf/turf, an independent library. Small numbers, where it is exact. */
const spots = fc.array(fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })), {
  minLength: 3,
  maxLength: 30,
});

function areaOf(ring: readonly (readonly number[])[]): number {
  return ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    return sum + (x! * nextY! - nextX! * y!) / 2;
  }, 0);
}

it("the convex hull has turf's corners and area, counter-clockwise, and none where all lie on one line", () => {
  fc.assert(
    fc.property(spots, (points) => {
      const ours = convexHull(points);
      const theirs = convex(featureCollection(points.map((at) => point(at))));
      const ring = theirs ? theirs.geometry.coordinates[0]!.slice(0, -1) : [];
      if (Math.abs(areaOf(ring)) < 1e-9) {
        expect(ours.length).toBeLessThan(3);
        return;
      }
      expect(areaOf(ours)).toBeGreaterThan(0);
      expect(areaOf(ours)).toBeCloseTo(Math.abs(areaOf(ring)), 9);
      const corners = new Set(ring.map(String));
      for (const corner of ours) expect(corners.has(String(corner))).toBe(true);
    }),
    { numRuns: 500, seed: 1 },
  );
});

import { area, booleanPointInPolygon, buffer, point, polygon } from "@turf/turf";
import fc from "fast-check";
import geodesic from "geographiclib-geodesic";
import { describe, expect, it } from "vitest";
import { centreLineDistanceM, offsetRing } from "../../shared/offset-ring.ts";
import type { LonLat } from "../../shared/plan.ts";
import { type Corner, PLANE, rectangle, structure } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

const WGS84 = geodesic.Geodesic.WGS84;

function made(corners: readonly Corner[], distanceM: number): readonly LonLat[] {
  const outcome = offsetRing({ structures: [structure("House", corners)], distanceM });
  if (!outcome.ok) throw new Error(said(outcome.failure).message);
  return outcome.value;
}

function ellipsoidArea(ring: readonly LonLat[]): number {
  const polygonOnEllipsoid = WGS84.Polygon(false);
  for (const [lon, lat] of ring) polygonOnEllipsoid.AddPoint(lat, lon);
  return polygonOnEllipsoid.Compute(false, true).area!;
}

function closed(ring: readonly LonLat[]): [number, number][] {
  return [...ring, ring[0]!].map(([lon, lat]) => [lon, lat]);
}

function toSegment([x, y]: Corner, [ax, ay]: Corner, [bx, by]: Corner): number {
  const along = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
}

describe("the ring at a setback", () => {
  it("leaves the setback free beside half of the base: 8 ft and 3 x 4 ft / 2 are 14 ft", () => {
    expect(centreLineDistanceM(8, 4, 3)).toBe(14);
  });

  it("goes round a rectangle with each corner cut once, as large as the closed form says", () => {
    const [a, b, d] = [24, 12, 4.5];
    const ring = made(rectangle(a / 2, b / 2), d);
    expect(ring).toHaveLength(8);
    const expected = a * b + 2 * d * (a + b) + 8 * d * d * Math.tan(Math.PI / 8);
    expect(Math.abs(ellipsoidArea(ring) / expected - 1)).toBeLessThan(1e-4);
  });

  it("holds the whole round buffer that Turf draws at the same distance, and hardly more", () => {
    const house: Corner[] = [
      [-9, -6],
      [8, -8],
      [11, 3],
      [1, 9],
    ];
    const outline = polygon([closed(structure("House", house).outline)]);
    const ring = made(house, 5);
    // Turf's sphere is up to 0.56 % off in length: the buffer is drawn that much smaller.
    const round = buffer(outline, 5 * 0.994, { units: "meters", steps: 32 })!;
    const around = polygon([closed(ring)]);
    for (const at of round.geometry.coordinates[0] as [number, number][]) {
      expect(booleanPointInPolygon(point(at), around)).toBe(true);
    }
    expect(area(around) / area(round)).toBeLessThan(1.03);
  });

  it("never comes closer than asked, whatever the building and wherever its corners", () => {
    const corner = fc.tuple(
      fc.double({ min: -40, max: 40, noNaN: true }),
      fc.double({ min: -40, max: 40, noNaN: true }),
    );
    const building = fc.array(corner, { minLength: 3, maxLength: 9 });
    fc.assert(
      fc.property(building, fc.double({ min: 1, max: 20, noNaN: true }), (corners, distanceM) => {
        const outcome = offsetRing({ structures: [structure("House", corners)], distanceM });
        if (!outcome.ok) {
          expect(outcome.failure.code).toBe("ring/flat-structure");
          return;
        }
        const ring = outcome.value.map((at) => PLANE.toPlane(at) as Corner);
        for (const [i, from] of ring.entries()) {
          const to = ring[(i + 1) % ring.length]!;
          for (const at of corners)
            expect(toSegment(at, from, to)).toBeGreaterThan(distanceM - 2e-3);
        }
      }),
      { seed: 88, numRuns: 150 },
    );
  });

  it("takes all buildings into one ring", () => {
    const outcome = offsetRing({
      structures: [
        structure("House", rectangle(5, 5)),
        structure(
          "Barn",
          rectangle(5, 5).map(([x, y]) => [x + 30, y] as const),
        ),
      ],
      distanceM: 4,
    });
    expect(outcome.ok && outcome.value.length).toBe(8);
  });

  it.each([
    ["ring/no-structure", [], 4],
    ["ring/distance", [structure("House", rectangle(5, 5))], 0],
    ["ring/distance", [structure("House", rectangle(5, 5))], Number.NaN],
    [
      "ring/flat-structure",
      [
        structure("Fence", [
          [0, 0],
          [5, 0],
          [9, 0],
        ]),
      ],
      4,
    ],
  ] as const)("refuses %s with what to do", (code, structures, distanceM) => {
    const outcome = offsetRing({ structures, distanceM });
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect(outcome.failure.code).toBe(code);
    expect(said(outcome.failure).remedy).not.toBe("");
  });
});

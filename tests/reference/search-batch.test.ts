import { booleanContains, kinks } from "@turf/turf";
import { beforeAll, describe, expect, it } from "vitest";
import { searchRing } from "../../workers/search/search-ring.ts";
import type { FoundRing, SearchRequest } from "../../workers/search/types.ts";
import { howMany } from "../helpers/how-many.ts";
import { measured, onTurf, seededBuilding } from "../helpers/search-buildings.ts";

/**
 * What must hold of the ring round every seeded building, looked at with Turf (winding, crossings) and with
 * distances measured apart from the search, every 5 cm.
 */
const BUILDINGS = howMany(40, 120);

describe(`a seeded batch of ${BUILDINGS} buildings`, () => {
  const found: { request: SearchRequest; ring: FoundRing }[] = [];

  beforeAll(() => {
    for (let seed = 1; seed <= BUILDINGS; seed++) {
      const request = seededBuilding(seed);
      found.push({ request, ring: searchRing(request, { timeCapMs: 60_000 }).rings[0]! });
    }
  }, 120_000);

  it("has a ring for every one, with at most 24 corners", () => {
    expect(found).toHaveLength(BUILDINGS);
    expect(found.every(({ ring }) => ring.corners.length >= 3 && ring.corners.length <= 24)).toBe(
      true,
    );
  });

  it("is wound once round the building, counter-clockwise, and does not cross itself", () => {
    for (const { request, ring } of found) {
      expect(kinks(onTurf(ring.corners)).features).toHaveLength(0);
      expect(booleanContains(onTurf(ring.corners), onTurf(request.structures[0]!))).toBe(true);
      const twice = ring.corners.reduce((sum, [x, y], k) => {
        const [u, v] = ring.corners[(k + 1) % ring.corners.length]!;
        return sum + x * v - u * y;
      }, 0);
      expect(twice / 2).toBeCloseTo(ring.enclosedM2, 6);
      expect(twice).toBeGreaterThan(0);
    }
  });

  it("comes nowhere closer than setback and half base, nor into a no-go area", () => {
    for (const { request, ring } of found) {
      expect(measured(request, ring).roomM).toBeGreaterThan(-0.002);
    }
  });

  it("has the volume that the search said within 0.5 %", () => {
    for (const { request, ring } of found) {
      const { volumeM3 } = measured(request, ring);
      expect(Math.abs(ring.figures.volumeM3 - volumeM3)).toBeLessThan(0.005 * volumeM3 + 0.002);
    }
  });
});

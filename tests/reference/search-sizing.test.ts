import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { Plan } from "../../shared/plan.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { sizeLine } from "../../shared/size-line.ts";
import { waterSurface } from "../../shared/stage.ts";
import { searchRing } from "../../workers/search/search-ring.ts";
import { sectionModel } from "../../workers/search/section-model.ts";
import type { Point, SearchRequest } from "../../workers/search/types.ts";
import { rasterGround, rectangle, requestFor, roughTerrain } from "../helpers/search-terrain.ts";

/** Every found ring, put into a plan and sized the ordinary way, takes what the search said. */
const PLANE = planPlane([-96.78, 46.88]);
/** Water over the ground at the house, metres. */
const DEEP_M = 0.3;

function planWith(ground: GroundSampler, corners: readonly Point[], house: readonly Point[]): Plan {
  const lonLat = (points: readonly Point[]) => points.map(([x, y]) => PLANE.toLonLat(x, y));
  return {
    ...EMPTY_PLAN,
    structures: [{ id: "house", name: "House", outline: lonLat(house), floorM: null }],
    alignments: [{ id: "a", name: "A", kind: "ring", corners: lonLat(corners), reachBreaksM: [] }],
    water: { ...EMPTY_PLAN.water, elevationM: ground.heightAt(0, 0) + DEEP_M, fallPerM: 0.001 },
    flow: { from: PLANE.toLonLat(-500, 0), to: PLANE.toLonLat(500, 100) },
    gauge: { name: "Gauge", at: PLANE.toLonLat(-100, 0) },
  };
}

function requestOn(ground: GroundSampler, house: readonly Point[]): SearchRequest {
  const plan = planWith(ground, house, house);
  const surface = waterSurface(plan.water, plan.flow, plan.gauge, PLANE);
  return requestFor(ground, house, 0, {
    crestAt: (x, y) => surface(x, y) + plan.water.freeboardM,
    section: sectionModel(plan.section, ground),
    window: { reachM: 40 },
  });
}

describe("a found ring sized the ordinary way", () => {
  it.each([1, 2, 3, 5, 8, 13])(
    "has the volume, length and height of the search, terrain %i",
    (seed) => {
      const ground = rasterGround(140, 1, roughTerrain(seed, 70));
      const house = rectangle(14, 9, 25 * seed);
      const { rings } = searchRing(requestOn(ground, house), { timeCapMs: 60_000 });
      const { figures, corners } = rings[0]!;
      const plan = planWith(ground, corners, house);
      const alignment = plan.alignments[0]!;
      const sized = sizeLine({ plan, alignment, plane: PLANE, ground, live: true });
      expect(Math.abs(sized.totals.volumeM3 / figures.volumeM3 - 1)).toBeLessThan(0.005);
      expect(sized.totals.lengthM).toBeCloseTo(figures.lengthM, 2);
      expect(sized.totals.greatestHeightM).toBeCloseTo(figures.greatestHeightM, 2);
      const flagged = sized.checks.map((check) => check.id);
      expect(flagged).not.toContain("setback");
      expect(flagged).not.toContain("crosses-itself");
    },
  );
});

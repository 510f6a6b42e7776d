import { describe, expect, it } from "vitest";
import { type Apart, apartBy, type Bounds, gapTo } from "../../shared/apart.ts";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { failureOf } from "../../shared/failure.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { failureWords } from "../../shared/words/failure.ts";

function planAt(...corners: LonLat[]): Plan {
  const line = { id: "a", name: "A", kind: "line", corners, reachBreaksM: [] } as const;
  return { ...EMPTY_PLAN, alignments: [line] };
}

async function apartFrom(plan: Plan, data: Bounds) {
  const gap = gapTo(plan, data);
  return gap && apartBy(gap);
}

const spot = (longitude: number, latitude: number): Bounds => [
  longitude,
  latitude,
  longitude,
  latitude,
];

describe("how far a plan lies from elevation data", () => {
  it("is a geodesic of WGS 84: Wellington to Salamanca, 19,959.679 km", async () => {
    // Worked example of the GeographicLib documentation (Karney), from memory.
    const apart = await apartFrom(planAt([174.81, -41.32]), spot(-5.5, 40.96));
    expect(apart?.distanceM).toBeCloseTo(19_959_679.267, 3);
  });

  it("along the equator is the arc of a circle of 6,378.137 km, due east, over the date line too", async () => {
    const apart = await apartFrom(planAt([179.5, 0], [179.9, 0]), [-179.9, -1, -179, 1]);
    expect(apart?.distanceM).toBeCloseTo((0.2 * Math.PI * 6_378_137) / 180, 3);
    expect(apart?.bearingDeg).toBeCloseTo(90, 6);
  });

  it("is counted from the nearest edges, and is nothing where they overlap or the plan has no place", async () => {
    const data: Bounds = [-97, 46, -96, 47];
    const north = await apartFrom(planAt([-96.5, 47.1], [-96.4, 47.2]), data);
    expect(north?.bearingDeg).toBeCloseTo(180, 6);
    expect(gapTo(planAt([-96.5, 46.9], [-96.4, 47.2]), data)).toBeNull();
    expect(gapTo(planAt([-98, 46.5], [-95, 46.6]), data)).toBeNull();
    expect(gapTo(EMPTY_PLAN, data)).toBeNull();
  });
});

describe("its words", () => {
  it("give distance and direction in the units asked for", () => {
    const far = { distanceM: 320_000, bearingDeg: 224 };
    const said = (apart: Apart, system: "us" | "metric") =>
      failureWords(failureOf("plan/elsewhere", { apart }), system).message;
    expect(said(far, "us")).toBe("The elevation data lies 199 mi southwest of the plan.");
    expect(said(far, "metric")).toContain("320 km southwest");
    const near = { distanceM: 60, bearingDeg: 359 };
    expect(said(near, "us")).toContain("197 ft north of");
  });
});

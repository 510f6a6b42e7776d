import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { crossSection } from "../../shared/cross-section.ts";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";
import {
  flat,
  groundOf,
  openLine,
  PLANE,
  planWith,
  rectangle,
  ring,
  size,
  structure,
} from "../helpers/grounds.ts";

const cutAt = (plan: Plan, alignment: Alignment, ground: GroundSampler, chainageM: number) =>
  crossSection({ plan, alignment, plane: PLANE, ground, chainageM, marginM: 4 });
const PLAN = planWith(100 + 1 - FOOT_M);
const RING = ring(rectangle(20, 15));

describe("the levee cut across at one place", () => {
  it("agrees with the station there", () => {
    const ground = groundOf((x, y) => 100 + 0.1 * Math.sin(x) + 0.05 * y);
    const line = size(PLAN, RING, ground);
    for (const station of line.stations) {
      const cut = cutAt(PLAN, RING, ground, station.chainageM);
      expect(cut.heightM).toBeCloseTo(station.heightM!, 9);
      expect(cut.greatestHeightM).toBeCloseTo(station.greatestHeightM!, 9);
      expect(cut.areaM2).toBeCloseTo(station.sectionAreaM2!, 9);
      expect(cut.baseM).toBeCloseTo(station.baseM!, 9);
      expect(cut.courses).toBe(station.courses);
      expect(cut.at[0]).toBeCloseTo(station.lon, 10);
    }
  });

  it("has offsets in order from right to left, with the centre, the crown's edges and the toes among them", () => {
    const cut = cutAt(PLAN, RING, flat(100), 12);
    const offsets = Array.from(cut.offsetM);
    expect(offsets).toEqual([...offsets].sort((a, b) => a - b));
    expect(offsets[0]).toBeCloseTo(-5.5, 6);
    expect(offsets.at(-1)).toBeCloseTo(5.5, 6);
    const halfCrownM = DEFAULT_SECTION.crownM / 2;
    for (const mark of [-cut.toeRightM, -halfCrownM, 0, halfCrownM, cut.toeLeftM]) {
      expect(offsets.some((m) => Math.abs(m - mark) < 1e-12)).toBe(true);
    }
    const gaps = offsets.slice(1).map((m, i) => m - offsets[i]!);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(0.5 + 1e-9);
    expect(cut.sideSlope).toBeCloseTo((3 - DEFAULT_SECTION.crownM) / 2, 9);
  });

  it("has the ground that lies to the left at positive offsets", () => {
    const cut = cutAt(
      PLAN,
      RING,
      groundOf((_x, y) => y),
      20,
    );
    const last = cut.offsetM.length - 1;
    expect(cut.groundM[last]).toBeCloseTo(-15 + cut.offsetM[last]!, 6);
  });

  it("has the water outside a ring, whichever way it runs", () => {
    expect(cutAt(PLAN, RING, flat(100), 5).waterSide).toBe(-1);
    const clockwise = ring([...rectangle(20, 15)].reverse());
    expect(cutAt(PLAN, clockwise, flat(100), 5).waterSide).toBe(1);
  });

  it("has the water away from the structure on a line, or on the gauge's side", () => {
    const line = openLine([
      [-30, 0],
      [30, 0],
    ]);
    const north = {
      ...PLAN,
      structures: [
        structure("House", [
          [0, 20],
          [5, 20],
          [5, 25],
        ]),
      ],
    };
    expect(cutAt(north, line, flat(100), 5).waterSide).toBe(-1);
    const south = {
      ...PLAN,
      structures: [
        structure("House", [
          [0, -20],
          [5, -20],
          [5, -25],
        ]),
      ],
    };
    expect(cutAt(south, line, flat(100), 5).waterSide).toBe(1);
    const gauge = { name: "Mill bridge", at: PLANE.toLonLat(0, 300) };
    expect(cutAt({ ...PLAN, gauge }, line, flat(100), 5).waterSide).toBe(1);
    expect(cutAt(PLAN, line, flat(100), 5).waterSide).toBe(-1);
  });

  it("stays inside the line, and shows a hole as a hole", () => {
    expect(cutAt(PLAN, RING, flat(100), 9999).chainageM).toBeCloseTo(140, 6);
    expect(cutAt(PLAN, RING, flat(100), -5).chainageM).toBe(0);
    const cut = cutAt(
      PLAN,
      RING,
      groundOf((_x, y) => (y > -14.5 && y < -14 ? Number.NaN : 100)),
      20,
    );
    expect(cut.areaM2).toBeNull();
    expect(cut.baseM).toBeNull();
    expect(cut.greatestHeightM).toBeNull();
    expect(cut.heightM).toBeCloseTo(1, 9);
    expect(cut.toeLeftM).toBeCloseTo(1.5, 9);
    expect(cut.groundM.some(Number.isNaN)).toBe(true);
    expect(cut.groundM.some((m) => m === 100)).toBe(true);
  });

  it("draws ground alone where nothing is built", () => {
    const cut = cutAt(planWith(90), RING, flat(100), 20);
    expect([cut.heightM, cut.areaM2, cut.toeLeftM, cut.courses]).toEqual([0, 0, 0, 0]);
    expect(cut.offsetM.length).toBeGreaterThan(10);
  });
});

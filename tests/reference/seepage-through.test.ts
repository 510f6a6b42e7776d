import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { blighRatio, laneRatio } from "../../shared/holding/creep.ts";
import {
  criticalGradient,
  exitGradient,
  gradientClasses,
} from "../../shared/holding/exit-gradient.ts";
import {
  baseParabola,
  casagrande,
  dupuit,
  dupuitFlow,
  schaffernak,
  seepagePathM,
  seepageThrough,
  slabSeepage,
} from "../../shared/holding/seepage.ts";
import { formatUnitFlow } from "../../shared/units.ts";

const RADIANS = Math.PI / 180;
const DAY_S = 86_400;
const GPM_M3_PER_S = 3.785411784e-3 / 60;

const within = (value: number, expected: number, share = 0.005) =>
  expect(Math.abs(value / expected - 1)).toBeLessThan(share);

/** A dam: head H1, height H, crest, runs of both faces. */
function dam(headM: number, heightM: number, crestM: number, waterRun: number, landRun: number) {
  return { headM, baseM: crestM + heightM * (waterRun + landRun), waterRun, landRun };
}

describe("flow nets as slabs (q = k H Nf / Nd)", () => {
  it("S1: sheet pile, k 3e-4 m/s, 2.5 m, 4 over 14 (VENK 6.6): 2.143e-4 m3/s per m", () => {
    within(slabSeepage(3e-4, 2.5, 4, 14), 2.143e-4);
  });

  it("S2: K 1.5e-5 ft/s, 5 ft, 3 over 6, 1,000 ft (HOUGH): 0.0375 cfs, 16.8 gpm", () => {
    const cubicFeet = slabSeepage(1.5e-5, 5, 3, 6) * 1000;
    within(cubicFeet, 0.0375);
    within((cubicFeet * FOOT_M ** 3) / GPM_M3_PER_S, 16.8);
  });
});

describe("seepage through earth", () => {
  it("S3: base parabola, x 92 m, z 30 m, k 3e-6 m/s (VENK 6.7): S 4.768 m, q 1.430e-5", () => {
    const { rateM } = baseParabola(30, 92);
    within(rateM, 4.768);
    within(3e-6 * rateM, 1.43e-5);
  });

  const das810 = dam(25, 30, 5, 2, 2);
  it("S4: DAS 8.10 by Schaffernak: d 90 m, a 16.957 m, q 1.1375e-3 m3/min per m", () => {
    expect(seepagePathM(das810)).toBeCloseTo(90, 9);
    const result = seepageThrough(das810);
    expect(result.method).toBe("Schaffernak");
    within(result.wetFaceM, 16.957);
    within(3e-4 * result.rateM, 1.1375e-3);
  });

  it("S5: the same by L. Casagrande: a 18.575 m, q 1.1145e-3", () => {
    const result = casagrande(25, seepagePathM(das810), Math.atan(0.5));
    within(result.wetFaceM, 18.575);
    within(3e-4 * result.rateM, 1.1145e-3);
  });

  it("S6: DAS 8.8: d 24.201 m, 0.2707 and 0.2651 m3/day per m; 40 degrees is Casagrande's", () => {
    const shape = dam(7, 10, 5, 1 / Math.tan(35 * RADIANS), 1 / Math.tan(40 * RADIANS));
    const pathM = seepagePathM(shape);
    within(pathM, 24.201, 1e-4);
    within(3e-6 * schaffernak(7, pathM, 40 * RADIANS).rateM * DAY_S, 0.2707);
    within(3e-6 * casagrande(7, pathM, 40 * RADIANS).rateM * DAY_S, 0.2651);
    expect(seepageThrough(shape).method).toBe("L. Casagrande");
  });

  it("S7: DAS, text example, from memory: d 64.30 ft, a 11.696 ft, q 6.753e-4 ft3/min per ft", () => {
    const pathM = seepagePathM(dam(20, 25, 10, 1, 1 / Math.tan(30 * RADIANS)));
    within(pathM, 64.3, 1e-3);
    const result = schaffernak(20, pathM, 30 * RADIANS);
    within(result.wetFaceM, 11.696);
    within(2e-4 * result.rateM, 6.753e-4);
  });

  it("S8: Dupuit, K 0.5 m/day, 20 and 18 m, 1,000 m (DUP): 0.0190 m2/day", () => {
    within(0.5 * dupuit(20, 18, 1000).rateM, 0.019);
  });

  it("S8: the same with 1.369e-4 m/day of recharge: -0.04945 and 0.08745 m2/day, divide at 361.2 m", () => {
    const reach = { upstreamM: 20, downstreamM: 18, lengthM: 1000, rechargeShare: 1.369e-4 / 0.5 };
    const flow = (alongM: number) => 0.5 * dupuitFlow(reach, alongM);
    within(flow(0), -0.04945, 5e-4);
    within(flow(1000), 0.08745, 5e-4);
    expect(flow(361.15)).toBeLessThan(0);
    expect(flow(361.25)).toBeGreaterThan(0);
    expect(dupuitFlow({ ...reach, rechargeShare: 0 }, 0)).toBe(dupuit(20, 18, 1000).rateM);
  });

  it("S9: sandbag pyramid of the handbook, k 1e-4 m/s: 7.77 gpm/100 ft, Dupuit 7.32", () => {
    const shape = {
      headM: 3 * FOOT_M,
      baseM: 12 * FOOT_M,
      waterRun: (12 - 0.75) / 8,
      landRun: (12 - 0.75) / 8,
    };
    const pathM = seepagePathM(shape);
    within(pathM, 2.757, 1e-3);
    const bySchaffernak = schaffernak(shape.headM, pathM, Math.atan2(1, shape.landRun));
    within(bySchaffernak.wetFaceM, 0.39);
    expect(formatUnitFlow(1e-4 * bySchaffernak.rateM, "us")).toBe("7.8 gpm/100 ft");
    within((1e-4 * bySchaffernak.rateM * 30.48) / GPM_M3_PER_S, 7.77);
    within((1e-4 * dupuit(shape.headM, 0, pathM).rateM * 30.48) / GPM_M3_PER_S, 7.32);
    const chosen = seepageThrough(shape);
    expect(chosen.method).toBe("L. Casagrande");
    within(chosen.rateM, bySchaffernak.rateM, 0.04);
  });

  it("takes the base parabola for steep faces and Dupuit for upright ones", () => {
    expect(seepageThrough(dam(1, 1.5, 1, 0.3, 0.3)).method).toBe("base parabola");
    const wall = seepageThrough(dam(1, 1.5, 2, 0, 0));
    expect(wall).toMatchObject({ method: "Dupuit", rateM: 0.25 });
  });
});

describe("gradients", () => {
  it("S10: G 2.696, n 0.44 (examination text): 0.950", () => {
    within(criticalGradient(2.696, 0.44 / 0.56), 0.95);
  });

  it.each([
    [0.38, 1.217],
    [0.48, 1.135],
    [0.6, 1.05],
    [0.7, 0.988],
    [0.8, 0.933],
  ])("S11: G 2.68, e %s (DAS 9.6): %s", (voidRatio, expected) => {
    within(criticalGradient(2.68, voidRatio), expected);
  });

  it("S12: classes of NIX-11 (TM 3-424)", () => {
    expect(gradientClasses(0.45)).toEqual(["light", "medium", "heavy"]);
    expect(gradientClasses(0.55)).toContain("boils");
    expect(gradientClasses(0.55)).not.toContain("new-boils");
    expect(gradientClasses(0.85)).toEqual(["new-boils"]);
    expect(gradientClasses(Number.NaN)).toEqual([]);
  });

  it("exit gradient: head 2.4 m, toe 4.277 m deep, floor 40 m, lambda 5.203 (study site's calculator): 0.0783", () => {
    expect((1 + Math.hypot(1, 40 / 4.277)) / 2).toBeCloseTo(5.203, 3);
    within(exitGradient(2.4, 40, 4.277), 0.0783);
  });
});

describe("creep ratios (rule published, table from memory)", () => {
  it("G6: base 12 ft, trench 0.5 ft, head 3 ft: Lane 1.667, Bligh 4.33", () => {
    expect(laneRatio(3, 12, 0.5)).toBeCloseTo(5 / 3, 9);
    expect(blighRatio(3, 12, 0.5)).toBeCloseTo(13 / 3, 9);
  });
});

import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { PUMP_CLASSES, proposedPumps, pumpOptions } from "../../shared/holding/pumps.ts";
import { runoffM3PerS } from "../../shared/holding/rain.ts";
import { formatFlow } from "../../shared/units.ts";

const ACRE_M2 = 43_560 * FOOT_M ** 2;
const CUBIC_FOOT_M3 = FOOT_M ** 3;
const INCH_PER_HOUR = 0.0254 / 3600;
/** The constant of cfs, in/h and acre, exact; often printed as 1.008 and used as 1. */
const K = 43_560 / (12 * 3600);

const cubicFeet = (c: number, inchPerHour: number, acres: number) =>
  runoffM3PerS(c, inchPerHour * INCH_PER_HOUR, acres * ACRE_M2) / CUBIC_FOOT_M3;

describe("rational method", () => {
  it("R1: 0.4, 2.87 in/h, 128 acres (RAT): 146.944 cfs with k = 1, 148.168 exact", () => {
    expect(cubicFeet(0.4, 2.87, 128) / K).toBeCloseTo(146.944, 6);
    expect(cubicFeet(0.4, 2.87, 128)).toBeCloseTo(148.168, 2);
  });

  it("R2: 0.11, 1.25 in/h, 30 acres (RAT): 4.125 cfs with k = 1", () => {
    expect(cubicFeet(0.11, 1.25, 30) / K).toBeCloseTo(4.125, 9);
  });

  it("R3: 1 in/h on 1 acre: 1.00833 cfs, 452.57 gpm (derived)", () => {
    expect(cubicFeet(1, 1, 1)).toBeCloseTo(1.00833, 5);
    expect(formatFlow(runoffM3PerS(1, INCH_PER_HOUR, ACRE_M2), "us")).toBe("453 gpm");
  });

  it("R4: 1 in/h on 1,000 sq ft: 10.39 gpm; 1 mm/h on 1,000 m2: 0.278 L/s (derived)", () => {
    const flow = runoffM3PerS(1, INCH_PER_HOUR, 1000 * FOOT_M ** 2);
    expect((flow / 3.785411784e-3) * 60).toBeCloseTo(10.39, 2);
    expect(runoffM3PerS(1, 0.001 / 3600, 1000) * 1000).toBeCloseTo(0.278, 3);
  });
});

describe("pumps (PWM: 142 to 500 gpm centrifugal, 200 to 1,600 trash, 50 to 90 diaphragm)", () => {
  it("have the published ranges", () => {
    const gpm = PUMP_CLASSES.map(({ lowM3PerS, highM3PerS }) =>
      [lowM3PerS, highM3PerS].map((flow) => Math.round((flow / 3.785411784e-3) * 60)),
    );
    expect(gpm).toEqual([
      [15, 15],
      [50, 90],
      [142, 500],
      [200, 1600],
    ]);
  });

  const gallons = (gpm: number) => (gpm * 3.785411784e-3) / 60;

  it.each([
    [20, "sump", 2],
    [60, "sump", 4],
    [61, "diaphragm", 2],
    [300, "centrifugal", 3],
    [700, "trash", 4],
    [3000, "trash", 15],
  ])("%s gpm: %s pumps, %s working and one spare", (need, kind, working) => {
    const pick = proposedPumps(pumpOptions(gallons(need), 1))!;
    expect(pick).toMatchObject({ kind, working, spare: 1 });
    expect(pick.working * pick.eachM3PerS).toBeGreaterThanOrEqual(gallons(need) * (1 - 1e-9));
  });

  it("none where nothing is to be pumped", () => {
    expect(proposedPumps(pumpOptions(0, 1))).toBeNull();
  });
});

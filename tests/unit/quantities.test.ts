import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_PRACTICE, DEFAULT_SECTION } from "../../shared/defaults.ts";
import {
  bagsAcrossFor,
  bagsOrderedFor,
  bagsPlacedFor,
  sandFor,
  sheetRollsFor,
  sheetWidthM,
  wholeOrder,
} from "../../shared/quantities.ts";
import {
  type Corner,
  flat,
  groundOf,
  openLine,
  planWith,
  rectangle,
  ring,
  size,
} from "../helpers/grounds.ts";

const STRAIGHT: Corner[] = [
  [0, 0],
  [100, 0],
];

describe("orders", () => {
  it("counts bags, spares and sand as the method says", () => {
    expect(bagsPlacedFor(DEFAULT_SECTION.bag.placedVolumeM3 * 1000, DEFAULT_SECTION)).toBeCloseTo(
      1000,
      9,
    );
    const ordered = bagsOrderedFor(9.2, DEFAULT_SECTION, DEFAULT_PRACTICE);
    expect(ordered).toBeCloseTo((9.2 / DEFAULT_SECTION.bag.placedVolumeM3) * 1.05, 9);
    const sand = sandFor(9.2, 30, DEFAULT_SECTION, DEFAULT_PRACTICE);
    expect(sand).toBeCloseTo(9.2 * 1.05 * 1.1 + 30 * DEFAULT_PRACTICE.sheetAnchorM3PerM, 9);
  });

  it("rounds up, but not for a rounding error", () => {
    expect(wholeOrder(12.0000000001)).toBe(12);
    expect(wholeOrder(12.01)).toBe(13);
    expect(wholeOrder(0)).toBe(0);
  });

  it("covers a 3 ft levee with 7.9 ft of sheet: 1 + √(3² + 4.125²) + 0.75 + 1", () => {
    const toeM = 4.5 * FOOT_M;
    const widthFt = sheetWidthM(DEFAULT_SECTION, toeM, 3 * FOOT_M) / FOOT_M;
    expect(widthFt).toBeCloseTo(1 + Math.hypot(3, 4.125) + 0.75 + 1, 9);
  });

  it("lays sheet on what there is of a crown cut short, and on a vertical side", () => {
    const halfCrownM = DEFAULT_SECTION.crownM / 2;
    expect(sheetWidthM(DEFAULT_SECTION, 0.05, 0)).toBeCloseTo(2 * FOOT_M + halfCrownM + 0.05, 9);
    expect(sheetWidthM(DEFAULT_SECTION, halfCrownM, 0.06)).toBeCloseTo(
      2 * FOOT_M + DEFAULT_SECTION.crownM + 0.06,
      9,
    );
  });

  it("survives a lap as long as the roll", () => {
    const sheet = { ...DEFAULT_SECTION.sheet, rollLengthM: 1, lapM: 1 };
    expect(Number.isFinite(sheetRollsFor(100, 2, sheet))).toBe(true);
  });

  it("counts bags across a base", () => {
    expect(bagsAcrossFor(9 * FOOT_M, DEFAULT_SECTION)).toBe(8);
    expect(bagsAcrossFor(0, DEFAULT_SECTION)).toBe(0);
  });
});

describe("totals of a level line, 1 m high and 100 m long, by hand", () => {
  const plan = planWith(100 + 1 - FOOT_M);
  const { totals } = size(plan, openLine(STRAIGHT), flat(100));
  const areaM2 = (3 + DEFAULT_SECTION.crownM) / 2;

  it("volume, bags, sand, weights, trucks", () => {
    expect(totals.lengthM).toBeCloseTo(100, 6);
    expect(totals.builtLengthM).toBeCloseTo(100, 6);
    expect(totals.volumeM3).toBeCloseTo(100 * areaM2, 5);
    expect(totals.prismoidalVolumeM3).toBeCloseTo(100 * areaM2, 5);
    const placed = (100 * areaM2) / DEFAULT_SECTION.bag.placedVolumeM3;
    expect(totals.bagsPlaced).toBe(Math.ceil(placed));
    expect(totals.bags).toBe(Math.ceil(placed * 1.05));
    const sandM3 = 100 * areaM2 * 1.05 * 1.1 + 100 * DEFAULT_PRACTICE.sheetAnchorM3PerM;
    expect(totals.sandM3).toBeCloseTo(sandM3, 5);
    expect(totals.sandWetKg / totals.sandDryKg).toBeCloseTo(120 / 95, 9);
    expect(totals.trucks).toBe(Math.ceil(sandM3 / DEFAULT_PRACTICE.truckM3));
    expect(totals.sheetBags).toBe(
      Math.ceil((100 * DEFAULT_PRACTICE.sheetAnchorM3PerM) / DEFAULT_SECTION.bag.placedVolumeM3),
    );
  });

  it("sheet, hours, height", () => {
    const widthM =
      2 * FOOT_M + Math.hypot(1, (3 - DEFAULT_SECTION.crownM) / 2) + DEFAULT_SECTION.crownM;
    expect(totals.sheetWidthM).toBeCloseTo(widthM, 6);
    expect(totals.sheetM2).toBeCloseTo(100 * widthM, 4);
    expect(totals.sheetRolls).toBe(4);
    const ordered = ((100 * areaM2) / DEFAULT_SECTION.bag.placedVolumeM3) * 1.05;
    expect(totals.jobPersonHours).toBeCloseTo(ordered / 19, 4);
    expect(totals.taskPersonHoursLow).toBeCloseTo(ordered / 60, 4);
    expect(totals.taskPersonHoursHigh).toBeCloseTo(ordered / 40, 4);
    expect(totals.greatestHeightM).toBeCloseTo(1, 9);
    expect(totals.lengthByClassM.map(Math.round)).toEqual([0, 0, 0, 100, 0]);
    expect(totals.lengthOver3FtM).toBeCloseTo(100, 6);
    expect(totals.lengthOverLimitM).toBe(0);
  });
});

describe("lengths by height", () => {
  it("a ramp from 0 to 6 ft has 10 m in each of the first four classes and 20 over", () => {
    const ground = groundOf((x) => 100 - (x / 60) * 6 * FOOT_M);
    const { totals } = size(
      planWith(100 - FOOT_M),
      openLine([
        [0, 0],
        [60, 0],
      ]),
      ground,
    );
    const lengths = totals.lengthByClassM.map((m) => Math.round(m * 100) / 100);
    expect(lengths).toEqual([10, 10, 10, 10, 20]);
    expect(totals.lengthOverLimitM).toBeCloseTo(20, 6);
    expect(totals.lengthOver3FtM).toBeCloseTo(30, 6);
    expect(totals.builtLengthM).toBeCloseTo(60, 6);
  });

  it("a height that equals the limit is not over it", () => {
    const plan = planWith(100 + 3 * FOOT_M);
    const { totals, checks } = size(plan, ring(rectangle(20, 20)), flat(100));
    expect(totals.greatestHeightM).toBeCloseTo(4 * FOOT_M, 9);
    expect(totals.lengthOverLimitM).toBe(0);
    expect(totals.lengthByClassM[3]).toBeCloseTo(160, 6);
    expect(checks.map((check) => check.id)).not.toContain("over-limit");
  });

  it("nothing is built on ground above the crest", () => {
    const { totals, published } = size(planWith(90), openLine(STRAIGHT), flat(100));
    expect([totals.builtLengthM, totals.volumeM3, totals.bags, totals.sandM3]).toEqual([
      0, 0, 0, 0,
    ]);
    expect([totals.sheetRolls, totals.sheetWidthM, totals.trucks]).toEqual([0, 0, 0]);
    expect(published.map((count) => count.bags)).toEqual([null, null, null]);
  });
});

import { describe, expect, it } from "vitest";
import { CUBIC_FOOT_M3, CUBIC_YARD_M3, FOOT_M, POUND_KG } from "../../shared/constants.ts";
import { DEFAULT_PRACTICE, DEFAULT_SECTION } from "../../shared/defaults.ts";
import { bagsPerFootByFormula, EMPTY_BAG_CRATE, PUBLISHED_TABLES } from "../../shared/handbook.ts";
import type { Section } from "../../shared/plan.ts";
import {
  bagsPlacedFor,
  coursesFor,
  raiseToM,
  sandFor,
  sheetBagsFor,
  sheetRollsFor,
} from "../../shared/quantities.ts";
import { type Cut, cutAcross, emptyCut } from "../../shared/section.ts";
import { flat, groundOf, openLine, planWith, size } from "../helpers/grounds.ts";

const table = (key: string) => PUBLISHED_TABLES.find((each) => each.key === key)!;

/** Section area on level ground as the kernel cuts it, not by the formula, m2. */
function cutArea(heightFt: number, baseRatio: number, crownFt: number): number {
  const section = { ...DEFAULT_SECTION, baseRatio, crownM: crownFt * FOOT_M };
  return cutOnFlat(section, heightFt).areaM2;
}

function cutOnFlat(section: Section, heightFt: number): Cut {
  const cut = emptyCut();
  const crestM = heightFt * FOOT_M;
  cutAcross(cut, flat(0), section, { xM: 0, yM: 0, leftX: 0, leftY: 1, crestM, shiftM: 0 });
  return cut;
}

describe("bag counts of the extension formula (NDSU-11)", () => {
  it("B1: is 45 bags per foot at 3 ft, the published example", () => {
    expect(bagsPerFootByFormula(3)).toBe(45);
  });

  it.each([
    [1, 600],
    [2, 2100],
    [3, 4500],
    [4, 7800],
  ])("B2: at %s ft is %s per 100 ft", (heightFt, bags) => {
    expect(100 * bagsPerFootByFormula(heightFt)).toBe(bags);
  });

  it("B3: at 2.5 ft is 3,187.5 per 100 ft", () => {
    expect(100 * bagsPerFootByFormula(2.5)).toBe(3187.5);
  });

  it("B4: is not the literal misreading, 49.5 at 3 ft", () => {
    expect(bagsPerFootByFormula(3)).not.toBeCloseTo(49.5, 1);
    for (const heightFt of [0.5, 1, 2, 3, 4]) {
      const misread = 3 * heightFt + (9 * heightFt ** 2) / 2;
      expect(bagsPerFootByFormula(heightFt)).toBeLessThan(misread);
    }
  });
});

describe("published tables as data", () => {
  it.each([
    ["NDSU-11", [600, 2100, 4500, 7800]],
    ["NDSU-97", [800, 2000, 3400]],
    ["EMI-L4", [800, 2400, 5000, 8800, 13600, 19500]],
  ])("B2, B5, B6: %s has its rows from 1 ft on", (key, bags) => {
    expect(table(key).rows).toEqual(bags.map((count, i) => [i + 1, count]));
    bags.forEach((count, i) => {
      expect(100 * table(key).bagsPerFoot(i + 1)).toBeCloseTo(count, 9);
    });
  });

  it("runs straight between rows, in proportion below the first, and says nothing beyond the last", () => {
    expect(100 * table("NDSU-97").bagsPerFoot(1.5)).toBeCloseTo(1400, 9);
    expect(100 * table("EMI-L4").bagsPerFoot(0.5)).toBeCloseTo(400, 9);
    expect(table("NDSU-97").bagsPerFoot(3.1)).toBeNaN();
  });

  it("B7: EMI-L4's 147 short tons and 91 cu yd for 8,800 bags are 33.41 lb and 0.2792 cu ft a bag", () => {
    const [, bags] = table("EMI-L4").rows[3]!;
    expect((147 * 2000) / bags).toBeCloseTo(33.41, 2);
    expect((91 * 27) / bags).toBeCloseTo(0.2792, 4);
    expect((147 * 2000) / (91 * 27)).toBeCloseTo(119.7, 1);
  });
});

describe("the computed count beside them", () => {
  it("gives the formula's 45 bags per foot at 3 ft with the default bag and section (NDSU-11)", () => {
    const perFoot = bagsPlacedFor(cutArea(3, 3, 0.75) * FOOT_M, DEFAULT_SECTION);
    expect(perFoot).toBeCloseTo(45, 0);
  });

  it.each([1, 1.5, 2, 2.5, 3, 3.5, 4])("stays within 4 %% of the formula at %s ft", (heightFt) => {
    const perFoot = bagsPlacedFor(cutArea(heightFt, 3, 0.75) * FOOT_M, DEFAULT_SECTION);
    expect(Math.abs(perFoot / bagsPerFootByFormula(heightFt) - 1)).toBeLessThan(0.04);
  });

  it("B8: a bag of 0.28 cu ft makes 96.4 to the cu yd", () => {
    const small = {
      ...DEFAULT_SECTION,
      bag: { ...DEFAULT_SECTION.bag, placedVolumeM3: 0.28 * CUBIC_FOOT_M3 },
    };
    expect(bagsPlacedFor(CUBIC_YARD_M3, small)).toBeCloseTo(96.4, 1);
  });

  it("B12: a wall of 0.6 m takes 66.9 bags a metre by the formula; UK-SW's leaflet says 80", () => {
    const perMetre = bagsPerFootByFormula(0.6 / FOOT_M) / FOOT_M;
    expect(perMetre).toBeCloseTo(66.9, 1);
    expect(perMetre).toBeLessThan(80);
  });

  it("B13: 1 m high with a bag of 6 L takes up to 280 bags a metre (THW-B, THW-S)", () => {
    const small = { ...DEFAULT_SECTION, bag: { ...DEFAULT_SECTION.bag, placedVolumeM3: 0.006 } };
    const perMetre = bagsPlacedFor(cutArea(1 / FOOT_M, 3, 0.75), small);
    expect(perMetre).toBeLessThan(280);
    expect(perMetre).toBeGreaterThan(0.95 * 280);
  });

  it("B14: the default bag makes 80 to 110 bags of 1 m3 (AT: 80 to 100 for its 10 to 12.5 L bag)", () => {
    expect(bagsPlacedFor(1, DEFAULT_SECTION)).toBeCloseTo(108.7, 1);
    for (const litres of [10, 12.5]) {
      const bag = { ...DEFAULT_SECTION.bag, placedVolumeM3: litres / 1000 };
      expect(bagsPlacedFor(1, { ...DEFAULT_SECTION, bag })).toBeGreaterThanOrEqual(80);
      expect(bagsPlacedFor(1, { ...DEFAULT_SECTION, bag })).toBeLessThanOrEqual(100);
    }
  });

  it("all published counts stand beside a sized line of 3 ft on flat ground, 100 ft long", () => {
    const plan = planWith(100 + 2 * FOOT_M);
    const line = size(
      plan,
      openLine([
        [0, 0],
        [100 * FOOT_M, 0],
      ]),
      flat(100),
    );
    const counts = Object.fromEntries(line.published.map((each) => [each.key, each.bags]));
    expect(line.totals.greatestHeightM).toBeCloseTo(3 * FOOT_M, 9);
    expect(Math.abs(counts["NDSU-11"]! - 4500)).toBeLessThanOrEqual(1);
    expect(Math.abs(counts["NDSU-97"]! - 3400)).toBeLessThanOrEqual(1);
    expect(Math.abs(counts["EMI-L4"]! - 5000)).toBeLessThanOrEqual(1);
    expect(Math.abs(line.totals.bagsPlaced / 4500 - 1)).toBeLessThan(0.01);
  });
});

describe("the published counts along a ramp from 0 to 6 ft, 10 m to the foot", () => {
  const ramp = groundOf((x) => 100 - (x / 10) * FOOT_M);
  const { published } = size(
    planWith(100 - FOOT_M),
    openLine([
      [0, 0],
      [60, 0],
    ]),
    ramp,
  );
  const count = (key: string) => published.find((each) => each.key === key)!;
  const feetPerFoot = 10 / FOOT_M;

  it("are the tables' means from row to row, and say how much lies beyond them", () => {
    const rows = [0, 800, 2400, 5000, 8800, 13600, 19500];
    const means = rows.slice(1).map((bags, i) => (bags + rows[i]!) / 2 / 100);
    const expected = means.reduce((sum, each) => sum + each * feetPerFoot, 0);
    expect(Math.abs(count("EMI-L4").bags! / expected - 1)).toBeLessThan(0.002);
    expect(count("EMI-L4").beyondM).toBeCloseTo(0, 3);
    expect(count("NDSU-97").beyondM).toBeCloseTo(30, 1);
    expect(count("NDSU-11").beyondM).toBeCloseTo(10, 1);
  });

  it("are the formula's integral up to 5 ft: (3 H² / 2 + 3 H³) / 2", () => {
    const expected = ((3 * 5 ** 2) / 2 + 3 * 5 ** 3) * 0.5 * feetPerFoot;
    expect(Math.abs(count("NDSU-11").bags! / expected - 1)).toBeLessThan(0.01);
  });
});

describe("sand (NDSU-11, cu yd per 100 ft)", () => {
  const HEIGHTS_FT = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5];
  const perHundredFeet = (areaM2: number) => (areaM2 * 100 * FOOT_M) / CUBIC_YARD_M3;

  it.each(HEIGHTS_FT.map((heightFt, i) => [heightFt, [7, 15, 25, 38, 54, 73, 95, 119, 145][i]!]))(
    "B9: base three times the height, %s ft: %s within 1",
    (heightFt, cubicYards) => {
      expect(Math.abs(perHundredFeet(cutArea(heightFt, 3, 0.75)) - cubicYards)).toBeLessThanOrEqual(
        1,
      );
    },
  );

  it.each(HEIGHTS_FT.map((heightFt, i) => [heightFt, [6, 11, 18, 27, 38, 50, 65, 82, 100][i]!]))(
    "B10: base twice the height, %s ft: %s within 1",
    (heightFt, cubicYards) => {
      expect(Math.abs(perHundredFeet(cutArea(heightFt, 2, 0.8)) - cubicYards)).toBeLessThanOrEqual(
        1,
      );
    },
  );

  it("B11: 2 cu yd per 100 ft more for the bags that hold the sheet", () => {
    const bare = { ...DEFAULT_PRACTICE, sheetAnchorM3PerM: 0 };
    const with100Ft = sandFor(10, 100 * FOOT_M, DEFAULT_SECTION, DEFAULT_PRACTICE);
    const without = sandFor(10, 100 * FOOT_M, DEFAULT_SECTION, bare);
    expect((with100Ft - without) / CUBIC_YARD_M3).toBeCloseTo(2, 9);
    expect(sheetBagsFor(100 * FOOT_M, DEFAULT_SECTION, DEFAULT_PRACTICE)).toBeCloseTo(
      54 / 0.325,
      6,
    );
  });
});

describe("other published figures", () => {
  it("B15: empty bags come 12,500 to a crate of 1,220 lb (MVR)", () => {
    expect(EMPTY_BAG_CRATE.bags).toBe(12_500);
    expect(EMPTY_BAG_CRATE.massKg / POUND_KG).toBeCloseTo(1220, 9);
    expect(EMPTY_BAG_CRATE.massKg).toBeCloseTo(553.38, 2);
  });

  it("B16: 1 ft by 10 ft takes at least 60 bags (LSU-N)", () => {
    const perFoot = bagsPlacedFor(cutArea(1, 3, 0.75) * FOOT_M, DEFAULT_SECTION);
    expect(Math.abs(10 * perFoot - 60)).toBeLessThan(3);
    expect(10 * bagsPerFootByFormula(1)).toBe(60);
  });

  it("G3: a cap of 3 ft at three times its height has a base of 9 ft (FFO-96)", () => {
    const cut = cutOnFlat(DEFAULT_SECTION, 3);
    expect((cut.toeLeftM + cut.toeRightM) / FOOT_M).toBeCloseTo(9, 9);
  });

  it("G5: 3 ft is 9 courses of 4 in and 12 of 3 in (DWR-03)", () => {
    const of = (inches: number) => ({
      ...DEFAULT_SECTION,
      bag: { ...DEFAULT_SECTION.bag, courseM: inches * 0.0254 },
    });
    expect(coursesFor(3 * FOOT_M, of(4))).toBe(9);
    expect(coursesFor(3 * FOOT_M, of(3))).toBe(12);
    expect(coursesFor(0, of(4))).toBe(0);
    expect(coursesFor(0.001, of(4))).toBe(1);
  });

  it("a base for 3 ft at three times can later carry 4.5 ft at twice (NDSU-NR), within the limit", () => {
    const roomy = { ...DEFAULT_PRACTICE, limitM: 2 };
    expect(raiseToM(3 * FOOT_M, 3 * FOOT_M, DEFAULT_SECTION, roomy) / FOOT_M).toBeCloseTo(4.5, 9);
    const limited = raiseToM(3 * FOOT_M, 3 * FOOT_M, DEFAULT_SECTION, DEFAULT_PRACTICE);
    expect(limited / FOOT_M).toBeCloseTo(4, 9);
    const onSlope = raiseToM(3 * FOOT_M, 3.5 * FOOT_M, DEFAULT_SECTION, DEFAULT_PRACTICE);
    expect(onSlope / FOOT_M).toBeCloseTo(3.5, 9);
  });

  it("P1: 300 ft with 100 ft rolls and a 3 ft lap are 4 rolls; others by laying them out one by one", () => {
    const { sheet } = DEFAULT_SECTION;
    const rolls = (lengthFt: number) => sheetRollsFor(lengthFt * FOOT_M, 10 * FOOT_M, sheet);
    const laidOut = (lengthFt: number) => {
      let count = 1;
      for (let reachedFt = 100; reachedFt < lengthFt - 1e-9; reachedFt += 97) count++;
      return count;
    };
    expect(rolls(300)).toBe(4);
    for (const lengthFt of [1, 99, 100, 101, 197, 198, 1000, 3280]) {
      expect(rolls(lengthFt)).toBe(laidOut(lengthFt));
    }
    expect(sheetRollsFor(0, 3, sheet)).toBe(0);
    expect(sheetRollsFor(300 * FOOT_M, 21 * FOOT_M, sheet)).toBe(8);
  });

  it("P2: a truck of 3.0 cu yd wet weighs 9,720 lb at 3,240 lb/cu yd (TM-TRK)", () => {
    const pounds = (3 * CUBIC_YARD_M3 * DEFAULT_PRACTICE.sandWetKgPerM3) / POUND_KG;
    expect(Math.abs(pounds / 9720 - 1)).toBeLessThan(0.005);
  });

  it("L1, L4: 45 bags a foot over 85 ft take about 205 person-hours (ERDC), one task 64 to 96 (THW-E)", () => {
    const bags = 45 * 85;
    expect(Math.abs(bags / DEFAULT_PRACTICE.jobRate / 205.1 - 1)).toBeLessThan(0.02);
    expect(bags / DEFAULT_PRACTICE.taskRateHigh).toBeCloseTo(63.75, 6);
    expect(bags / DEFAULT_PRACTICE.taskRateLow).toBeCloseTo(95.6, 1);
  });
});

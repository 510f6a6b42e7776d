import { describe, expect, it } from "vitest";
import { DEFAULT_GROUND } from "../../shared/defaults.ts";
import { accuracyOf, typicalAccuracy } from "../../shared/ground-accuracy.ts";
import { leftBehind, planOnGround, speaksOf } from "../../shared/ground-settings.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { unitChoice } from "../../shared/words/unit-choice.ts";
import { flat, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

const OWN = { name: "county.tif", bytes: 1000 };
const TYPED = {
  ...planWith(100.6, {
    ground: { rmseM: 0.35, correctionM: 0.1, verticalUnit: "us-survey-foot", datumNote: "NGVD 29" },
    water: { datumNote: "checked at the gauge", datumOffsetM: 0 },
  }),
  terrain: [OWN],
};

describe("what was said of one raster", () => {
  it("stands on that very file, with side-cars or without", () => {
    expect(planOnGround(TYPED, [OWN])).toEqual({ plan: TYPED, left: null });
    expect(speaksOf(TYPED, [OWN, { name: "county.prj", bytes: 5 }])).toBe(true);
  });

  it("does not stand on another, by name or by size: accuracy, unit, datum and the note that they agree", () => {
    for (const other of [
      { name: "next.tif", bytes: 1000 },
      { name: "county.tif", bytes: 1001 },
    ]) {
      const { plan, left } = planOnGround(TYPED, [other]);
      expect(plan.ground).toEqual(DEFAULT_GROUND);
      expect(plan.water).toMatchObject({ datumNote: "", datumOffsetM: null, elevationM: 100.6 });
      expect(left).toMatchObject({ rmseM: 0.35, correctionM: 0.1, datumNote: "NGVD 29" });
    }
  });

  it("is named when it goes; an offset that the level hangs on stays, and is to be checked", () => {
    const plan = { ...TYPED, water: { ...TYPED.water, datumOffsetM: 0.4 } };
    const moved = planOnGround(plan, [{ name: "next.tif", bytes: 1 }]);
    expect(moved.plan.water.datumOffsetM).toBe(0.4);
    const { message } = said(leftBehind(moved.left!, 0.1, true)!);
    expect(message).toContain('accuracy 1.15 ft, correction of 0.33 ft, vertical datum "NGVD 29"');
    expect(message).toContain("offset of 1.31 ft in Water is kept: check it");
  });

  it("is not spoken of when nothing of weight was said", () => {
    const plain = {
      ...planWith(1, { ground: { rmseM: 0.1 }, water: { datumNote: "" } }),
      terrain: [OWN],
    };
    const { left } = planOnGround(plain, [{ name: "next.tif", bytes: 1 }]);
    expect(leftBehind(left!, 0.1, true)).toBeNull();
  });
});

describe("accuracy that nobody states", () => {
  it("follows the cell size: 0.10 m for lidar of 1 m, 0.82 m as USGS publishes it for 1/3 arc-second", () => {
    // 0.82 m: USGS, "What is the vertical accuracy of the 3D Elevation Program (3DEP) DEMs?", 26 July 2024.
    const thirdArcSecondM = (6_378_137 * Math.PI) / 180 / 3600 / 3;
    expect(typicalAccuracy(thirdArcSecondM).rmseM).toBe(0.82);
    expect([0.5, 1, 1.009].map((cellM) => typicalAccuracy(cellM).rmseM)).toEqual([0.1, 0.1, 0.1]);
    const rising = [0.3, 2, 3.4, 10, 30].map((cellM) => typicalAccuracy(cellM).rmseM);
    expect(rising).toEqual([...rising].sort((a, b) => a - b));
    expect(new Set(rising).size).toBe(5);
  });

  it("is what the spread of the totals rests on, and the line says where it comes from", () => {
    const plan = planWith(101);
    const fine = size(plan, ring(rectangle(20, 15)), flat(100, 1));
    const coarse = size(plan, ring(rectangle(20, 15)), flat(100, 10));
    expect(fine.groundAccuracy).toMatchObject({ rmseM: 0.1 });
    expect(coarse.groundAccuracy.source).toContain("USGS-3DEP");
    expect(coarse.totalsGroundLow!.bags).toBeGreaterThan(fine.totalsGroundLow!.bags);
    const stated = planWith(101, { ground: { rmseM: 0.1 } });
    expect(size(stated, ring(rectangle(20, 15)), flat(100, 10)).totalsGroundLow!.bags).toBe(
      fine.totalsGroundLow!.bags,
    );
    expect(accuracyOf({ rmseM: 0.2 }, 30)).toMatchObject({
      rmseM: 0.2,
      source: "as entered in Elevation data",
    });
  });

  it("stays not stated in a saved plan", () => {
    const read = readPlanFile(writePlanFile(planWith(101)));
    expect(read.ok && read.value.plan.ground.rmseM).toBeNull();
  });
});

describe("what each unit would make of the heights", () => {
  const range = { lowest: 868.2, highest: 901.6, bounds: [0, 0, 1, 1] } as const;
  it("stands beside the water in the same unit, and the wrong one is far off", () => {
    const waterM = 873.9 * 0.3048;
    expect(unitChoice(range, "foot", waterM)).toEqual({
      words: "868 to 902 ft; your water 873.9 ft",
      isUnlikely: false,
    });
    expect(unitChoice(range, "metre", waterM)).toEqual({
      words: "868 to 902 m; your water 266.4 m, 602 m below all of it",
      isUnlikely: true,
    });
    expect(unitChoice(range, "us-survey-foot", null).words).toBe("868 to 902 ft");
  });
});

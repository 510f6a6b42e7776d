import { describe, expect, it } from "vitest";
import type { GroundSimulation } from "../../shared/ground-uncertainty/types.ts";
import { meanDifferenceM } from "../../shared/survey/mean-difference.ts";
import type { SurveyedGround } from "../../shared/survey/surveyed-ground.ts";
import {
  chanceWords,
  correctionWords,
  enoughWords,
  nineInTenWords,
  orderChances,
  orderFigureWords,
  surveyFirstList,
  triedWords,
} from "../../shared/words/ground-chances.ts";
import { changeSetting } from "../../src/document/edits/settings.ts";
import { plan, undo } from "../../src/document/store.ts";
import { flat, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const LINE = size(planWith(100.5), ring(rectangle(20, 15)), flat(100));
const SIMULATED: GroundSimulation = {
  lineId: "a",
  model: { rmseM: 0.1, biasShare: 0.3, correlatedShare: 0.5, rangeM: 91.44 },
  ...{ fields: 500, readings: 2 },
  used: { bags: 17_879, order: 19_309 },
  expected: { bags: 18_304, order: 19_734 },
  oneInTwo: { bags: 18_092, order: 19_522 },
  nineInTen: { bags: 23_195, order: 24_625 },
  nineInTenSurveyed: { bags: 18_379, order: 19_809 },
  ...{ overLimit: 0.976, short: 0.5, stations: [] },
  surveyFirst: [{ chainageM: 38.1, because: "bags", overLimit: 0 }],
};

describe("what is enough on many grounds, in words", () => {
  const line = { ...LINE, simulatedGround: SIMULATED };

  it("is rounded up to three digits, never down", () => {
    expect([23_195, 23_200, 834, 1_831, 0].map(enoughWords)).toEqual([
      "23,200",
      "23,200",
      "834",
      "1,840",
      "0",
    ]);
  });

  it("has chances in tenths, and says so at the ends", () => {
    expect([0, 0.05, 0.34, 0.95, 0.976].map(chanceWords)).toEqual([
      "under 1 in 20",
      "1 in 10",
      "3 in 10",
      "9 in 10",
      "over 19 in 20",
    ]);
  });

  it("says what it is of, and that it is not known, or not yet", () => {
    expect(nineInTenWords(line)).toBe("9 in 10, judged: 23,200");
    expect(nineInTenWords({ ...line, simulatedGround: null })).toBe("9 in 10, judged: not known");
    expect(nineInTenWords(LINE)).toBe("9 in 10, judged: counting");
    expect(orderChances({ ...line, simulatedGround: null })).toEqual([]);
  });

  it("gives no figure where nothing of the line is counted", () => {
    const hole = size(planWith(100.5), ring(rectangle(20, 15)), flat(Number.NaN));
    expect(nineInTenWords({ ...hole, simulatedGround: SIMULATED })).toBeNull();
  });

  it("names on the order which figure it is, and where to survey", () => {
    expect(orderFigureWords(line, "us")).toBe(
      "Counted on the ground as in the elevation data and the readings. Enough 1 in 2: 19,600; 9 in 10: 24,700, by judgement how the error of the ground, ±0.33 ft, is shared out.",
    );
    expect(surveyFirstList(line, "us")).toBe("Survey first at 1+25.");
    expect(triedWords(SIMULATED, "us")).toMatch(
      /30 % the same everywhere, 50 % alike within 300 ft, 20 % each cell's own\. These shares are judgement, with no published source\. All pass through the 2 readings/,
    );
  });
});

describe("the mean difference of readings", () => {
  const read = (differences: readonly number[]): SurveyedGround => ({
    readings: differences.map((m, k) => ({ chainageM: 10 * k, readM: 100 + m, dataM: 100 })),
    ...{ stretches: [], offLine: 0, withoutDataM: [], mostApartM: 15, aroundM: null },
  });

  it("is offered from three readings on, and not where a rod would not show it", () => {
    expect(meanDifferenceM(read([0.1, 0.2, 0.3]))).toBeCloseTo(0.2, 9);
    expect(meanDifferenceM(read([0.1, 0.2]))).toBeNull();
    expect(meanDifferenceM(read([0.1, -0.1, 0.001]))).toBeNull();
    expect(meanDifferenceM(null)).toBeNull();
    expect(correctionWords(-0.064, "us")).toBe("−0.21 ft");
  });

  it("corrects the elevation data in one step, which undo takes back", () => {
    const before = plan.value.ground;
    expect(changeSetting("ground.correctionM", "the correction", 0.2)).toMatchObject({ ok: true });
    expect(plan.value.ground).toEqual({ ...before, correctionM: 0.2 });
    undo();
    expect(plan.value.ground).toEqual(before);
  });
});

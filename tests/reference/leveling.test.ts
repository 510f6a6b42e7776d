import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { belowInstrument, heightOfInstrumentM } from "../../shared/survey/leveling.ts";

/**
 * The worked example of differential leveling in Ghilani and Wolf, Elementary Surveying: An Introduction to Geomatics:
 * BM Rock at 820.00 ft, plus sight 8.42 ft, height of instrument 828.42 ft, minus sight 1.20 ft on point X, whose
 * elevation is then 827.22 ft.
 */
describe("leveling, against a surveying text", () => {
  const survey = {
    benchmark: { name: "BM Rock", elevationM: 820 * FOOT_M, at: null },
    backsightM: 8.42 * FOOT_M,
    readings: [],
  };

  it("has the height of instrument of the example", () => {
    expect(heightOfInstrumentM(survey)! / FOOT_M).toBeCloseTo(828.42, 9);
  });

  it("has the elevation that the example reads off the rod, and the reading at which a mark has it", () => {
    const instrumentM = heightOfInstrumentM(survey)!;
    expect(belowInstrument(instrumentM, 1.2 * FOOT_M) / FOOT_M).toBeCloseTo(827.22, 9);
    expect(belowInstrument(instrumentM, 827.22 * FOOT_M) / FOOT_M).toBeCloseTo(1.2, 9);
  });
});

import { afterEach, describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_WATER, EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Plan, Water } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import { formatElevation } from "../../shared/units.ts";
import { gaugeSumWords } from "../../shared/words/gauge-sum.ts";
import { nameGauge, removeGauge } from "../../src/document/edits/gauge.ts";
import { plan, replacePlan, undo } from "../../src/document/store.ts";
import { planShapes } from "../../src/map/plan-shapes.ts";
import { said } from "../helpers/said.ts";

function water(stageFt: number, zeroFt: number, offsetFt: number | null): Water {
  const datumOffsetM = offsetFt === null ? null : offsetFt * FOOT_M;
  const levels = { stageM: stageFt * FOOT_M, gaugeZeroM: zeroFt * FOOT_M, datumOffsetM };
  return { ...DEFAULT_WATER, by: "stage", ...levels };
}

afterEach(() => {
  replacePlan(EMPTY_PLAN, "Open");
});

describe("the sum of stage, zero and offset", () => {
  it.each([
    [
      "with an offset below zero",
      water(27.8, 26.35, -0.95),
      "27.80 + 26.35 - 0.95 = 53.20 ft NAVD 88",
    ],
    ["with one above", water(27.8, 26.35, 0.95), "27.80 + 26.35 + 0.95 = 55.10 ft NAVD 88"],
    ["without one", water(27.8, 26.35, null), "27.80 + 26.35 = 54.15 ft NAVD 88"],
    ["below zero", water(-2, -1.5, null), "-2.00 - 1.50 = -3.50 ft NAVD 88"],
    [
      "with more digits where two do not add up",
      water(1.004, 1.004, null),
      "1.004 + 1.004 = 2.008 ft NAVD 88",
    ],
    ["of thousands", water(10, 1204.5, 0), "10.00 + 1,204.50 + 0.00 = 1,214.50 ft NAVD 88"],
  ])("%s", (_, given, words) => {
    expect(gaugeSumWords(given, "NAVD 88", "us")).toBe(words);
  });

  it("is in meters too, comes to the elevation shown elsewhere, and names no datum it does not know", () => {
    const given = water(27.8, 26.35, -0.95);
    const words = gaugeSumWords(given, "", "metric")!;
    expect(words).toMatch(/^8\.4\d+ \+ 8\.0\d+ - 0\.2\d+ = 16\.2\d+ m$/);
    const [addends, sum] = words.split(" = ").map((part) => part.replaceAll(/ m| /g, "")) as [
      string,
      string,
    ];
    const added = addends
      .replace("-", "+-")
      .split("+")
      .reduce((total, each) => total + Number(each), 0);
    expect(added).toBeCloseTo(Number(sum), 6);
    const shown = formatElevation(waterElevationAtGauge(given), "us");
    expect(gaugeSumWords(given, "", "us")).toContain(`= ${shown}`);
  });

  it("is not there without a stage", () => {
    expect(gaugeSumWords({ ...water(1, 1, null), given: false }, "", "us")).toBeNull();
    expect(gaugeSumWords({ ...water(1, 1, null), by: "elevation" }, "", "us")).toBeNull();
  });
});

describe("a gauge off the map", () => {
  it("is named without a place, and goes through the file and back", () => {
    nameGauge("Wexmere at Kiln Road");
    expect(plan.value.gauge).toEqual({ name: "Wexmere at Kiln Road", at: null });
    const withDatum: Plan = {
      ...plan.value,
      water: { ...plan.value.water, gaugeDatum: "NGVD 29" },
    };
    const back = readPlanFile(writePlanFile(withDatum));
    if (!back.ok) throw new Error(said(back.failure).message);
    expect(back.value.plan.gauge).toEqual(plan.value.gauge);
    expect(back.value.plan.water.gaugeDatum).toBe("NGVD 29");
    expect(back.value.notes.join(" ")).not.toContain("geometry");
    expect(
      JSON.stringify(planShapes({ plan: plan.value, chosenId: null, showAll: true })),
    ).not.toContain('"gauge"');
  });

  it("keeps its name when it is taken from the map, and is none without both", () => {
    replacePlan({ ...EMPTY_PLAN, gauge: { name: "Weir", at: [-96, 46] } }, "Open");
    removeGauge();
    expect(plan.value.gauge).toEqual({ name: "Weir", at: null });
    nameGauge(" ");
    expect(plan.value.gauge).toBeNull();
    undo();
    undo();
    expect(plan.value.gauge).toEqual({ name: "Weir", at: [-96, 46] });
  });
});

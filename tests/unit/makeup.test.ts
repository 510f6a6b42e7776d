import { describe, expect, it } from "vitest";
import { documentsIn } from "../../shared/handbook.ts";
import { type MakeupKey, makeup } from "../../shared/words/makeup/line.ts";
import { groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";

const PLAN = planWith(100.4);
const LINE = size(
  PLAN,
  ring(rectangle(30, 20)),
  groundOf((x) => 100 - x / 100),
);
const inputs = (system: "us" | "metric") => ({
  plan: PLAN,
  line: LINE,
  totals: LINE.totals,
  system,
});
const KEYS: MakeupKey[] = [
  "waterM",
  "crestM",
  "lengthM",
  "builtLengthM",
  "enclosedM2",
  "greatestHeightM",
  "lengthOverLimitM",
  "lengthOver3FtM",
  "lengthNoDataM",
  "volumeM3",
  "prismoidalVolumeM3",
  "bagsPlaced",
  "bagOrder",
  "bags",
  "sheetBags",
  "sandM3",
  "sandDryKg",
  "sandWetKg",
  "trucks",
  "sheetWidthM",
  "sheetM2",
  "sheetRolls",
  "jobPersonHours",
  "taskPersonHours",
  "groundSpread",
];

describe("what numbers are made of", () => {
  it.each(KEYS)("%s has a formula, inputs with units and a source, in both systems", (key) => {
    for (const system of ["us", "metric"] as const) {
      const made = makeup(key, inputs(system));
      expect(made.formula).not.toBe("");
      expect(made.source).not.toBe("");
      expect(made.inputs.length).toBeGreaterThan(0);
      for (const { name, value } of made.inputs) {
        expect(name).not.toBe("");
        expect(value).toMatch(/\d|stated|ring|line/);
        expect(value).not.toMatch(/NaN|undefined/);
      }
      expect(JSON.stringify(made)).not.toMatch(FOREIGN[system]);
      expect(JSON.stringify(made)).not.toMatch(NEVER);
    }
  });

  it("bags can be worked out again from what is shown", () => {
    const { inputs: shown } = makeup("bags", inputs("us"));
    const number = (name: string) =>
      Number.parseFloat(shown.find((each) => each.name === name)!.value.replace(/,/g, ""));
    const cubicFeet = number("volume") * 27;
    const again = (cubicFeet / number("one placed bag")) * (1 + number("spares") / 100);
    expect(Math.abs(again / LINE.totals.bags - 1)).toBeLessThan(0.01);
    expect(
      makeup("bagOrder", inputs("us")).inputs.find((each) => each.name === "empty bags to bring")
        ?.value,
    ).toContain("12,500");
  });

  it("says that the datum is taken as the same when no offset is stated", () => {
    const plan = planWith(0, { water: { by: "stage", stageM: 2, gaugeZeroM: 98 } });
    const made = makeup("waterM", { ...inputs("metric"), plan });
    expect(made.inputs.map((each) => each.value)).toEqual([
      "98.00 m",
      "2.000 m",
      "none stated: taken as the same datum",
      "0.000 m/km",
    ]);
  });

  it("names documents whose full titles the handbook has", () => {
    expect(documentsIn(makeup("sheetRolls", inputs("us")).source).join(" ")).toContain("St. Louis");
    expect(documentsIn("judgement")).toEqual([]);
    expect(documentsIn("NDSU-11, MB")).toHaveLength(2);
  });
});

import { describe, expect, it } from "vitest";
import type { Alignment, Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { openLine, planWith } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

const LINE: Alignment = openLine(
  [
    [0, 0],
    [60, 0],
  ],
  [20],
);

function planWithSections(reachSections: unknown): Plan {
  const line = { ...LINE, reachSections } as Alignment;
  return { ...planWith(100), alignments: [line], chosenId: null };
}

/** A plan file with the sections put in as another program might have. */
function fileWith(reachSections: unknown): string {
  const file = JSON.parse(writePlanFile(planWithSections([]))) as {
    features: { properties: Record<string, unknown> }[];
  };
  file.features[0]!.properties.reachSections = reachSections;
  return JSON.stringify(file);
}

const read = (text: string) => {
  const outcome = readPlanFile(text);
  if (!outcome.ok) throw new Error(said(outcome.failure).message);
  return outcome.value.plan.alignments[0]!.reachSections;
};

describe("sections of reaches in a plan file", () => {
  const SECTIONS = [
    { section: "earth-levee", figures: { crownM: 1.8, runLand: 2 } },
    { section: "pyramid", figures: {} },
    { section: "two-bag-wall", figures: {} },
  ];

  it("come back as they were, those beyond the reaches among them", () => {
    expect(read(writePlanFile(planWithSections(SECTIONS)))).toEqual(SECTIONS);
  });

  it("are left out where the plan has none, and the version stays", () => {
    const text = writePlanFile({ ...planWith(100), alignments: [LINE] });
    expect(text).not.toMatch(/reachSections/);
    expect(text).toMatch(/"version": 1/);
    expect(read(text)).toBeUndefined();
  });

  it("may be stated without figures", () => {
    expect(read(fileWith([{ section: "raised" }]))).toEqual([{ section: "raised", figures: {} }]);
    expect(read(fileWith(null))).toBeUndefined();
  });

  it.each<[string, unknown, RegExp]>([
    ["an unknown section", [{ section: "moat" }], /Reach 1: .*pyramid.*earth-levee.*"moat"/],
    ["a section that is no text", [{ section: 7 }], /came 7/],
    ["a name of Object's own", [{ section: "constructor" }], /came "constructor"/],
    [
      "a figure out of range",
      [{ section: "pyramid" }, { section: "earth-levee", figures: { runWater: 90 } }],
      /Reach 2: .*\(runWater\).*from 0.5 to 8; came 90/,
    ],
    [
      "a figure that is no number",
      [{ section: "pyramid", figures: { crownM: "1" } }],
      /crownM.*from 0 to 5/,
    ],
    [
      "a figure of another section",
      [{ section: "two-bag-wall", figures: { runWater: 2 } }],
      /among widthM; came "runWater"/,
    ],
    [
      "a figure named toString",
      [{ section: "pyramid", figures: { toString: 1 } }],
      /among baseRatio/,
    ],
    ["another entry", [{ section: "pyramid", colour: "red" }], /unknown entry "colour"/],
    ["figures that are a list", [{ section: "pyramid", figures: [] }], /section and figures/],
    ["no list", { section: "pyramid" }, /as a list of at most 501/],
    ["a list of nothings", [null], /section and figures/],
    ["too many", Array.from({ length: 502 }, () => ({ section: "pyramid" })), /at most 501/],
  ])("are refused with what was expected: %s", (_, sections, words) => {
    const outcome = readPlanFile(fileWith(sections));
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect(outcome.failure.code).toBe("plan/bad-value");
    expect(said(outcome.failure).message).toMatch(words);
    expect(said(outcome.failure).remedy).not.toBe("");
  });

  it("are validated in an edit as in a file", () => {
    expect(validatePlan(planWithSections(SECTIONS)).ok).toBe(true);
    const wrong = validatePlan(planWithSections([{ section: "moat", figures: {} }]));
    expect(wrong.ok).toBe(false);
    expect(
      validatePlan(planWithSections([{ section: "pyramid", figures: { crownM: NaN } }])).ok,
    ).toBe(false);
  });
});

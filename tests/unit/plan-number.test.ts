import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Alignment, Closure, Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { builtNumber, planNumber } from "../../shared/plan-number.ts";
import { writePlanFile } from "../../shared/plan-write.ts";
import type { Walk } from "../../shared/sizing-types.ts";
import { said } from "../helpers/said.ts";

const DEMO = new URL("../../sample-terrain/demo.geojson", import.meta.url);

function demo(): Plan {
  const read = readPlanFile(readFileSync(DEMO, "utf8"));
  if (!read.ok) throw new Error(said(read.failure).message);
  return read.value.plan;
}

function walkOver(ground: readonly number[]): { walk: Walk } {
  return { walk: { groundM: Float64Array.from(ground) } as Walk };
}

const GROUND = walkOver([266.1, 266.2, Number.NaN, 266.4]);

function numberOf(plan: Plan, change: Partial<Alignment> = {}, ground = GROUND): string {
  return planNumber(plan, { ...plan.alignments[0]!, ...change }, ground);
}

const CLOSURE: Closure = {
  fromM: 90,
  toM: 96,
  closeBy: { stageM: 9, at: null },
  people: 6,
};

describe("the number of a plan with a level", () => {
  const plan = demo();
  const benchmark = { name: "BM 1", elevationM: 267.1, at: null };
  const leveled = (elevationM: number, backsightM: number | null): Plan => ({
    ...plan,
    survey: { benchmark: { ...benchmark, elevationM }, backsightM, readings: [] },
  });

  it("changes with benchmark and backsight, which the rod readings of its pages follow from", () => {
    const numbers = [plan, leveled(267.1, null), leveled(267.1, 0.97), leveled(267.1, 0.98)];
    const more = [...numbers, leveled(267.2, 0.97)].map((each) => numberOf(each));
    expect(new Set(more).size).toBe(more.length);
  });

  it("leaves what is built as it was when the level is set up again", () => {
    const built = [plan, leveled(267.1, null), leveled(267.1, 0.97)].map((each) =>
      builtNumber(each, each.alignments[0]!, GROUND),
    );
    expect(new Set(built)).toEqual(new Set([numberOf(plan)]));
  });
});

describe("the number of a plan", () => {
  const plan = demo();
  const number = numberOf(plan);

  it("is four and two hexadecimal digits", () => {
    expect(number).toMatch(/^[0-9A-F]{4}-[0-9A-F]{2}$/);
  });

  const [first, ...others] = plan.alignments[0]!.corners;
  it.each<[string, string]>([
    [
      "a corner moved by an inch",
      numberOf(plan, { corners: [[first![0] + 3e-7, first![1]], ...others] }),
    ],
    ["a corner taken out", numberOf(plan, { corners: others })],
    ["a stretch left open", numberOf(plan, { closures: [CLOSURE] })],
    ["a break between reaches", numberOf(plan, { reachBreaksM: [100] })],
    [
      "a reach of another levee type",
      numberOf(plan, { reachSections: [{ section: "earth-levee", figures: {} }] }),
    ],
    [
      "the ground a centimetre lower at one place",
      numberOf(plan, {}, walkOver([266.1, 266.19, Number.NaN, 266.4])),
    ],
    [
      "elevation data where there was none",
      numberOf(plan, {}, walkOver([266.1, 266.2, 266.3, 266.4])),
    ],
    [
      "another stage",
      numberOf({ ...plan, water: { ...plan.water, stageM: plan.water.stageM + 0.03 } }),
    ],
    ["another freeboard", numberOf({ ...plan, water: { ...plan.water, freeboardM: 0.6096 } })],
    ["another base", numberOf({ ...plan, section: { ...plan.section, baseRatio: 2.5 } })],
    [
      "another bag",
      numberOf({
        ...plan,
        section: { ...plan.section, bag: { ...plan.section.bag, courseM: 0.09 } },
      }),
    ],
  ])("is another one after %s", (_, changed) => {
    expect(changed).not.toBe(number);
  });

  it("comes back with the former plan, and is the same in a plan read back from its file", () => {
    const raised = { ...plan, water: { ...plan.water, stageM: 10 } };
    expect(numberOf({ ...raised, water: { ...raised.water, stageM: plan.water.stageM } })).toBe(
      number,
    );
    const read = readPlanFile(writePlanFile(plan));
    expect(read.ok && numberOf(read.value.plan)).toBe(number);
  });

  it("with a stretch left open is the same in a plan read back, and none left open is as before", () => {
    const [first, ...others] = plan.alignments;
    const closures = [{ ...CLOSURE, fromM: 300 * 0.3048, toM: 1000 / 3 }];
    const open = { ...plan, alignments: [{ ...first!, closures }, ...others] };
    const read = readPlanFile(writePlanFile(open));
    expect(read.ok && numberOf(read.value.plan)).toBe(numberOf(open));
    expect(numberOf(plan, { closures: [] })).toBe(number);
  });

  it("does not count the title, the people, the leave stage, or the station interval that goes with the units", () => {
    const practice = { ...plan.practice, people: 12, stationIntervalM: 10 };
    expect(numberOf({ ...plan, title: "Other", practice, leave: null })).toBe(number);
  });
});

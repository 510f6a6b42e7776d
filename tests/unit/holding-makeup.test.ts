import { describe, expect, it } from "vitest";
import { DEFAULT_TIME } from "../../shared/defaults.ts";
import type { Forecast } from "../../shared/plan.ts";
import { type HoldingMakeupKey, holdingMakeup } from "../../shared/words/makeup/holding.ts";
import { type TimeMakeupKey, timeMakeup } from "../../shared/words/makeup/time.ts";
import { flat, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { FOREIGN, NEVER } from "../helpers/never-said.ts";

const forecast: Forecast = {
  levels: "elevation",
  note: "",
  rows: [
    { at: "2026-04-03T08:00-05:00", levelM: 99, lowM: null, highM: null },
    { at: "2026-04-03T18:00-05:00", levelM: 100.6, lowM: null, highM: null },
  ],
};
const crew = { shifts: 2, dayFromH: 8, dayToH: 18, startAt: "2026-04-03T08:00-05:00" };
const plan = {
  ...planWith(100.6, { practice: { people: 60 } }),
  time: { ...DEFAULT_TIME, ...crew, forecast },
};
const line = size(plan, ring(rectangle(20, 15)), flat(100));
const HOLDING: HoldingMakeupKey[] = [
  ...(["sliding", "overturning", "throughM3PerS", "underM3PerS", "exitGradient"] as const),
  ...(["totalM3PerS", "creep", "rainM3PerS", "demandM3PerS", "capacityM3PerS"] as const),
  ...(["insideM", "hoursToStructure", "oneFails", "raiseM"] as const),
];
const TIME: TimeMakeupKey[] = [
  ...(["finishSlowH", "finishFastH", "wetH", "ahead", "waysOut", "nextFoot"] as const),
];

describe("what numbers about holding and time are made of", () => {
  const made = [
    ...HOLDING.map(
      (key): [string, (system: "us" | "metric") => ReturnType<typeof holdingMakeup>] => [
        key,
        (system) => holdingMakeup(key, { plan, holding: line.holding!, system }),
      ],
    ),
    ...TIME.map((key): [string, (system: "us" | "metric") => ReturnType<typeof timeMakeup>] => [
      key,
      (system) => timeMakeup(key, { plan, time: line.time!, system }),
    ]),
  ];

  it.each(made)("%s has a formula, inputs and a source, in both systems", (_key, make) => {
    for (const system of ["us", "metric"] as const) {
      const { formula, inputs, source } = make(system);
      expect(formula).not.toBe("");
      expect(source).not.toBe("");
      expect(inputs.length).toBeGreaterThan(0);
      for (const { name, value } of inputs) {
        expect(name).not.toBe("");
        expect(value).toMatch(/\d|not stated|triangular/);
        expect(value).not.toMatch(/NaN|undefined|Infinity/);
      }
      expect(JSON.stringify([formula, inputs, source])).not.toMatch(FOREIGN[system]);
      expect(JSON.stringify([formula, inputs, source])).not.toMatch(NEVER);
    }
  });

  it("hours can be worked out again from what is shown", () => {
    const { inputs } = timeMakeup("finishSlowH", { plan, time: line.time!, system: "us" });
    const number = (name: string) =>
      Number.parseFloat(inputs.find((each) => each.name === name)!.value.replace(/,/g, ""));
    const worked = number("setting up") + number("bags") / number("bags an hour");
    const nights = line.time!.finishSlowH! - worked;
    const nightH = 24 - (crew.dayToH - crew.dayFromH);
    expect(nights).toBeGreaterThan(nightH - 1);
    expect(Math.abs(nights - nightH * Math.round(nights / nightH))).toBeLessThan(1);
  });

  it("rain inside can be worked out again from what is shown, the high end rounded up", () => {
    const areaM2 = line.enclosedM2!;
    const litres = 0.95 * (0.0254 / 3600) * areaM2 * 1000;
    expect(
      holdingMakeup("rainM3PerS", { plan, holding: line.holding!, system: "metric" }),
    ).toMatchObject({
      inputs: expect.arrayContaining([
        { name: "rain", value: "25.4 mm/h" },
        {
          name: "rain inside",
          value: expect.stringMatching(
            new RegExp(` to ${(Math.ceil(litres * 10) / 10).toFixed(1)} L/s$`),
          ),
        },
      ]),
    });
  });
});

import { beforeEach, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { failureOf } from "../../shared/failure.ts";
import type { Water } from "../../shared/plan.ts";
import { notices, tell } from "../../src/document/notices.ts";
import { plan, replacePlan } from "../../src/document/store.ts";
import { changeDraft, draftFailure, draftText, takeDraft } from "../../src/live/forecast-draft.ts";

const STAGES = "time,stage_ft\n2026-04-06T07:00-05:00,28.1\n2026-04-06T13:00-05:00,30.5";

async function take(text: string, water: Partial<Water>): Promise<Water> {
  replacePlan({ ...EMPTY_PLAN, water: { ...EMPTY_PLAN.water, ...water } }, "Start");
  await changeDraft(() => {
    draftText.value = text;
  });
  await takeDraft();
  return plan.peek().water;
}

beforeEach(() => {
  draftText.value = "";
});

it("a forecast by stage has the water given by stage where nobody has given it, so that the gauge zero is asked for", async () => {
  tell("info", failureOf("forecast/read", { name: "forecast.txt" }));
  const water = await take(STAGES, { given: false, by: "elevation" });
  expect(notices.peek().map(({ failure }) => failure.code)).not.toContain("forecast/read");
  expect(plan.peek().time?.forecast?.levels).toBe("stage");
  expect(water).toMatchObject({ by: "stage", given: false });
});

it("beside a water elevation it is refused until a gauge zero is given", async () => {
  const water = { by: "elevation", elevationM: 265 } as const;
  await take(STAGES, water);
  expect(plan.peek().time?.forecast ?? null).toBeNull();
  expect(draftFailure.peek()).toMatchObject({ code: "forecast/no-gauge-zero" });
  await take(STAGES, { ...water, gaugeZeroM: 256 });
  expect(plan.peek().time?.forecast?.levels).toBe("stage");
  await take(STAGES.replace("stage_ft", "elevation_ft"), water);
  expect(plan.peek().time?.forecast?.levels).toBe("elevation");
});

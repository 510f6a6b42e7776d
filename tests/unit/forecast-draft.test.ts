import { effect } from "@preact/signals";
import { beforeEach, expect, it, vi } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { failureOf } from "../../shared/failure.ts";
import type { Water } from "../../shared/plan.ts";
import { notices, tell } from "../../src/document/notices.ts";
import { plan, replacePlan } from "../../src/document/store.ts";
import {
  changeDraft,
  closeDraft,
  draftFailure,
  draftText,
  isDrafting,
  openForecastFile,
  takeDraft,
} from "../../src/live/forecast-draft.ts";

/** Each reading begins later after its call than the one before it, as where the page is busy. */
let delayMs = 0;
vi.mock("../../shared/load-part.ts", () => ({
  loadPart: async <T>(_part: string, load: () => Promise<T>): Promise<T> => {
    delayMs += 4;
    await new Promise((done) => setTimeout(done, delayMs));
    return load();
  },
}));

const STAGES = "time,stage_ft\n2026-04-06T07:00-05:00,28.1\n2026-04-06T13:00-05:00,30.5";

async function take(text: string, water: Partial<Water>): Promise<Water> {
  replacePlan({ ...EMPTY_PLAN, water: { ...EMPTY_PLAN.water, ...water } }, "Start");
  await changeDraft(() => {
    draftText.value = text;
  });
  await takeDraft();
  return plan.peek().water;
}

/* Files of tests share a process, and others leave notices behind in it. */
beforeEach(() => {
  draftText.value = "";
  notices.value = [];
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

it("a file that is refused is told as refused, where the rows are opened and read again meanwhile too", async () => {
  replacePlan(EMPTY_PLAN, "Start");
  const close = effect(() => {
    if (isDrafting.value) queueMicrotask(() => void changeDraft(() => {}));
  });
  const told = () => notices.peek().map(({ failure }) => failure.code);
  await openForecastFile(new File(["04/06/2026 07:00,31\n04/06/2026 13:00,32"], "river.txt"));
  expect(told()).toEqual(["forecast/in-file"]);
  expect(draftFailure.peek()).toMatchObject({ code: "forecast/zone-needed" });
  await openForecastFile(new File([STAGES], "river.csv"));
  expect(told()).toEqual(["forecast/read"]);
  close();
  closeDraft();
});

it("a file that is read is said not to count yet, until it is taken", async () => {
  replacePlan({ ...EMPTY_PLAN, water: { ...EMPTY_PLAN.water, given: false } }, "Start");
  await openForecastFile(new File([STAGES], "stages.csv"));
  expect(plan.peek().time?.forecast ?? null).toBeNull();
  expect(notices.peek().map(({ failure }) => failure.code)).toEqual(["forecast/read"]);
  await takeDraft();
  expect(plan.peek().time?.forecast?.rows).toHaveLength(2);
  expect(notices.peek()).toEqual([]);
});

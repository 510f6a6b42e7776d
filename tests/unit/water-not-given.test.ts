import { afterEach, describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { failureOf } from "../../shared/failure.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { isWaterGiven } from "../../shared/stage.ts";
import { sizeForLevel } from "../../src/document/edits/forecast.ts";
import { changeSetting, settingValue } from "../../src/document/edits/settings.ts";
import { plan, replacePlan, undo } from "../../src/document/store.ts";
import { toSize } from "../../src/live/current.ts";
import { ground } from "../../src/live/ground.ts";
import { startNewPlan } from "../../src/live/new-plan.ts";
import { uncounted } from "../../src/live/uncounted.ts";
import { toTrace } from "../../src/live/water-now.ts";
import { waterTint } from "../../src/map/water-level.ts";
import { rectangle, structure } from "../helpers/grounds.ts";

const OPEN = {
  ...{ bounds: [-97, 46, -96, 47], files: [], marksAsked: [], lowestM: 11.56 },
} as unknown as GroundSummary;

afterEach(() => {
  ground.value = null;
  replacePlan(EMPTY_PLAN, "Open");
});

describe("a new plan", () => {
  const start = () => {
    ground.value = OPEN;
    startNewPlan();
    const structures = [structure("House", rectangle(6, 5))];
    replacePlan({ ...plan.value, structures }, "Draw a building");
  };

  it("has no level of the water, not even the lowest ground, and nothing is counted", () => {
    start();
    expect(isWaterGiven(plan.value.water)).toBe(false);
    expect(settingValue(plan.value, "water.elevationM")).toBeNull();
    expect(settingValue(plan.value, "water.stageM")).toBeNull();
    expect(uncounted.value).toEqual(failureOf("plan/no-water"));
    expect([toSize.value, toTrace.value]).toEqual([null, null]);
    expect(waterTint(plan.value).levelM).toBeLessThan(-1000);
  });

  it.each(["water.stageM", "water.elevationM"] as const)("is given one by typing %s", (path) => {
    start();
    changeSetting(path, "Level", 12);
    expect(isWaterGiven(plan.value.water)).toBe(true);
    expect(settingValue(plan.value, path)).toBe(12);
    expect(uncounted.value).toBeNull();
    expect(toSize.value).not.toBeNull();
    undo();
    expect(isWaterGiven(plan.value.water)).toBe(false);
  });

  it("is given one by sizing for a level of the forecast, and by nothing else of the water", () => {
    start();
    changeSetting("water.freeboardM", "Freeboard", 0.5);
    changeSetting("water.gaugeZeroM", "Gauge zero", 100);
    expect(isWaterGiven(plan.value.water)).toBe(false);
    sizeForLevel(103);
    expect(isWaterGiven(plan.value.water)).toBe(true);
    expect(settingValue(plan.value, "water.elevationM")).toBeCloseTo(103, 9);
  });

  it("keeps that through its file; an older file's level is given", () => {
    start();
    const back = readPlanFile(writePlanFile(plan.value));
    expect(back.ok && back.value).toMatchObject({ waterStated: false });
    expect(back.ok && isWaterGiven(back.value.plan.water)).toBe(false);
    const older = { type: "FeatureCollection", features: [] };
    const water = { by: "elevation", elevationM: 262.5 };
    const read = readPlanFile(JSON.stringify({ ...older, drystead: { version: 1, water } }));
    expect(read.ok && isWaterGiven(read.value.plan.water)).toBe(true);
  });
});

import { describe, expect, it } from "vitest";
import { demoPlan } from "../../sample-terrain/plans.ts";
import { FOOT_M } from "../../shared/constants.ts";
import type { LeaveLevel, Plan } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { leaveWords } from "../../shared/words/leave.ts";
import { setLeave } from "../../src/document/edits/leave.ts";
import { plan, startFrom, undo } from "../../src/document/store.ts";
import { messageOf, withWords } from "../helpers/check-text.ts";
import { flat, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

const LEAVE: LeaveLevel = {
  ...{ by: "stage", levelM: 30 * FOOT_M, at: "2026-04-08T11:00-05:00" },
  note: "Road goes under at 30.5 ft",
};

function read(settings: object): Plan {
  const text = { type: "FeatureCollection", features: [], drystead: { version: 1, ...settings } };
  const found = readPlanFile(JSON.stringify(text));
  if (!found.ok) throw new Error(said(found.failure).message);
  return found.value.plan;
}

describe("the leave stage", () => {
  it("is said with stage, elevation, hour, or that it is not set", () => {
    expect(leaveWords({ leave: LEAVE }, "us")).toBe("Leave at stage 30.0 ft, Wed 11:00");
    expect(leaveWords({ leave: LEAVE }, "metric")).toBe("Leave at stage 9.14 m, Wed 11:00");
    const water = { ...LEAVE, by: "elevation", levelM: 266, at: null } as const;
    expect(leaveWords({ leave: water }, "us")).toBe("Leave at water 872.70 ft");
    expect(leaveWords({ leave: { ...LEAVE, levelM: null } }, "us")).toBe("Leave Wed 11:00");
    expect(leaveWords({ leave: null }, "us")).toBe("Leave stage not set");
    expect(leaveWords({}, "us")).toBe("Leave stage not set");
  });

  it("goes through the plan file and back; an older file has none", () => {
    const demo = demoPlan(1);
    expect(demo.leave).not.toBeNull();
    const back = readPlanFile(writePlanFile(demo));
    expect(back.ok && back.value.plan.leave).toEqual(demo.leave);
    expect(read({}).leave).toBeNull();
    expect(read({ leave: { levelM: 9, by: "stage" } }).leave).toEqual({
      ...{ by: "stage", levelM: 9, at: null, note: "" },
    });
  });

  it.each([
    ["with neither level nor hour", { by: "stage" }, "leave.levelM"],
    ["at no hour there is", { at: "noon" }, "leave.at"],
    ["by something else", { by: "road", levelM: 3 }, "leave.by"],
  ])("%s is refused", (_, leave, named) => {
    expect(() => read({ leave })).toThrow(named);
  });

  it("is set and taken back as one step each", () => {
    startFrom({ plan: read({}) });
    expect(setLeave(LEAVE)).toBe(true);
    expect(plan.value.leave).toEqual(LEAVE);
    undo();
    expect(plan.value.leave ?? null).toBeNull();
    expect(setLeave({ ...LEAVE, levelM: null, at: null })).toBe(false);
  });
});

describe("the check of the leave stage", () => {
  const found = (leave: Plan["leave"]) =>
    size({ ...planWith(100.3), leave: leave ?? null }, ring(rectangle(25, 20)), flat(100))
      .checks.filter(({ id }) => id === "leave")
      .map((check) => withWords(check));
  const at = (levelM: number): LeaveLevel => ({ ...LEAVE, by: "elevation", levelM });

  it("is a caution until someone sets it, and is never worked out", () => {
    const [check, ...more] = found(null);
    expect(more).toEqual([]);
    expect(check!.severity).toBe("caution");
    expect(messageOf(check)).toBe("Leave stage not set.");
    expect(check!.remedy).toContain("exit road");
  });

  it("speaks where it lies above the sized-for water, and not below", () => {
    expect(messageOf(found(at(100.6))[0])).toContain("1.0 ft above the sized-for water");
    expect(found(at(100.3))).toEqual([]);
    expect(found({ ...LEAVE, levelM: null })).toEqual([]);
  });
});

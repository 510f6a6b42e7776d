import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_PRACTICE, EMPTY_PLAN } from "../../shared/defaults.ts";
import { letterOf } from "../../shared/line-letter.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { SETTINGS, type SettingPath } from "../../shared/settings.ts";
import { lengthFrom, lengthIn } from "../../shared/units.ts";
import {
  withAlternativeMoved,
  withCopy,
  withoutAlternative,
} from "../../src/document/edits/alternatives.ts";
import {
  cornerFrame,
  nudgeCorner,
  withCornerInserted,
  withoutCorner,
} from "../../src/document/edits/corners.ts";
import { breaksWith } from "../../src/document/edits/reaches.ts";
import {
  changeSetting,
  isOwnFigure,
  isStandard,
  SECTION_GROUPS,
  settingValue,
  withSetting,
} from "../../src/document/edits/settings.ts";
import { bearingOf, flowToward } from "../../src/document/edits/site.ts";
import { plan, startFrom, undo, undoNote } from "../../src/document/store.ts";
import { isOnSpan, spanAround } from "../../src/ui/slider-span.ts";
import { nudgeOfKey } from "../../src/worksheet/line/nudge-pad.tsx";
import { openLine, PLANE, rectangle, ring, structure } from "../helpers/grounds.ts";

const named = (id: string): Alignment => ({ ...ring(rectangle(20, 15)), id, name: id });
const three: Plan = {
  ...EMPTY_PLAN,
  alignments: [named("a"), named("b"), named("c")],
  chosenId: "b",
};
const ids = ({ alignments }: Plan) => alignments.map((each) => each.id).join("");

describe("alternatives", () => {
  it("are lettered like columns: A, Z, AA, AB, AZ, BA", () => {
    expect([0, 25, 26, 27, 51, 52].map(letterOf)).toEqual(["A", "Z", "AA", "AB", "AZ", "BA"]);
  });

  it("a copy stands right after its original, is chosen and is a valid plan", () => {
    const next = withCopy(three, "a", "n");
    expect(ids(next)).toBe("anbc");
    expect(next.chosenId).toBe("n");
    expect(next.alignments[1]!.corners).toBe(next.alignments[0]!.corners);
    expect(validatePlan(next).ok).toBe(true);
  });

  it("when the chosen one goes its neighbour is chosen; when another goes the choice stays", () => {
    expect(withoutAlternative(three, "b")).toMatchObject({ chosenId: "c" });
    expect(withoutAlternative({ ...three, chosenId: "c" }, "c")).toMatchObject({ chosenId: "b" });
    expect(withoutAlternative(three, "a")).toMatchObject({ chosenId: "b" });
    const one = { ...three, alignments: [named("a")], chosenId: "a" };
    expect(withoutAlternative(one, "a")).toMatchObject({ alignments: [], chosenId: null });
  });

  it("move one place, and not past the ends", () => {
    expect(ids(withAlternativeMoved(three, "b", -1))).toBe("bac");
    expect(ids(withAlternativeMoved(three, "b", 1))).toBe("acb");
    expect(withAlternativeMoved(three, "a", -1)).toBe(three);
    expect(withAlternativeMoved(three, "c", 1)).toBe(three);
  });
});

describe("corners", () => {
  it("are inserted in the middle of the leg, a ring's closing leg too, a line's end not", () => {
    const closing = withCornerInserted(ring(rectangle(20, 15)), 3);
    const [x, y] = PLANE.toPlane(closing.corners[4]!);
    expect(x).toBeCloseTo(-20, 3);
    expect(y).toBeCloseTo(0, 3);
    const line = openLine([
      [0, 0],
      [10, 0],
    ]);
    expect(withCornerInserted(line, 1)).toBe(line);
  });

  it("are never deleted below what the line needs", () => {
    const triangle = openLine([
      [0, 0],
      [10, 0],
    ]);
    expect(withoutCorner(triangle, 0)).toBe(triangle);
    expect(withoutCorner(ring(rectangle(20, 15)), 1).corners).toHaveLength(3);
  });

  it("are nudged by metres on the ground; nudges of one gesture are one step of undo", () => {
    const house = structure("House", rectangle(4, 4));
    const alternative = named("a");
    startFrom({ plan: { ...three, structures: [house] } });
    const frame = cornerFrame(plan.value, alternative);
    nudgeCorner(frame, plan.value.alignments[0]!, 2, { eastM: FOOT_M, northM: 0 }, "one");
    nudgeCorner(frame, plan.value.alignments[0]!, 2, { eastM: 0, northM: -2 }, "one");
    const [x, y] = PLANE.toPlane(plan.value.alignments[0]!.corners[2]!);
    expect(x).toBeCloseTo(20 + FOOT_M, 3);
    expect(y).toBeCloseTo(13, 3);
    expect(undoNote.value).toBe("Move corner 3 of a");
    undo();
    expect(plan.value.alignments[0]!.corners).toEqual(alternative.corners);
  });

  it("follow the arrow keys, ten times as far with Shift, and no other key", () => {
    expect(nudgeOfKey({ key: "ArrowLeft", shiftKey: false })).toEqual([-1, 0]);
    expect(nudgeOfKey({ key: "ArrowUp", shiftKey: true })).toEqual([0, 10]);
    expect(nudgeOfKey({ key: "toString", shiftKey: false })).toBeNull();
  });
});

describe("reaches", () => {
  it("are divided inside the line only, in order, not twice at one place", () => {
    expect(breaksWith([30], 10, 100)).toEqual({ ok: true, value: [10, 30] });
    for (const atM of [0, 100, -5, Number.NaN]) {
      expect(breaksWith([30], atM, 100)).toMatchObject({ failure: { code: "reach/outside" } });
    }
    expect(breaksWith([30], 30.2, 100)).toMatchObject({ failure: { code: "reach/taken" } });
  });
});

describe("the flow arrow", () => {
  it("takes a compass direction and gives it back, from the same start", () => {
    const from = PLANE.toLonLat(3, 4);
    for (const bearing of [0, 45, 90, 181, 300]) {
      const flow = flowToward(null, from, bearing);
      expect(flow.from).toBe(from);
      expect(bearingOf(flow)).toBeCloseTo(bearing, 3);
      expect(bearingOf(flowToward(flow, from, 90))).toBeCloseTo(90, 3);
    }
  });
});

describe("settings", () => {
  const lines = SECTION_GROUPS.flatMap((group) => group.lines);

  it("every adjustable figure of section and practice is on the worksheet once", () => {
    const shown = lines.map((line) => line.path).sort();
    const all = (Object.keys(SETTINGS) as SettingPath[]).filter((path) =>
      /^(?:section|practice)\./.test(path),
    );
    expect(shown).toEqual(all.sort());
  });

  it("stand at their defaults in an empty plan, can be changed, and show it", () => {
    for (const { path } of lines) {
      expect(isStandard(EMPTY_PLAN, path)).toBe(!isOwnFigure(path));
      const changed = withSetting(EMPTY_PLAN, path, SETTINGS[path].highSI);
      expect(settingValue(changed, path)).toBe(SETTINGS[path].highSI);
      expect(isStandard(changed, path)).toBe(SETTINGS[path].highSI === SETTINGS[path].defaultSI);
    }
    const next = withSetting(EMPTY_PLAN, "practice.limitM", 1);
    expect(next.practice).toEqual({ ...DEFAULT_PRACTICE, limitM: 1 });
    expect(next.section).toBe(EMPTY_PLAN.section);
  });

  it("what the document refuses leaves the plan as it was, with the reason", () => {
    startFrom({ plan: three });
    const outcome = changeSetting("practice.limitM", "Height limit", -1);
    expect(outcome.ok).toBe(false);
    expect(plan.value).toEqual(three);
  });
});

describe("the stage slider", () => {
  it("spans whole units round its value", () => {
    expect(spanAround([31.4], 3)).toEqual({ least: 28, most: 35 });
    expect(spanAround([9.45], 1)).toEqual({ least: 8, most: 11 });
  });

  it.each(["us", "metric"] as const)(
    "keeps its %s scale when it is dragged to either end",
    (system) => {
      const reach = system === "us" ? 3 : 1;
      for (let stage = 1; stage <= 60; stage++) {
        const span = spanAround([stage], reach);
        for (const end of [span.least, span.most]) {
          const kept = lengthIn(lengthFrom(end, system), system);
          expect(isOnSpan(kept, span)).toBe(true);
          expect(spanAround([kept], reach)).toEqual(spanAround([end], reach));
        }
      }
    },
  );

  it("makes a new scale for a figure off it", () => {
    expect(isOnSpan(27.95, spanAround([31], 3))).toBe(false);
    expect(isOnSpan(34.05, spanAround([31], 3))).toBe(false);
  });
});

import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Alignment, LonLat, Plan } from "../../shared/plan.ts";
import {
  apply,
  endGesture,
  history,
  MAX_STEPS,
  plan,
  redo,
  redoNote,
  replacePlan,
  startFrom,
  undo,
  undoNote,
} from "../../src/document/store.ts";
import { anyPlan, nudged } from "../helpers/arbitrary-plan.ts";

const CORNERS: readonly LonLat[] = [
  [12.1, 51.1],
  [12.101, 51.1],
  [12.101, 51.101],
];

function ring(id: string): Alignment {
  return { id, name: id.toUpperCase(), kind: "ring", corners: CORNERS, reachBreaksM: [] };
}

const START: Plan = { ...EMPTY_PLAN, alignments: [ring("a"), ring("b")], chosenId: "a" };

function moveCorner(id: string, steps: number, gesture?: string) {
  const moved = (line: Alignment) => ({
    ...line,
    corners: line.corners.map((at, index) => (index === 0 ? nudged(at, steps) : at)),
  });
  return apply({
    note: `Move corner 1 of ${id}`,
    gesture,
    change: (now) => ({
      ...now,
      alignments: now.alignments.map((line) => (line.id === id ? moved(line) : line)),
    }),
  });
}

const setTitle = (title: string) =>
  apply({ note: `Title ${title}`, change: (now) => ({ ...now, title }) });
const choose = (chosenId: string | null) =>
  apply({ note: "Choose", change: (now) => ({ ...now, chosenId }) });

beforeEach(() => {
  startFrom({ plan: START });
});

describe("undo and redo", () => {
  it("name their steps and give back the identical plans", () => {
    const start = plan.value;
    setTitle("One");
    const one = plan.value;
    moveCorner("a", 5);
    const two = plan.value;
    expect([undoNote.value, redoNote.value]).toEqual(["Move corner 1 of a", null]);
    undo();
    expect(plan.value).toBe(one);
    expect([undoNote.value, redoNote.value]).toEqual(["Title One", "Move corner 1 of a"]);
    undo();
    expect(plan.value).toBe(start);
    expect(undoNote.value).toBeNull();
    redo();
    redo();
    expect(plan.value).toBe(two);
    expect(redoNote.value).toBeNull();
  });

  it("do nothing at either end", () => {
    const before = history.value;
    undo();
    redo();
    expect(history.value).toBe(before);
  });

  it("make a new edit the end of what can be done again", () => {
    setTitle("One");
    undo();
    setTitle("Two");
    expect(redoNote.value).toBeNull();
    redo();
    expect(plan.value.title).toBe("Two");
  });

  it("take back any row of edits and gestures to the identical plan, and do it again", () => {
    const edit = fc.oneof(
      fc.record({ id: fc.constantFrom("a", "b"), steps: fc.integer({ min: -9, max: 9 }) }),
      fc.record({ title: fc.constantFrom("x", "y", "z") }),
      fc.record({ whole: anyPlan }),
      fc.constant("end" as const),
      fc.constant("undo" as const),
    );
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 25 }), (edits) => {
        startFrom({ plan: START });
        const start = plan.value;
        for (const each of edits) {
          if (each === "end") endGesture();
          else if (each === "undo") undo();
          else if ("title" in each) setTitle(each.title);
          else if ("whole" in each) replacePlan(each.whole, "Open");
          else moveCorner(each.id, each.steps, "drag");
        }
        while (redoNote.value !== null) redo();
        const end = plan.value;
        while (undoNote.value !== null) undo();
        expect(plan.value).toBe(start);
        while (redoNote.value !== null) redo();
        expect(plan.value).toBe(end);
      }),
      { numRuns: 100, seed: 46 },
    );
  });

  it("are bounded", () => {
    for (let i = 0; i < MAX_STEPS + 25; i++) setTitle(`Title ${i}`);
    expect(history.value.done.length).toBe(MAX_STEPS);
    for (let i = 0; i < MAX_STEPS + 25; i++) undo();
    expect(plan.value.title).toBe("Title 24");
  });
});

describe("a gesture", () => {
  it("is one step, from before its first edit to after its last", () => {
    const start = plan.value;
    for (const steps of [1, 2, 3, 4]) moveCorner("a", steps, "drag 1");
    expect(history.value.done.length).toBe(1);
    const end = plan.value;
    undo();
    expect(plan.value).toBe(start);
    redo();
    expect(plan.value).toBe(end);
  });

  it("ends with another gesture, an edit without one, endGesture, undo, redo or another plan", () => {
    const enders = [
      () => moveCorner("b", 1, "drag 2"),
      () => setTitle("Between"),
      endGesture,
      undo,
      () => {
        setTitle("There and back");
        undo();
        redo();
      },
      () => replacePlan({ ...plan.value, title: "Opened" }, "Open"),
    ];
    for (const end of enders) {
      startFrom({ plan: START });
      moveCorner("a", 1, "drag");
      end();
      const before = history.value.done.length;
      moveCorner("a", 1, "drag");
      expect(history.value.done.length).toBe(before + 1);
    }
  });

  it("goes on past an edit that is refused", () => {
    moveCorner("a", 1, "drag");
    expect(moveCorner("a", Number.NaN, "drag").ok).toBe(false);
    moveCorner("a", 1, "drag");
    expect(history.value.done.length).toBe(1);
  });
});

describe("choosing an alternative", () => {
  it("alone is no step and leaves redo as it is", () => {
    setTitle("One");
    undo();
    choose("b");
    expect(plan.value.chosenId).toBe("b");
    expect([undoNote.value, redoNote.value]).toEqual([null, "Title One"]);
  });

  it("stays through undo and redo of other things", () => {
    setTitle("One");
    choose("b");
    undo();
    expect(plan.value).toEqual({ ...START, chosenId: "b" });
    redo();
    expect(plan.value).toEqual({ ...START, title: "One", chosenId: "b" });
  });

  it("as part of an edit is taken back with it", () => {
    apply({
      note: "Add C",
      change: (now) => ({ ...now, alignments: [...now.alignments, ring("c")], chosenId: "c" }),
    });
    undo();
    expect(plan.value.chosenId).toBe("a");
    redo();
    expect(plan.value.chosenId).toBe("c");
  });

  it("gives way when undo takes the chosen one away", () => {
    apply({
      note: "Add C",
      change: (now) => ({ ...now, alignments: [...now.alignments, ring("c")] }),
    });
    choose("c");
    undo();
    expect(plan.value).toEqual(START);
  });
});

describe("opening another plan", () => {
  it("is one step that can be taken back", () => {
    const start = plan.value;
    const next = { ...EMPTY_PLAN, title: "Other" };
    expect(replacePlan(next, "Open other.geojson").ok).toBe(true);
    expect([plan.value, undoNote.value]).toEqual([next, "Open other.geojson"]);
    undo();
    expect(plan.value).toBe(start);
  });

  it("that is not valid changes nothing", () => {
    const before = history.value;
    expect(replacePlan({ ...EMPTY_PLAN, title: "" }, "Open").ok).toBe(false);
    expect(startFrom({ plan: { ...EMPTY_PLAN, title: "" } }).ok).toBe(false);
    expect(history.value).toBe(before);
  });
});

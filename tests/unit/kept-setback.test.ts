import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { foundAlternatives } from "../../shared/found-alternative.ts";
import { withCorners } from "../../shared/pins.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import type { FoundLine } from "../../shared/search-types.ts";
import { withCopy } from "../../src/document/edits/alternatives.ts";
import { withoutSetback } from "../../src/worksheet/line/own-setback.tsx";
import { messageOf } from "../helpers/check-text.ts";
import { flat, planWith, rectangle, ring, size, structure } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

/** 2 ft high: the toe is about 2.5 ft inside the line, 4.8 ft from the house. */
const LINE = ring(rectangle(8.25, 7.25));
const HOUSE = structure("House", rectangle(6, 5));
const plan = (setbackFt: number): Plan =>
  planWith(100 + FOOT_M, {
    structures: [HOUSE],
    practice: { raiseM: 0, setbackM: setbackFt * FOOT_M },
  });
const kept = (setbackFt: number): Alignment => ({ ...LINE, setbackM: setbackFt * FOOT_M });
const checksOf = (of: Plan, line: Alignment, id: string) =>
  size(of, line, flat(100), true).checks.filter((check) => check.id === id);

describe("a line that was made with a setback", () => {
  it("is checked against that, a drawn line against the plan's", () => {
    expect(checksOf(plan(8), LINE, "setback")).not.toEqual([]);
    expect(checksOf(plan(8), kept(3), "setback")).toEqual([]);
    expect(checksOf(plan(3), kept(8), "setback")).not.toEqual([]);
    expect(checksOf(plan(3), LINE, "setback")).toEqual([]);
  });

  it("says that the plan's setting is another by now, a caution where it asks for more", () => {
    expect(checksOf(plan(3), kept(3), "kept-setback")).toEqual([]);
    expect(checksOf(plan(8), LINE, "kept-setback")).toEqual([]);
    const [more] = checksOf(plan(8), kept(3), "kept-setback");
    expect(more).toMatchObject({ severity: "caution" });
    expect(messageOf(more)).toContain("setback of 3.0 ft");
    expect(messageOf(more)).toContain("now 8.0 ft");
    expect(checksOf(plan(3), kept(8), "kept-setback")).toMatchObject([{ severity: "note" }]);
  });

  it("goes by the plan's again when it is told to", () => {
    expect(withoutSetback(kept(3))).toEqual(LINE);
  });

  it("keeps it through edits and copies, and in the plan file", () => {
    const line = kept(3);
    const moved = withCorners(line, line.corners.slice(1));
    expect(moved.setbackM).toBe(3 * FOOT_M);
    const of = withCopy({ ...plan(8), alignments: [line, OTHER] }, "a", "copy");
    expect(of.alignments.map(({ setbackM }) => setbackM)).toEqual([
      3 * FOOT_M,
      3 * FOOT_M,
      undefined,
    ]);
    const read = readPlanFile(writePlanFile(of));
    expect(read.ok && read.value.plan.alignments.map(({ setbackM }) => setbackM)).toEqual(
      of.alignments.map(({ setbackM }) => setbackM),
    );
  });

  it("is refused with a setback that the setting could not have", () => {
    for (const setbackM of [-1, 1000, "8", Number.NaN]) {
      const alignments = [{ ...LINE, setbackM }];
      const outcome = validatePlan({ ...plan(8), alignments });
      expect(outcome.ok).toBe(false);
      if (!outcome.ok) expect(said(outcome.failure).message).toMatch(/setback of the line/);
    }
  });

  it("is what a found line becomes", () => {
    const { kind, corners } = LINE;
    const found = { kind, corners, encloses: ["House"], setbackM: 1.5 } as unknown as FoundLine;
    expect(foundAlternatives(plan(8), [found])[0]!.setbackM).toBe(1.5);
  });
});

const OTHER: Alignment = { ...LINE, id: "b", name: "B" };

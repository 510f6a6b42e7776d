import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { pinsOf, withCorners, withPin } from "../../shared/pins.ts";
import type { Alignment, LonLat, Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { withCornerInserted, withoutCorner } from "../../src/document/edits/corners.ts";
import { said } from "../helpers/said.ts";

const CORNERS: readonly LonLat[] = [
  [12, 51],
  [12.001, 51],
  [12.001, 51.001],
  [12.0005, 51.0015],
  [12, 51.001],
];

function ring(pinned?: readonly number[]): Alignment {
  const plain = { id: "a", name: "A", kind: "ring" as const, corners: CORNERS, reachBreaksM: [] };
  return pinned ? { ...plain, pinned } : plain;
}

function planOf(alignment: Alignment): Plan {
  return { ...EMPTY_PLAN, alignments: [alignment], chosenId: "a" };
}

/** Places of the pinned corners. */
function places(alignment: Alignment): readonly LonLat[] {
  return pinsOf(alignment).map((k) => alignment.corners[k]!);
}

describe("pinned corners", () => {
  it("are set and taken out in rising order, and are left out of the plan when there are none", () => {
    const both = withPin(withPin(ring(), 3, true), 1, true);
    expect(both.pinned).toEqual([1, 3]);
    expect(withPin(both, 3, true).pinned).toEqual([1, 3]);
    const none = withPin(withPin(both, 1, false), 3, false);
    expect(none).toStrictEqual(ring());
  });

  it("stay on their corners when corners are put in and taken out anywhere", () => {
    const pins = fc.uniqueArray(fc.nat(4)).map((found) => found.sort((a, b) => a - b));
    fc.assert(
      fc.property(pins, fc.nat(4), (pinned, at) => {
        const before = ring(pinned);
        expect(places(withCornerInserted(before, at))).toEqual(places(before));
        const kept = places(before).filter((place) => place !== CORNERS[at]);
        expect(places(withoutCorner(before, at))).toEqual(kept);
      }),
      { seed: 3 },
    );
  });

  it("move with their corner", () => {
    const moved = CORNERS.map((at, k): LonLat => (k === 2 ? [12.002, 51.002] : at));
    expect(places(withCorners(ring([2, 4]), moved))).toEqual([[12.002, 51.002], CORNERS[4]]);
  });

  it("come back from a plan file in either turn of a ring, and past-the-end ones count for nothing", () => {
    for (const corners of [CORNERS, [...CORNERS].reverse()]) {
      const plan = planOf({ ...ring([0, 3]), corners });
      const read = readPlanFile(writePlanFile(plan));
      expect(read.ok && read.value.plan).toStrictEqual(plan);
    }
    expect(pinsOf(ring([1, 9]))).toEqual([1]);
  });

  it.each([[["1"]], [[1, 1]], [[2, 1]], [[-1]], [[0.5]], ["1"], [{}], [[Number.NaN]]])(
    "are refused as %j",
    (pinned) => {
      const outcome = validatePlan(planOf({ ...ring(), pinned: pinned as never }));
      expect(outcome).toMatchObject({ ok: false, failure: { code: "plan/invalid" } });
      expect(!outcome.ok && said(outcome.failure).message).toContain("pinned");
    },
  );
});

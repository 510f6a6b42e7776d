import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_TIME } from "../../shared/defaults.ts";
import type { Plan } from "../../shared/plan.ts";
import { levelDoubts } from "../../shared/words/level-doubts.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { messageOf } from "../helpers/check-text.ts";
import { flat, groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const RING = ring(rectangle(20, 15));
const FORECAST = {
  levels: "elevation",
  note: "",
  rows: [99, 100.6, 99].map((levelM, k) => ({
    ...{ at: `2026-04-0${3 + k}T08:00-05:00`, levelM, lowM: null, highM: null },
  })),
} as const;

/** A plan with people, shifts, start and forecast of its own, so that a verdict on time is due. */
function timed(plan: Plan): Plan {
  const startAt = "2026-04-03T08:00-05:00";
  const practice = { ...plan.practice, people: 60 };
  return { ...plan, practice, time: { ...DEFAULT_TIME, forecast: FORECAST, startAt, shifts: 2 } };
}

function sizedOn(groundM: number, plan: Plan) {
  const line = size(timed(plan), RING, flat(groundM));
  return {
    ...line,
    doubt: line.levelDoubt,
    check: line.checks.find((c) => c.id === "water-level"),
  };
}

const at = (waterM: number) => planWith(waterM);

describe("water and ground that belong together", () => {
  it("are in no doubt, and the time has its verdict", () => {
    const { doubt, time, check } = sizedOn(100, at(100.6));
    expect(doubt).toBeNull();
    expect(check).toBeUndefined();
    expect(time!.inTime).not.toBeNull();
  });

  it("are in no doubt where a tied-in line runs up to ground above the water", () => {
    const line = size(
      at(100.6),
      RING,
      groundOf((x) => 100.6 + 0.01 * x),
    );
    expect(line.levelDoubt).toBeNull();
  });
});

describe("a line with no ground below the water", () => {
  it("must be fixed where nothing is built: its 0 bags are no answer and there is no verdict on time", () => {
    const { doubt, time, check, totals } = sizedOn(101, at(100.6));
    expect(totals.bags).toBe(0);
    expect(doubt).toMatchObject({ kind: "none-below", countsUnknown: true, waterM: 100.6 });
    expect(doubt!.apartM).toBeCloseTo(0.4, 9);
    expect(doubt!.causes).toContain("datum");
    expect(time).toMatchObject({ inTime: null, verdicts: [], waysOut: null });
    expect(check).toMatchObject({ severity: "stop" });
    expect(messageOf(check)).toMatch(/^No ground on this line is below the sized-for water: /);
    expect(messageOf(check)).toContain("331.36 ft");
  });

  it("counts freeboard alone, with a caution and no verdict on time, where it is within the freeboard", () => {
    const { doubt, time, check, totals } = sizedOn(100.7, at(100.6));
    expect(totals.bags).toBeGreaterThan(0);
    expect(doubt).toMatchObject({ kind: "none-below", countsUnknown: false });
    expect(time!.inTime).toBeNull();
    expect(check).toMatchObject({ severity: "caution" });
  });
});

describe("water far from all ground of a line", () => {
  it("above it: meters read as feet, the unit first", () => {
    const { doubt, time, check } = sizedOn(264 * FOOT_M, at(266.4));
    expect(doubt).toMatchObject({ kind: "far-above", countsUnknown: true });
    expect(doubt!.causes[0]).toBe("unit");
    expect(time!.inTime).toBeNull();
    expect(check).toMatchObject({ severity: "stop" });
  });

  it("below it: feet read as meters, the unit first", () => {
    const { doubt } = sizedOn(868, at(266.4));
    expect(doubt).toMatchObject({ kind: "far-below", countsUnknown: true });
    expect(doubt!.causes[0]).toBe("unit");
  });

  it("below it: a stage typed as an elevation, and a stage on a gauge zero of 0", () => {
    expect(sizedOn(262, at(9.4)).doubt!.causes[0]).toBe("stage-as-elevation");
    const byStage = planWith(0, { water: { by: "stage", stageM: 9.4 } });
    expect(sizedOn(262, byStage).doubt!.causes[0]).toBe("no-gauge-zero");
  });

  it("is nothing to speak of where no ground is known", () => {
    expect(sizedOn(Number.NaN, at(100)).doubt).toBeNull();
  });
});

it("the terminal says it in a sentence for each line, with what to check first", () => {
  expect(levelDoubts([sizedOn(868, at(266.4)), sizedOn(100, at(100.6))], unitsOf("us"))).toEqual([
    expect.stringMatching(/^"A": No ground on this line .* by at least .* Check first the unit/),
  ]);
});

import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { Plan } from "../../shared/plan.ts";
import { messageOf, remedyOf } from "../helpers/check-text.ts";
import { type Corner, flat, groundOf, openLine, planWith, size } from "../helpers/grounds.ts";

const LONG = openLine([
  [0, 0],
  [600, 0],
]);
/** Ground of 101 m with a pit of `bottomM` and 3 m in every 50 m, `count` of them, one deeper than all others. */
const pitted = (count: number, bottomM: number, deepestM: number): GroundSampler =>
  groundOf((x) => {
    const pit = Math.floor(x / 50);
    const inside = Math.abs(x - 50 * pit - 25) < 1.5 && pit < count;
    return inside ? (pit === 1 ? deepestM : bottomM) : 101;
  });

function found(id: string, plan: Plan, ground: GroundSampler, live = true) {
  return size(plan, LONG, ground, live).checks.filter((check) => check.id === id);
}

describe("what one rule says of many places", () => {
  const plan = planWith(101.2, { practice: { raiseM: 0 } });

  it("is told one by one up to five places", () => {
    expect(found("over-limit", plan, pitted(5, 100, 99.8))).toHaveLength(5);
  });

  it("is told of the worst three and of the others in one, with their number and whole length", () => {
    const ground = pitted(9, 100, 99.8);
    const checks = found("over-limit", plan, ground);
    expect(checks).toHaveLength(4);
    const [together, ...more] = checks.filter((check) =>
      messageOf(check).includes("more stretches"),
    );
    expect(more).toEqual([]);
    expect(messageOf(together)).toMatch(/in 6 more stretches, the worst \d/);
    const alone = checks.filter((check) => check !== together);
    expect(alone.some((check) => check.fromM > 73 && check.toM < 77)).toBe(true);
    const { lengthOverLimitM } = size(plan, LONG, ground, true).totals;
    const over = checks.map(({ finding }) => finding as { readonly lengthM: number });
    const inChecksM = over.reduce((sum, { lengthM }) => sum + lengthM, 0);
    expect(inChecksM).toBeCloseTo(lengthOverLimitM, 6);
    expect(lengthOverLimitM).toBeGreaterThan(0);
  });

  it.each(["narrow-low", "cross-slope", "sliding"])("holds for %s", (id) => {
    const shallow = planWith(101.2, {
      practice: { raiseM: 0 },
      section: { baseRatio: 2 },
    });
    const side = (y: number) => (id === "cross-slope" ? 0.4 * y : 0);
    const pits = pitted(9, 100.2, 100.1);
    const ground = groundOf((x, y) => {
      const m = pits.heightAt(x, y);
      return m < 101 ? m + side(y) : m;
    });
    const checks = found(id, shallow, ground, false);
    expect(checks).toHaveLength(4);
    const together = checks.filter((check) =>
      /6 more (stretches|low places)/.test(messageOf(check)),
    );
    expect(together).toHaveLength(1);
  });

  it("crossing: a corner on another leg is one meeting, though two legs end there", () => {
    const touching: Corner[] = [
      [0, 0],
      [40, 0],
      [40, 20],
      [20, 0],
      [0, 20],
    ];
    const { checks } = size(planWith(100), openLine(touching), flat(100), true);
    expect(checks.filter((check) => check.id === "crosses-itself")).toHaveLength(1);
  });
});

describe("a height that no emergency levee has", () => {
  it("is one stop that doubts the data first, above 30 ft and not below", () => {
    const plan = planWith(101.2, { practice: { raiseM: 0 } });
    const checks = found("over-limit", plan, pitted(9, 100, 101.2 + FOOT_M - 9.2));
    expect(checks).toMatchObject([{ severity: "stop" }]);
    expect(messageOf(checks[0])).toContain("9 stretches, the worst");
    expect(remedyOf(checks[0])).toMatch(/missing-data value.*unit.*datum/);
    expect(checks[0]!.fromM).toBeGreaterThan(70);
    expect(checks[0]!.toM).toBeLessThan(80);
    const high = found("over-limit", plan, pitted(9, 100, 101.2 + FOOT_M - 9.1));
    expect(high).toHaveLength(4);
    expect(remedyOf(high[0])).toMatch(/^Lead the line over higher ground/);
  });
});

describe("a stretch that a check speaks of", () => {
  it("ends half a step beyond its samples, so that it is as long as the totals say", () => {
    const plan = planWith(101.2, { practice: { raiseM: 0 } });
    const ground = pitted(1, 100, 100);
    const line = size(plan, LONG, ground, true);
    const [check] = line.checks.filter(({ id }) => id === "over-limit");
    expect(check!.toM - check!.fromM).toBeGreaterThan(line.totals.lengthOverLimitM - line.stepM);
    expect(check!.toM - check!.fromM).toBeCloseTo(3, 6);
  });
});

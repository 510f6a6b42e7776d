import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import type { Alignment } from "../../shared/plan.ts";
import { messageOf } from "../helpers/check-text.ts";
import {
  type Corner,
  flat,
  openLine,
  planWith,
  rectangle,
  ring,
  size,
} from "../helpers/grounds.ts";

/** 3 ft high on level ground: a base 9 ft (2.74 m) wide. */
const PLAN = planWith(100 + 2 * FOOT_M, { practice: { raiseM: 0 } });
const BASE_M = 9 * FOOT_M;

function found(alignment: Alignment, plan = PLAN) {
  const { checks } = size(plan, alignment, flat(100), true);
  return checks.filter((check) => check.id === "bases-overlap");
}

/** There and back, `apartM` between the legs. */
const thereAndBack = (apartM: number): Corner[] => [
  [0, 0],
  [40, 0],
  [40, apartM],
  [0, apartM],
];

describe("bases of two parts of one line", () => {
  it("share ground where legs run back 1 m apart: all of the later leg but its start", () => {
    const [check, ...more] = found(openLine(thereAndBack(1)));
    expect(more).toEqual([]);
    expect(check).toMatchObject({ severity: "caution", at: expect.anything() });
    expect(check!.fromM).toBeGreaterThan(41);
    expect(check!.fromM).toBeLessThan(41 + (3 * BASE_M) / 2);
    expect(check!.toM).toBeCloseTo(81, 6);
    expect(messageOf(check)).toMatch(/counted twice/);
  });

  it("share ground up to the width of a base between the legs, and no farther", () => {
    expect(found(openLine(thereAndBack(BASE_M - 0.1)))).toHaveLength(1);
    expect(found(openLine(thereAndBack(BASE_M + 0.01)))).toEqual([]);
  });

  it("share ground whichever way the line is walked, and in a ring as in a line", () => {
    const pinched: Corner[] = [
      [-30, -15],
      [30, -15],
      [30, 15],
      [1, 15],
      [1, -8],
      [-1, -8],
      [-1, 15],
      [-30, 15],
    ];
    const forth = found(ring(pinched));
    const back = found(ring([...pinched].reverse()));
    expect([forth.length, back.length]).toEqual([1, 1]);
    const lengthOf = ([check]: typeof forth) => check!.toM - check!.fromM;
    expect(lengthOf(forth)).toBeGreaterThan(15);
    expect(lengthOf(back)).toBeCloseTo(lengthOf(forth), 6);
  });

  it("share ground where an end runs against another leg", () => {
    const hook: Corner[] = [
      [0, 0],
      [40, 0],
      [40, 20],
      [20, 20],
      [20, 1],
    ];
    expect(found(openLine(hook))).toHaveLength(1);
  });

  it("share ground in a tight hairpin", () => {
    const hairpin: Corner[] = [
      [0, 0],
      [40, 0],
      [0, 8],
    ];
    expect(found(openLine(hairpin))).toHaveLength(1);
  });

  const round = Array.from({ length: 400 }, (_, i): Corner => {
    const angle = (2 * Math.PI * i) / 400;
    return [8 * Math.cos(angle), 8 * Math.sin(angle)];
  });
  const jog: Corner[] = [
    [0, 0],
    [20, 0],
    [20, 1],
    [40, 1],
  ];
  const sharp: Corner[] = [
    [0, 0],
    [40, 0],
    [10, 30],
  ];
  it.each([
    ["a rectangle", ring(rectangle(20, 15))],
    ["a triangle of 45 degrees", ring(sharp)],
    ["a narrow round", ring(round)],
    ["a jog of 1 m", openLine(jog)],
  ])("are alone in %s", (_, alignment) => {
    expect(found(alignment)).toEqual([]);
  });

  it("are alone where nothing is built", () => {
    expect(found(openLine(thereAndBack(1)), planWith(90))).toEqual([]);
  });
});

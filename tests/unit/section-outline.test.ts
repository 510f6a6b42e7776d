import { describe, expect, it } from "vitest";
import type { SectionPart } from "../../shared/sections/types.ts";
import { bandOf, faceAt, insideAt } from "../../src/drawing/section/section-outline.ts";
import { seeded } from "../helpers/profile-fixture.ts";

function part(points: readonly (readonly [number, number])[]): SectionPart {
  return { material: "earth", outlineM: Float64Array.from(points.flat()) };
}

/** Twice the area by the shoelace formula, the right way round whichever way the outline runs. */
function area(points: readonly (readonly [number, number])[]): number {
  const sum = points.reduce((total, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    return total + x * nextY - nextX * y;
  }, 0);
  return Math.abs(sum) / 2;
}

/* A levee 2 m high, crown 1 m, sides 1:2 and 1:3, on level ground at 100 m. */
const levee = part([
  [-6.5, 100],
  [4.5, 100],
  [0.5, 102],
  [-0.5, 102],
]);
/* The same over an earlier levee, which is left out of it. */
const raised = part([
  [-6.5, 100],
  [-3, 100],
  [0, 101],
  [3, 100],
  [4.5, 100],
  [0.5, 102],
  [-0.5, 102],
]);

describe("the outline of a section", () => {
  it("is as wide at an elevation as its sides say", () => {
    expect(insideAt(levee, 101)).toEqual([{ fromM: -3.5, toM: 2.5 }]);
    expect(insideAt(levee, 99)).toEqual([]);
    expect(faceAt([levee], 101, 1)).toBe(2.5);
    expect(faceAt([levee], 101, -1)).toBe(3.5);
    expect(faceAt([levee], 103, 1)).toBeNull();
  });

  it("has two stretches where it lies on both sides of what stood before", () => {
    expect(insideAt(raised, 100.5)).toEqual([
      { fromM: -5, toM: -1.5 },
      { fromM: 1.5, toM: 3.5 },
    ]);
  });

  it("gives its bands by height, whose areas add up to the whole", () => {
    expect(area(bandOf(levee, -Infinity, 101))).toBeCloseTo((11 + 6) / 2, 12);
    expect(area(bandOf(levee, 101, Infinity))).toBeCloseTo((6 + 1) / 2, 12);
    const random = seeded(5);
    for (let turn = 0; turn < 50; turn++) {
      const cut = 100 + 2 * random();
      const [lower, upper] = [bandOf(raised, -Infinity, cut), bandOf(raised, cut, Infinity)];
      const whole = area(
        [...Array(7).keys()].map((i): [number, number] => [
          raised.outlineM[2 * i]!,
          raised.outlineM[2 * i + 1]!,
        ]),
      );
      expect(area(lower) + area(upper)).toBeCloseTo(whole, 9);
    }
    expect(bandOf(levee, 103, Infinity)).toEqual([]);
  });
});

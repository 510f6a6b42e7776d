import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { turnsOf } from "../../shared/turns.ts";

const row = (...heights: number[]) => Float64Array.from(heights);
const words = (heights: Float64Array, prominence: number, closed = false) =>
  turnsOf(heights, prominence, closed).map(({ index, kind }) => `${kind} ${index}`);

describe("where the ground turns", () => {
  it("finds highs and lows that stand out, and no ends of an open row", () => {
    expect(words(row(0, 1, 0, 1, 0), 0.1)).toEqual(["high 1", "low 2", "high 3"]);
    expect(words(row(0, 1, 2, 3), 0.1)).toEqual([]);
    expect(words(row(3, 1, 2), 0.1)).toEqual(["low 1"]);
    expect(words(row(1, 0, 0.15, -1), 0.1)).toEqual(["low 1", "high 2"]);
    expect(words(row(-1, 0.15, 0, 1), 0.1)).toEqual(["high 1", "low 2"]);
  });

  it("passes over wiggles within the prominence", () => {
    expect(words(row(0, 0.09, 0, 0.09, 0), 0.1)).toEqual([]);
    expect(words(row(0, 1, 0.95, 1.02, 0), 0.1)).toEqual(["high 3"]);
    expect(words(row(0, 0.1, 0), 0.1)).toEqual([]);
  });

  it("goes round a closed row without regard to where it starts", () => {
    const heights = [0, 1, 0.2, 0.9, 0.1, -0.05];
    for (let shift = 0; shift < heights.length; shift++) {
      const turned = heights.map((_, i) => heights[(i + shift) % heights.length]!);
      const found = turnsOf(row(...turned, turned[0]!), 0.1, true);
      const back = found.map(({ index, kind }) => `${kind} ${(index + shift) % heights.length}`);
      expect(back.sort()).toEqual(["high 1", "high 3", "low 2", "low 5"]);
    }
  });

  it("does not look across a gap", () => {
    const gap = Number.NaN;
    expect(words(row(2, 1, gap, 2, 1, 2), 0.1)).toEqual(["low 4"]);
    expect(words(row(1, 0, gap, 2, 1.5, 1), 0.1, true)).toEqual([]);
    expect(words(row(0, 1, gap, 2, 1, 0), 0.1, true)).toEqual(["low 0"]);
    expect(words(row(gap, gap), 0.1, true)).toEqual([]);
  });

  it("alternates and stands out on both sides, on any row", () => {
    const heights = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 60 });
    fc.assert(
      fc.property(heights, (list) => {
        const values = row(...list.map((n) => n / 20));
        const found = turnsOf(values, 0.1, false);
        for (let i = 1; i < found.length; i++) {
          expect(found[i]!.kind).not.toBe(found[i - 1]!.kind);
          const step = Math.abs(values[found[i]!.index]! - values[found[i - 1]!.index]!);
          expect(step).toBeGreaterThan(0.1);
        }
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});

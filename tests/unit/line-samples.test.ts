import { describe, expect, it } from "vitest";
import { cornerChainages, layLine, placeAt } from "../../shared/alignment.ts";
import { Refusal } from "../../shared/failure.ts";
import { breaksInside, sampleLine, samplesLonLat } from "../../shared/line-samples.ts";
import type { Alignment } from "../../shared/plan.ts";
import { type Corner, openLine, PLANE, rectangle, ring } from "../helpers/grounds.ts";

const laid = (alignment: Alignment) => layLine(alignment, PLANE);
const walk = (alignment: Alignment, stepM = 0.5, breaksM: readonly number[] = []) =>
  sampleLine(laid(alignment), breaksM, stepM, () => 10, 0.3);

function refusalOf(work: () => unknown): Refusal {
  try {
    work();
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown;
  }
  throw new Error("no refusal");
}

describe("a line laid on the plan plane", () => {
  it("has a leg back to the first corner only when it is a ring", () => {
    expect(laid(ring(rectangle(10, 5))).lengthM).toBeCloseTo(60, 6);
    expect(laid(openLine(rectangle(10, 5))).lengthM).toBeCloseTo(50, 6);
    expect(cornerChainages(laid(ring(rectangle(10, 5)))).map(Math.round)).toEqual([0, 20, 30, 50]);
    expect(cornerChainages(laid(openLine(rectangle(10, 5)))).map(Math.round)).toEqual([
      0, 20, 30, 50,
    ]);
  });

  it("gives the place at a chainage, with the left on the left", () => {
    const place = placeAt(
      laid(
        openLine([
          [0, 0],
          [10, 0],
          [10, 10],
        ]),
      ),
      4,
    );
    expect([place.xM, place.yM, place.leftX, place.leftY]).toEqual([
      expect.closeTo(4, 6),
      expect.closeTo(0, 6),
      expect.closeTo(0, 6),
      expect.closeTo(1, 6),
    ]);
  });

  it("puts a corner on the leg that leaves it, the end on the last leg, and stays inside", () => {
    const line = laid(
      openLine([
        [0, 0],
        [10, 0],
        [10, 10],
      ]),
    );
    expect(placeAt(line, line.chainageM[1]!).leg).toBe(1);
    expect(placeAt(line, line.lengthM).leg).toBe(1);
    expect(placeAt(line, 999).yM).toBeCloseTo(10, 6);
    expect(placeAt(line, -5).xM).toBeCloseTo(0, 6);
  });

  it("passes over legs without length", () => {
    const line = laid(
      openLine([
        [0, 0],
        [5, 0],
        [5, 0],
        [9, 0],
        [9, 0],
      ]),
    );
    expect(line.lengthM).toBeCloseTo(9, 6);
    expect(placeAt(line, line.lengthM).leftY).toBeCloseTo(1, 9);
    expect(placeAt(line, line.chainageM[1]!).leftY).toBeCloseTo(1, 9);
    const samples = sampleLine(line, [], 0.5, () => 0, 0);
    expect(Array.from(samples.leftNormal).some(Number.isNaN)).toBe(false);
  });

  it("refuses too few corners and lines without length, by name", () => {
    const short = refusalOf(() =>
      laid(
        ring([
          [0, 0],
          [5, 5],
        ]),
      ),
    );
    expect([short.code, short.message]).toEqual([
      "line/too-few-corners",
      expect.stringContaining('"A"'),
    ]);
    expect(refusalOf(() => laid(openLine([[1, 1]]))).code).toBe("line/too-few-corners");
    expect(
      refusalOf(() =>
        laid(
          openLine([
            [1, 1],
            [1, 1],
          ]),
        ),
      ).code,
    ).toBe("line/no-length");
  });
});

describe("the walk", () => {
  const corners: Corner[] = [
    [0, 0],
    [10.3, 0],
    [12, 7.77],
    [-3, 9],
  ];

  it("hits every corner exactly, twice, with each leg's own left", () => {
    const line = laid(ring(corners));
    const samples = walk(ring(corners));
    for (const chainageM of cornerChainages(line).slice(1)) {
      const at = Array.from(samples.chainageM).flatMap((m, i) => (m === chainageM ? [i] : []));
      expect(at).toHaveLength(2);
      expect(samples.leg[at[1]!]).toBe(samples.leg[at[0]!]! + 1);
      expect(samples.xM[at[0]!]).toBeCloseTo(samples.xM[at[1]!]!, 9);
      expect(samples.leftNormal[2 * at[0]!]).not.toBeCloseTo(samples.leftNormal[2 * at[1]!]!, 3);
    }
    expect(samples.chainageM[0]).toBe(0);
    expect(samples.chainageM[samples.count - 1]).toBe(line.lengthM);
    expect(samples.xM[samples.count - 1]).toBeCloseTo(0, 9);
  });

  it.each([0.5, 0.13, 3])("never steps further than %s m, and never back", (stepM) => {
    const samples = walk(ring(corners), stepM);
    for (let i = 1; i < samples.count; i++) {
      const step = samples.chainageM[i]! - samples.chainageM[i - 1]!;
      expect(step).toBeLessThanOrEqual(stepM + 1e-9);
      expect(step).toBeGreaterThanOrEqual(0);
    }
    expect(samples.stepM).toBeLessThanOrEqual(stepM + 1e-9);
    for (const { first, last } of samples.pieces) expect((last - first) % 2).toBe(0);
  });

  it("hits reach breaks exactly and counts the reaches", () => {
    const samples = walk(ring(corners), 0.5, [4.321, 20]);
    expect(Array.from(samples.chainageM)).toContain(4.321);
    expect(Array.from(samples.chainageM)).toContain(20);
    expect([...new Set(samples.pieces.map((piece) => piece.reach))]).toEqual([0, 1, 2]);
    expect(samples.pieces.at(-1)?.last).toBe(samples.count - 1);
  });

  it("leaves out breaks at the ends, outside and doubled, and takes them in any order", () => {
    const line = laid(
      openLine([
        [0, 0],
        [10, 0],
      ]),
    );
    expect(breaksInside(line, [7, 0, -3, 7, line.lengthM, 99, 2, Number.NaN])).toEqual([2, 7]);
  });

  it("has a break at a corner once", () => {
    const line = laid(
      openLine([
        [0, 0],
        [10, 0],
        [10, 10],
      ]),
    );
    const samples = sampleLine(line, [line.chainageM[1]!], 0.5, () => 0, 0);
    expect(samples.pieces.map((piece) => piece.reach)).toEqual([0, 1]);
  });

  it("carries the water surface and the crest", () => {
    const samples = sampleLine(
      laid(
        openLine([
          [0, 0],
          [10, 0],
        ]),
      ),
      [],
      0.5,
      (x) => 100 - x / 10,
      0.3,
    );
    expect(samples.waterM[0]).toBeCloseTo(100, 9);
    expect(samples.crestM[samples.count - 1]).toBeCloseTo(99.3, 9);
  });

  it("knows its longitudes and latitudes to a millimetre, on a long leg too", () => {
    const samples = walk(
      openLine([
        [-2000, 300],
        [2100, 900],
      ]),
    );
    const lonLat = samplesLonLat(samples, PLANE);
    for (let i = 0; i < samples.count; i += 37) {
      const [x, y] = PLANE.toPlane([lonLat[2 * i]!, lonLat[2 * i + 1]!]);
      expect(Math.hypot(x - samples.xM[i]!, y - samples.yM[i]!)).toBeLessThan(0.001);
    }
  });

  it("refuses a line too long to be walked on ground this fine", () => {
    const refusal = refusalOf(() =>
      walk(
        openLine([
          [0, 0],
          [9000, 0],
        ]),
        0.001,
      ),
    );
    expect(refusal.code).toBe("line/too-long");
  });
});

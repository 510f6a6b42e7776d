import { describe, expect, it } from "vitest";
import { firstFrom, nearestSample, pickSamples } from "../../src/drawing/profile/picked-samples.ts";
import { seeded, sizedOver } from "../helpers/profile-fixture.ts";

describe("samples picked for drawing", () => {
  const ditchAtM = 137.25;
  const line = sizedOver((x) => 260 - (Math.abs(x - ditchAtM) < 0.2 ? 1.4 : 0), {
    crestM: 261,
    lengthM: 400,
    cellM: 0.1,
  });

  it("keep a ditch narrower than a column of pixels", () => {
    const picked = pickSamples(line.walk, 0, 400, 200);
    expect(picked.length).toBeLessThan(line.walk.chainageM.length / 2);
    const deepest = Math.min(...picked.map((index) => line.walk.groundM[index]!));
    expect(deepest).toBeCloseTo(258.6, 6);
  });

  it("keep the lowest and highest ground of every column, as a plain scan of all samples finds them", () => {
    const random = seeded(7);
    const bumps = Array.from({ length: 400 }, () => random());
    const rough = sizedOver((x) => 260 + bumps[Math.floor(Math.abs(x)) % 400]!, {
      crestM: 261.5,
      lengthM: 399,
      cellM: 0.2,
    });
    const columns = 90;
    const picked = new Set(pickSamples(rough.walk, 0, 399, columns));
    const { chainageM, groundM } = rough.walk;
    for (let column = 0; column < columns; column++) {
      const mine = [...chainageM.keys()].filter(
        (i) => Math.floor(chainageM[i]! / (399 / columns)) === column,
      );
      const kept = mine.filter((i) => picked.has(i)).map((i) => groundM[i]!);
      const all = mine.map((i) => groundM[i]!);
      expect(Math.min(...kept)).toBe(Math.min(...all));
      expect(Math.max(...kept)).toBe(Math.max(...all));
    }
  });

  it("keep a gap narrower than a column of pixels", () => {
    const gappy = sizedOver((x) => (Math.abs(x - 50) < 0.15 ? Number.NaN : 260), {
      crestM: 261,
      lengthM: 400,
      cellM: 0.1,
    });
    const picked = pickSamples(gappy.walk, 0, 400, 100);
    expect(picked.some((index) => Number.isNaN(gappy.walk.groundM[index]!))).toBe(true);
  });

  it("are all samples where there is room, and one beyond each end when zoomed", () => {
    const picked = pickSamples(line.walk, 100, 110, 800);
    expect(line.walk.chainageM[picked[0]!]!).toBeLessThan(100);
    expect(line.walk.chainageM[picked.at(-1)!]!).toBeGreaterThan(110);
    expect(picked).toEqual(picked.map((_, i) => picked[0]! + i));
  });

  it("are found by chainage as a plain search finds them", () => {
    const random = seeded(3);
    const sorted = Float64Array.from({ length: 50 }, () => random() * 100).sort();
    for (let turn = 0; turn < 200; turn++) {
      const wanted = random() * 120 - 10;
      const plain = sorted.findIndex((each) => each >= wanted);
      expect(firstFrom(sorted, wanted)).toBe(plain < 0 ? 50 : plain);
      const nearest = Math.min(...sorted.map((each) => Math.abs(each - wanted)));
      expect(Math.abs(sorted[nearestSample(sorted, wanted)]! - wanted)).toBe(nearest);
    }
    expect(nearestSample(new Float64Array(0), 1)).toBe(-1);
  });
});

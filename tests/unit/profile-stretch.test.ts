import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import { spokenWords, stationWords } from "../../shared/words/reading.ts";
import { nextSampleM, nextStationM, readingAt } from "../../src/drawing/profile/profile-reading.ts";
import {
  isPart,
  panned,
  showing,
  wholeLine,
  withinLine,
  zoomed,
} from "../../src/drawing/profile/profile-stretch.ts";
import { seeded, sizedOver } from "../helpers/profile-fixture.ts";

describe("part of the line that is shown", () => {
  it("stays inside the line and keeps the place under the pointer, whatever is done to it", () => {
    const random = seeded(5);
    let stretch = wholeLine(300);
    for (let turn = 0; turn < 300; turn++) {
      const about = stretch.fromM + random() * (stretch.toM - stretch.fromM);
      const factor = 0.4 + random() * 1.6;
      const next = zoomed(stretch, 300, about, factor);
      const share = (about - stretch.fromM) / (stretch.toM - stretch.fromM);
      const isFree = next.fromM > 0 && next.toM < 300;
      if (isFree) expect((about - next.fromM) / (next.toM - next.fromM)).toBeCloseTo(share, 9);
      stretch = random() < 0.3 ? panned(next, 300, (random() - 0.5) * 200) : next;
      expect(stretch.fromM).toBeGreaterThanOrEqual(0);
      expect(stretch.toM).toBeLessThanOrEqual(300 + 1e-9);
      expect(stretch.toM - stretch.fromM).toBeGreaterThanOrEqual(10 - 1e-9);
    }
  });

  it("moves no further than needed to show a place", () => {
    const stretch = { fromM: 100, toM: 150 };
    expect(showing(stretch, 300, 120)).toBe(stretch);
    expect(showing(stretch, 300, 160)).toEqual({ fromM: 115, toM: 165 });
    expect(showing(stretch, 300, 96)).toEqual({ fromM: 91, toM: 141 });
    expect(showing(stretch, 300, 300)).toEqual({ fromM: 250, toM: 300 });
  });

  it("follows a line that became shorter", () => {
    expect(withinLine({ fromM: 200, toM: 280 }, 250)).toEqual({ fromM: 170, toM: 250 });
    expect(withinLine(null, 250)).toEqual({ fromM: 0, toM: 250 });
    expect(isPart({ fromM: 0, toM: 250 }, 250)).toBe(false);
    expect(isPart({ fromM: 0, toM: 249 }, 250)).toBe(true);
  });
});

describe("reading a station", () => {
  const line = sizedOver((x) => (x > 120 && x < 140 ? Number.NaN : 260), {
    crestM: 260 + 4.3 * FOOT_M,
  });

  it("says station, height and courses", () => {
    const reading = readingAt(line, 481 * FOOT_M)!;
    expect(stationWords(reading, "us")).toBe("4+81: 4.3 ft");
    expect(spokenWords(reading, DEFAULT_SECTION, "us")).toBe(
      "station 4+81, height 4.3 ft, 13 courses",
    );
  });

  it("says when there is no data, and when the ground is above the crest", () => {
    expect(spokenWords(readingAt(line, 130)!, DEFAULT_SECTION, "us")).toContain(
      "no elevation data",
    );
    const high = sizedOver(() => 265, { crestM: 261 });
    expect(stationWords(readingAt(line, 130)!, "us")).toBe("4+27: no elevation data");
    expect(stationWords(readingAt(high, 0)!, "us")).toBe("0+00: above top of levee");
    expect(spokenWords(readingAt(high, 0)!, DEFAULT_SECTION, "us")).toBe(
      "station 0+00, ground above the top of levee",
    );
  });

  it("tells the two heights apart where the ground falls across the base", () => {
    const falling = sizedOver((_, y) => 260 - 0.2 * y, { crestM: 261 });
    expect(spokenWords(readingAt(falling, 100)!, DEFAULT_SECTION, "metric")).toMatch(
      /^station 0\+100\.0, greatest height 1\.\d\d m, 1\.00 m and 10 courses at center$/,
    );
  });

  it("steps by samples and by stations, and stops at the ends", () => {
    expect(nextSampleM(line, 50, 1) - 50).toBeLessThanOrEqual(line.stepM + 1e-9);
    expect(nextSampleM(line, 50, 1)).toBeGreaterThan(50);
    expect(nextSampleM(line, 200, 1)).toBeCloseTo(200, 3);
    expect(nextSampleM(line, 0, -1)).toBe(0);
    expect(nextStationM(line, 10, 1)).toBeCloseTo(50 * FOOT_M, 6);
    expect(nextStationM(line, 10, -1)).toBeCloseTo(25 * FOOT_M, 6);
    expect(nextStationM(line, 0, -1)).toBe(0);
  });
});

describe("a corner, which the walk has twice", () => {
  const bent = (before: number, after: number) => {
    const { walk, ...rest } = sizedOver(() => 260, { crestM: 261 });
    const chainageM = Float64Array.of(0, 10, 10, 20);
    const heights = Float64Array.of(1, before, after, 1);
    return { ...rest, walk: { ...walk, chainageM, heightM: heights, greatestHeightM: heights } };
  };

  it.each([
    [1.2, 1.25, 1.25],
    [1.25, 1.2, 1.25],
    [Number.NaN, 1.2, 1.2],
  ])(
    "reads the higher of %d and %d, as the greatest height of the line does",
    (before, after, highest) => {
      const line = bent(before, after);
      for (const m of [9, 10, 11]) expect(readingAt(line, m)!.greatestHeightM).toBe(highest);
    },
  );
});

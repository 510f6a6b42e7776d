import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_WATER } from "../../shared/defaults.ts";
import { parseStation } from "../../shared/units.ts";
import { waterLabel } from "../../shared/words/title.ts";
import { endLabels } from "../../src/drawing/profile/end-labels.ts";
import {
  limitNote,
  PROFILE_TYPE_PX,
  profileFrame,
  scaleNote,
} from "../../src/drawing/profile/profile-frame.ts";
import { profilePaths } from "../../src/drawing/profile/profile-paths.ts";
import { middleWithin, stationLabels } from "../../src/drawing/profile/station-labels.ts";
import { textWidth } from "../../src/drawing/text-width.ts";
import { LIMIT_M, sizedOver } from "../helpers/profile-fixture.ts";

const line = sizedOver((x) => 260 + Math.sin(x / 20) * 0.4, { crestM: 261, lengthM: 266 });
const size = { widthPx: 790, heightPx: 220 };

function frameOf(unitSystem: "us" | "metric", stretch = { fromM: 0, toM: 266 }, of = line) {
  return profileFrame({ line: of, limitM: LIMIT_M, unitSystem, ...size, stretch });
}

describe("frame of a long profile", () => {
  it("states the exaggeration that its own pixels have", () => {
    for (const stretch of [
      { fromM: 0, toM: 266 },
      { fromM: 40, toM: 90 },
    ]) {
      const frame = frameOf("us", stretch);
      const pxPerMUp = frame.y(260) - frame.y(261);
      const pxPerMAlong = (frame.x(80) - frame.x(50)) / 30;
      expect(frame.exaggeration).toBeCloseTo(pxPerMUp / pxPerMAlong, 9);
    }
    expect(scaleNote(12.3)).toBe("vertical exaggeration 12x");
    expect(scaleNote(3.46)).toBe("vertical exaggeration 3.5x");
    expect(scaleNote(1.01)).toBe("true scale");
  });

  it("writes no station over the next one, nor over an end of the plot", () => {
    for (const toM of [60, 70, 79, 90, 111, 266, 400]) {
      const of = sizedOver(() => 260, { crestM: 261, lengthM: toM });
      const frame = frameOf("us", { fromM: 0, toM }, of);
      const boxes = stationLabels(frame).map(({ x, label }) => {
        const half = textWidth(label, PROFILE_TYPE_PX) / 2;
        return { left: x - half, right: x + half };
      });
      expect(boxes.length).toBeGreaterThan(3);
      for (const [k, { left, right }] of boxes.entries()) {
        expect(left).toBeGreaterThan(boxes[k - 1]?.right ?? frame.plot.left);
        expect(right).toBeLessThan(frame.plot.right);
      }
    }
    expect([middleWithin(2, 40, [0, 100]), middleWithin(99, 40, [0, 100])]).toEqual([20, 80]);
    expect(middleWithin(50, 40, [0, 100])).toBe(50);
  });

  it("writes each station where that station is", () => {
    for (const system of ["us", "metric"] as const) {
      const frame = frameOf(system);
      expect(frame.xTicks.length).toBeGreaterThan(2);
      for (const { label, px } of frame.xTicks) {
        const station = parseStation(label, system);
        expect(station.ok && frame.x(station.value)).toBeCloseTo(px, 6);
      }
    }
    expect(frameOf("us").xTicks.map(({ label }) => label)).toContain("1+00");
  });

  it("writes each elevation where that elevation is, the unit once", () => {
    for (const [system, unitM] of [
      ["us", FOOT_M],
      ["metric", 1],
    ] as const) {
      const { yTicks, y } = frameOf(system);
      expect(yTicks.length).toBeGreaterThan(2);
      const labeled = yTicks.filter(({ label }) => label !== "");
      expect(labeled.length).toBeGreaterThan(1);
      for (const { label, px } of labeled) {
        expect(y(Number.parseFloat(label) * unitM)).toBeCloseTo(px, 6);
      }
      expect(yTicks.filter(({ label }) => /[a-z]/.test(label))).toHaveLength(1);
    }
  });

  it("writes every elevation on paper, and every second of many on the screen", () => {
    const request = { line, limitM: LIMIT_M, unitSystem: "us", ...size } as const;
    const tall = { ...request, heightPx: 400, stretch: { fromM: 0, toM: 266 } };
    expect(profileFrame(tall).yTicks.every(({ label }) => label !== "")).toBe(true);
    const bare = profileFrame({ ...tall, layout: "screen" }).yTicks.map(
      ({ label }) => label === "",
    );
    expect(bare.length).toBeGreaterThan(3);
    expect(bare.toReversed()).toEqual(bare.map((_, i) => i % 2 === 1));
  });

  it("names the lines at their ends in the order of their heights, the limit above the water too", () => {
    const frame = profileFrame({
      ...{ line, limitM: 0.05, unitSystem: "us", ...size, layout: "screen" },
      stretch: { fromM: 0, toM: 266 },
    });
    const reaches = line.reaches.map((reach) => ({ ...reach, limitM: 0.05 }));
    const labels = endLabels({ ...line, reaches }, frame, "Water");
    expect(labels.map(({ kind }) => kind)).toEqual(["crest", "limit", "water"]);
  });

  it("keeps heights where they are while zooming along the line", () => {
    expect(frameOf("us", { fromM: 100, toM: 120 }).y(260.5)).toBe(frameOf("us").y(260.5));
  });

  it("holds the crest, the limit and all ground that can be under a levee, at any size", () => {
    const deep = sizedOver((x) => 260 - (x > 90 && x < 110 ? 3 : 0), { crestM: 261 });
    for (const heightPx of [110, 140, 250, 400]) {
      const frame = profileFrame({
        line: deep,
        limitM: LIMIT_M,
        unitSystem: "us",
        widthPx: 390,
        heightPx,
        stretch: { fromM: 0, toM: 200 },
      });
      for (const level of [261, 261 - LIMIT_M, 257]) {
        expect(frame.y(level)).toBeGreaterThan(frame.plot.top);
        expect(frame.y(level)).toBeLessThan(frame.plot.bottom);
      }
    }
  });

  it("leaves room on the screen for a lane above, for the names at the right and for the stations in the ground", () => {
    const stretch = { fromM: 0, toM: 266 };
    const request = { line, limitM: LIMIT_M, unitSystem: "us", ...size, stretch } as const;
    const frame = profileFrame({ ...request, layout: "screen" });
    expect(frame.plot.bottom).toBe(size.heightPx);
    expect(frame.y(261 - LIMIT_M)).toBeLessThan(frame.plot.bottom - 20);
    const labels = endLabels(line, frame, "Water at 31.0");
    expect(labels.map(({ text }) => text)).toEqual([
      "Top of levee",
      "Water at 31.0",
      "Height limit",
    ]);
    expect(labels[1]!.y - labels[0]!.y).toBeGreaterThanOrEqual(16);
    expect(labels[2]!.y).toBeCloseTo(frame.y(261 - LIMIT_M), 6);
    const low = profileFrame({ ...request, heightPx: 60, layout: "screen" });
    const ys = endLabels(line, low, "Water").map(({ y }) => y);
    expect(Math.max(...ys)).toBeLessThanOrEqual(60);
    expect(Math.min(ys[1]! - ys[0]!, ys[2]! - ys[1]!)).toBeGreaterThanOrEqual(16);
  });

  it("has room at the right for the water as a stage and as an elevation of four digits", () => {
    const stretch = { fromM: 0, toM: 266 };
    const request = { line, limitM: LIMIT_M, unitSystem: "us", ...size, stretch } as const;
    const { plot, widthPx } = profileFrame({ ...request, layout: "screen" });
    const words = [
      waterLabel({ ...DEFAULT_WATER, by: "stage", stageM: 31 * FOOT_M }, "us"),
      waterLabel({ ...DEFAULT_WATER, by: "elevation", elevationM: 5273.06 * FOOT_M }, "us"),
      waterLabel({ ...DEFAULT_WATER, by: "stage", stageM: 31.25 * FOOT_M }, "us"),
    ];
    expect(words).toEqual(["Water at 31.0", "Water 5273.06", "Water at 31.25"]);
    for (const text of words) expect(textWidth(text, 13)).toBeLessThan(widthPx - plot.right - 8);
  });

  it("names the limit in the chosen unit", () => {
    expect(limitNote(LIMIT_M, "us")).toBe("4 ft below top of levee");
    expect(limitNote(LIMIT_M, "metric")).toBe("1.22 m below top of levee");
  });
});

describe("paths of a long profile", () => {
  const xsOf = (d: string) => [...d.matchAll(/[ML]([\d.-]+) /g)].map((match) => Number(match[1]));

  it("draw neither ground nor levee across a gap in the data, and hatch all of it", () => {
    const gappy = sizedOver((x) => (x > 80 && x < 110 ? Number.NaN : 260), { crestM: 261 });
    const frame = frameOf("us", { fromM: 0, toM: 200 }, gappy);
    const paths = profilePaths(gappy, LIMIT_M, frame);
    const from = frame.x(80) + 0.1;
    const to = frame.x(110) - 0.1;
    for (const d of [paths.groundLine, paths.groundFill, ...paths.bands]) {
      expect(xsOf(d).filter((x) => x > from && x < to)).toEqual([]);
      expect(d).not.toContain("NaN");
    }
    expect(paths.groundLine.match(/M/g)).toHaveLength(2);
    expect(paths.gaps).toHaveLength(1);
    expect(paths.gaps[0]!.fromPx).toBeLessThanOrEqual(frame.x(80));
    expect(paths.gaps[0]!.toPx).toBeGreaterThanOrEqual(frame.x(110));
  });

  it("leave the height open where only ground under the base is missing", () => {
    const part = sizedOver((x, y) => (x > 80 && x < 110 && y > 0.7 ? Number.NaN : 260), {
      crestM: 261,
    });
    const paths = profilePaths(part, LIMIT_M, frameOf("us", { fromM: 0, toM: 200 }, part));
    expect(paths.gaps).toEqual([]);
    expect(paths.unknownBand).not.toBe("");
    expect(paths.groundLine.match(/M/g)).toHaveLength(1);
  });

  it("stand the levee on the lowest ground under the base, so that it has the height that is named", () => {
    const falling = sizedOver((_, y) => 260 - 0.2 * y, { crestM: 261 });
    const frame = frameOf("us", { fromM: 0, toM: 200 }, falling);
    const [, ground] = /^M[\d.]+ ([\d.]+)/.exec(profilePaths(falling, LIMIT_M, frame).groundLine)!;
    const namedM = falling.walk.greatestHeightM[0]!;
    expect(namedM).toBeGreaterThan(1.1);
    expect(Number(ground)).toBeCloseTo(frame.y(261 - namedM), 1);
  });

  it("show a stretch over the limit however short", () => {
    const ditch = sizedOver((x) => 260 - (Math.abs(x - 700) < 0.3 ? 1 : 0), {
      crestM: 261,
      lengthM: 1500,
      cellM: 0.5,
    });
    const frame = frameOf("us", { fromM: 0, toM: 1500 }, ditch);
    const over = profilePaths(ditch, LIMIT_M, frame).bands[4]!;
    const xs = xsOf(over);
    expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThanOrEqual(1.9);
    expect((Math.max(...xs) + Math.min(...xs)) / 2).toBeCloseTo(frame.x(700), 0);
  });

  it("follow a crest that bends at a corner, where the walk has two samples at one place", () => {
    const bent = (x: number) => 261 + Math.abs(x - 100) / 1000;
    const chainages = Array.from({ length: 201 }, (_, k) => k).toSpliced(100, 0, 100);
    const level = (of: (x: number) => number) => Float64Array.from(chainages, of);
    const { walk } = sizedOver(() => 260, { crestM: 261 });
    const bentWalk = {
      ...walk,
      chainageM: level((x) => x),
      crestM: level(bent),
      waterM: level(bent),
      groundM: level(() => 260),
      lowestGroundM: level(() => 260),
      greatestHeightM: level((x) => bent(x) - 260),
    };
    const frame = frameOf("us", { fromM: 0, toM: 200 });
    const points = [
      ...profilePaths({ ...line, walk: bentWalk }, LIMIT_M, frame).crestLine.matchAll(
        /([\d.]+) ([\d.]+)/g,
      ),
    ];
    expect(points).toHaveLength(3);
    for (const [i, chainageM] of [0, 100, 200].entries()) {
      expect(Number(points[i]![1])).toBeCloseTo(frame.x(chainageM), 1);
      expect(Number(points[i]![2])).toBeCloseTo(frame.y(bent(chainageM)), 1);
    }
  });
});

import { describe, expect, it } from "vitest";
import type { Weakest } from "../../shared/holding/types.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { LineTime, WorkStretch } from "../../shared/time/types.ts";
import { doneShare, workTone } from "../../shared/time/work-tone.ts";
import type { Overtopping } from "../../shared/water-types.ts";
import { firstPlaces, overtoppingSteps } from "../../shared/words/water-order.ts";
import { scheduleWords, shortWorkWords, workWords } from "../../shared/words/work.ts";
import { lineMarks } from "../../src/drawing/profile/line-marks.ts";
import { placedMarks } from "../../src/drawing/profile/placed-marks.ts";
import { profileFrame } from "../../src/drawing/profile/profile-frame.ts";
import { profileLabels } from "../../src/drawing/profile/profile-labels.ts";
import { lanesPx, profileLanes } from "../../src/drawing/profile/profile-lanes.ts";
import { profilePaths } from "../../src/drawing/profile/profile-paths.ts";
import { planWith } from "../helpers/grounds.ts";
import { LIMIT_M, sizedOver } from "../helpers/profile-fixture.ts";

const STRETCH: WorkStretch = {
  ...{ fromM: 0, toM: 50, lowestM: 259, crestM: 261, bags: 1240 },
  ...{ crew: 1, steps: [2, 4], isOnHold: false },
  ...{ startH: 2, finishH: 10, wetH: 20, leastAheadM: 0.3, leastSpareM: 0 },
};

const timeOf = (
  stretches: readonly WorkStretch[],
  startAt: string | null = "2026-04-07T07:00-05:00",
): LineTime => {
  const parts = [{ crew: 1, toward: "N" }];
  return {
    startAt,
    marginM: 0.3,
    missing: [],
    parts,
    stretches,
    closures: [],
  } as unknown as LineTime;
};

describe("how a stretch of work comes out", () => {
  it.each([
    ["before", {}, "N2, N4, done 10.0 h before wet"],
    ["before", { wetH: null }, "N2, N4, not reached"],
    ["tight", { wetH: 11 }, "N2, N4, done 1.0 h before wet"],
    ["tight", { wetH: 6 }, "N2, N4, with water against it"],
    ["behind", { leastSpareM: -0.1 }, "N2, N4, behind the water"],
    ["behind", { leastSpareM: -0.1, finishH: null }, "N2, N4, behind the water"],
    ["plain", { leastSpareM: null, isOnHold: true }, "on HOLD, not built"],
    ["plain", { leastSpareM: null, wetH: null }, "N2, N4, done after 10.0 h"],
  ] as const)("is %s for %o", (tone, part, words) => {
    const stretch = { ...STRETCH, ...part };
    expect(workTone(stretch)).toBe(tone);
    expect(shortWorkWords(stretch, timeOf([stretch]))).toBe(words);
  });

  it("is told whole in the tip, on the clock where there is one", () => {
    expect(workWords(STRETCH, timeOf([STRETCH]), "us")).toBe(
      "Steps N2, N4: 0+00 to 1+64, 1,240 bags, from Tue 09:00 to Tue 17:00. Its ground gets wet Wed 03:00: finished 10.0 h before.",
    );
    expect(workWords({ ...STRETCH, leastSpareM: -0.001 }, timeOf([], null), "us")).toMatch(
      /from 2\.0 h after the start to 10\.0 h after the start\. Behind the water: at worst less than 0\.1 ft short/,
    );
    const onHold = { ...STRETCH, isOnHold: true, steps: [], startH: null, finishH: null };
    expect(workWords({ ...onHold, leastSpareM: null }, timeOf([onHold]), "us")).toBe(
      "On HOLD, over the height limit: 0+00 to 1+64, 1,240 bags. Not built before an engineer decides. Its ground gets wet Wed 03:00.",
    );
  });

  it("is done in proportion to its hours", () => {
    expect([0, 2, 4, 10, 30].map((hour) => doneShare(STRETCH, hour))).toEqual([0, 0, 0.25, 1, 1]);
    expect(doneShare({ ...STRETCH, finishH: null }, 30)).toBe(0);
  });

  it("is summed up for those who listen", () => {
    const stretches = [STRETCH, { ...STRETCH, wetH: 6 }, { ...STRETCH, leastSpareM: -1 }];
    const time = timeOf([...stretches, { ...STRETCH, isOnHold: true }]);
    expect(scheduleWords(time)).toBe(
      "4 stretches of work: 1 finished before their ground gets wet, 1 tight, 1 behind the water, 1 on HOLD",
    );
  });
});

const plain = sizedOver(() => 260, { crestM: 261, reachBreaksM: [100] });
const mixed: SizedLine = {
  ...plain,
  reaches: plain.reaches.map((reach, index) =>
    index === 0
      ? reach
      : { ...reach, section: "two-bag-wall", sectionName: "Narrow wall", limitM: 0.6 },
  ),
};
const size = { widthPx: 790, heightPx: 200 };

function framed(line: SizedLine, time: LineTime | null, stretch = { fromM: 0, toM: 200 }) {
  const underPx = lanesPx(line, { time, hour: null }, size.heightPx);
  return profileFrame({ line, limitM: LIMIT_M, unitSystem: "us", ...size, stretch, underPx });
}

describe("lanes under the stations", () => {
  const time = timeOf([
    { ...STRETCH, fromM: 0, toM: 100 },
    { ...STRETCH, fromM: 100, toM: 102, steps: [17], leastSpareM: -0.15 },
    { ...STRETCH, fromM: 102, toM: 200, steps: [1] },
  ]);

  it("take no room when they have nothing to say", () => {
    expect(lanesPx(plain, { time: null, hour: null }, 200)).toBe(0);
    expect(lanesPx(plain, { time: timeOf([]), hour: null }, 200)).toBe(0);
    expect(profileLanes(plain, framed(plain, null), { time: null, hour: null })).toEqual([]);
    const one = lanesPx(mixed, { time: null, hour: null }, 200);
    expect(one).toBeGreaterThan(0);
    expect(lanesPx(mixed, { time, hour: null }, 200)).toBeGreaterThan(one);
    expect(lanesPx(mixed, { time, hour: null }, 146)).toBeLessThan(
      lanesPx(mixed, { time, hour: null }, 200),
    );
  });

  it("lie under the stations inside the picture, each part where its chainages are", () => {
    const frame = framed(mixed, time);
    const lanes = profileLanes(mixed, frame, { time, hour: null });
    expect(lanes.map(({ kind }) => kind)).toEqual(["sections", "work"]);
    expect(lanes[0]!.topPx).toBeGreaterThanOrEqual(frame.plot.bottom + 20);
    expect(lanes[0]!.topPx + lanes[0]!.heightPx).toBeLessThanOrEqual(lanes[1]!.topPx);
    expect(lanes[1]!.topPx + lanes[1]!.heightPx).toBeLessThan(size.heightPx);
    const [first, short, last] = lanes[1]!.cells;
    expect([first!.fromPx, first!.toPx]).toEqual([frame.x(0), frame.x(100)]);
    expect([last!.fromPx, last!.toPx]).toEqual([frame.x(102), frame.x(200)]);
    expect([first!.text, short!.text, last!.text]).toEqual(["N2 N4", "", "N1"]);
    expect(short).toMatchObject({ tone: "behind", isOver: false });
    expect(lanes[0]!.cells.map(({ text, tone }) => [text, tone])).toEqual([
      [`1 ${plain.reaches[0]!.sectionName}`, "standard"],
      ["2 Narrow wall", "other"],
    ]);
    expect(lanes[0]!.cells[1]!.title).toMatch(
      /^Reach 2, 3\+28 to 6\+56: Narrow wall, limit 2\.0 ft/,
    );
  });

  it("are cut to the part in view, and then have room for what did not fit", () => {
    const stretch = { fromM: 98, toM: 110 };
    const [lane] = profileLanes(plain, framed(plain, time, stretch), { time, hour: 4 });
    expect(lane!.cells.map(({ text }) => text)).toEqual(["N2 N4", "N17", "N1"]);
    expect(lane!.cells.map(({ doneShare: done }) => done)).toEqual([0.25, 0.25, 0.25]);
  });
});

describe("the lane of the work on the screen", () => {
  it("lies above the plot, and tells what is overtopped from what lacks freeboard", () => {
    const time = timeOf([
      { ...STRETCH, fromM: 0, toM: 60, leastSpareM: 0 },
      { ...STRETCH, fromM: 60, toM: 120, leastSpareM: -0.2 },
      { ...STRETCH, fromM: 120, toM: 160, leastSpareM: -0.3, leastAheadM: 0 },
      { ...STRETCH, fromM: 160, toM: 200, isOnHold: true, steps: [] },
    ]);
    const stretch = { fromM: 0, toM: 200 };
    const request = { line: plain, limitM: LIMIT_M, unitSystem: "us", ...size, stretch } as const;
    const frame = profileFrame({ ...request, layout: "screen" });
    const [lane] = profileLanes(plain, frame, { time, hour: null });
    expect(lane!.topPx).toBeGreaterThanOrEqual(0);
    expect(lane!.topPx + lane!.heightPx).toBeLessThanOrEqual(frame.plot.top);
    expect(lane!.cells.map(({ tone }) => tone)).toEqual(["before", "behind", "overtopped", "over"]);
    expect(lane!.cells.at(-1)).toMatchObject({ text: "HOLD", isOver: true });
    expect(lane!.typePx).toBeGreaterThanOrEqual(12);
  });
});

describe("limits of reaches", () => {
  it("are drawn and named each by its own, and over by its own", () => {
    const frame = framed(mixed, null);
    const { bands } = profilePaths(mixed, LIMIT_M, frame);
    expect(bands[4]).not.toBe("");
    expect(Math.abs(Math.min(...xsOf(bands[4]!)) - frame.x(100))).toBeLessThan(2);
    expect(profilePaths(plain, LIMIT_M, framed(plain, null)).bands[4]).toBe("");
    const labels = profileLabels({ line: mixed, limitM: LIMIT_M, frame, gaps: [], waterNote: "" });
    const texts = labels.map(({ text }) => text);
    expect(texts).toContain("4 ft below top of levee");
    expect(texts).toContain("2.0 ft below top of levee");
    expect(texts.filter((text) => text.startsWith("Reach"))).toEqual([]);
  });
});

function xsOf(d: string): number[] {
  return [...d.matchAll(/[ML]([\d.-]+) /g)].map((match) => Number(match[1]));
}

const PLAN = planWith(100);

const over = (chainageM: number, riseM: number, kind: "crest" | "ground"): Overtopping => ({
  ...{ chainageM, riseM, elevationM: 100 + riseM, groundM: 99, over: kind },
});

describe("the order of overtopping", () => {
  const order = [
    over(50, 0.3048, "crest"),
    over(52, 0.3048, "crest"),
    over(100, 0.3048, "crest"),
    over(150, 0.3048, "crest"),
    over(10, 0.61, "ground"),
    over(20, 0.9, "ground"),
  ];

  it("is one step for the crest, which goes over at once, then one for each level of ground", () => {
    const steps = overtoppingSteps(order, PLAN, "metric");
    expect(steps.map(({ level, places }) => [level, places.length])).toEqual([
      ["100.30 m", 4],
      ["100.61 m", 1],
      ["100.90 m", 1],
    ]);
  });

  it("numbers the first places that stand apart", () => {
    expect(firstPlaces(order, PLAN).map(({ chainageM }) => chainageM)).toEqual([50, 100, 150]);
  });
});

describe("marks of a line", () => {
  const weakest = (verdict: Weakest["verdict"], chainageM: number): Weakest => ({
    ...{ verdict, chainageM, waterDepthM: 0.9, required: 1.5, lengthShortM: 6 },
    factor: { low: 0.62, high: 1.18 },
  });
  const standing = (sliding: Weakest, overturning: Weakest): SizedLine =>
    ({ ...plain, holding: { standing: { uplift: "none", sliding, overturning } } }) as SizedLine;
  const wayIn = {
    ...{ at: [0, 0] as const, groundM: 99.5, chainageM: 60, fromLineM: 22, end: null },
    ...{ through: [], structureId: "h", path: [] },
  };
  const traced = { wayIn, overtopping: [over(150, 0.3, "crest"), over(152, 0.3, "crest")] };

  it("name the way in, and the weakest place only where it is not as required", () => {
    const line = standing(weakest("below-required", 100), weakest("meets-required", 30));
    const marks = lineMarks(line, traced, PLAN, "us");
    expect(marks.map(({ kind, tone, number }) => [kind, tone, number])).toEqual([
      ["way-in", "grave", null],
      ["weakest", "grave", null],
      ["weakest", "quiet", null],
      ["over", "quiet", 1],
    ]);
    expect(marks[0]!.texts[0]).toBe("The water comes in 72 ft beside the line at 1+97");
    expect(marks[1]!.texts).toEqual(["sliding 0.6 to 1.1, 1.5 required", "sliding 0.6 to 1.1"]);
    expect(marks[1]!.title).toMatch(/0\.6 to 1\.1, 1\.5 is required: below it, on 20 ft of line/);
    expect(marks[2]!.texts).toEqual([]);
  });

  it("are one place where both ways are weakest at one, the graver first", () => {
    const marks = lineMarks(
      standing(weakest("meets-required", 100), weakest("doubtful", 100.4)),
      null,
      PLAN,
      "us",
    );
    expect(marks).toHaveLength(1);
    expect(marks[0]!.tone).toBe("caution");
    expect(marks[0]!.texts).toEqual([
      "overturning 0.6 to 1.1, 1.5 required",
      "overturning 0.6 to 1.1",
    ]);
    expect(marks[0]!.title).toMatch(/Overturning .*Sliding /);
  });

  it("touch neither each other nor a label", () => {
    const line = standing(weakest("below-required", 100), weakest("doubtful", 103));
    for (const heightPx of [110, 146, 220]) {
      const frame = profileFrame({
        ...{ line, limitM: LIMIT_M, unitSystem: "us", widthPx: 390, heightPx },
        stretch: { fromM: 0, toM: 200 },
      });
      const marks = placedMarks(lineMarks(line, traced, PLAN, "us"), line.walk, frame);
      const labels = profileLabels({
        ...{ line, limitM: LIMIT_M, frame, gaps: [], waterNote: "", marks },
      });
      expect(marks.map(({ kind }) => kind)).toContain("way-in");
      const boxes = [...marks, ...labels].map(({ box }) => box);
      for (const [i, a] of boxes.entries()) {
        for (const b of boxes.slice(i + 1)) {
          const apart =
            a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
          expect(apart).toBe(true);
        }
      }
    }
  });
});

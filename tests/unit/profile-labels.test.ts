import { describe, expect, it } from "vitest";
import type { Check, Severity, SizedLine } from "../../shared/sizing-types.ts";
import { type Box, placeLabels } from "../../src/drawing/place-labels.ts";
import { profileFrame } from "../../src/drawing/profile/profile-frame.ts";
import { profileLabels } from "../../src/drawing/profile/profile-labels.ts";
import { checkMarks, markLanes } from "../../src/drawing/profile/profile-marks.ts";
import { profilePaths } from "../../src/drawing/profile/profile-paths.ts";
import { LIMIT_M, seeded, sizedOver } from "../helpers/profile-fixture.ts";

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function labelsOf(line: SizedLine, widthPx: number, heightPx: number, unitSystem: "us" | "metric") {
  const stretch = { fromM: 0, toM: line.totals.lengthM };
  const frame = profileFrame({ line, limitM: LIMIT_M, unitSystem, widthPx, heightPx, stretch });
  const { gaps } = profilePaths(line, LIMIT_M, frame);
  const waterNote = "at stage 31.4 ft";
  const labels = profileLabels({ line, limitM: LIMIT_M, frame, gaps, waterNote });
  return { labels, frame };
}

describe("labels of a long profile", () => {
  it("never touch each other and stay in the plot, over many sites and sizes", () => {
    const random = seeded(11);
    for (let turn = 0; turn < 60; turn++) {
      const [a, b, c, d] = [random() * 1.5, random() * 40, random() * 200, random() * 25];
      const line = sizedOver(
        (x) => (Math.abs(x - c) < d / 4 ? Number.NaN : 260 + a * Math.sin(x / (5 + b))),
        { crestM: 260.3 + random() * 1.2, cellM: 2, reachBreaksM: [40 + random() * 100] },
      );
      const system = random() < 0.5 ? "us" : "metric";
      const { labels, frame } = labelsOf(line, 330 + random() * 700, 95 + random() * 200, system);
      for (const [i, label] of labels.entries()) {
        expect(label.box.left).toBeGreaterThanOrEqual(frame.plot.left);
        expect(label.box.right).toBeLessThanOrEqual(frame.plot.right);
        expect(label.box.bottom).toBeLessThanOrEqual(frame.plot.bottom);
        for (const other of labels.slice(i + 1)) {
          expect(overlap(label.box, other.box), `${label.text} / ${other.text}`).toBe(false);
        }
      }
    }
  });

  it("name crest, water, limit, gap and reaches where there is room", () => {
    const line = sizedOver((x) => (x > 150 && x < 190 ? Number.NaN : 260), {
      crestM: 261,
      reachBreaksM: [100],
    });
    const { labels } = labelsOf(line, 790, 220, "us");
    expect(labels.map(({ text }) => text).sort()).toEqual([
      "4 ft below top of levee",
      "Reach 1",
      "Reach 2",
      "Top of levee 856.30 ft",
      "Water 855.30 ft at stage 31.4 ft",
      "no elevation data",
    ]);
  });
});

describe("placing labels", () => {
  const bounds = { left: 0, top: 0, right: 100, bottom: 50 };
  const spot = (left: number, cost: number) => ({
    left,
    right: left + 30,
    top: 10,
    bottom: 20,
    cost,
  });

  it("gives the first the cheapest spot, the next the cheapest free one, and leaves out who has none", () => {
    const placed = placeLabels(
      [
        { key: "a", text: "a", spots: [spot(50, 2), spot(0, 1)] },
        { key: "b", text: "b", spots: [spot(10, 0), spot(40, 5)] },
        { key: "c", text: "c", spots: [spot(20, 0), spot(80, 0)] },
      ],
      [],
      bounds,
    );
    expect(placed.map(({ key, box }) => [key, box.left])).toEqual([
      ["a", 0],
      ["b", 40],
    ]);
  });

  it("keeps off what it had better not cover", () => {
    const obstacle = { left: 0, top: 0, right: 35, bottom: 50, cost: 1 };
    const label = { key: "a", text: "a", spots: [spot(0, 0), spot(40, 10)] };
    expect(placeLabels([label], [obstacle], bounds)[0]!.box.left).toBe(40);
    const mild = { ...obstacle, cost: 0.01 };
    expect(placeLabels([label], [mild], bounds)[0]!.box.left).toBe(0);
  });
});

describe("marks of checks", () => {
  const nameOf = ({ severity, fromM }: Check) => `${severity} ${fromM}`;
  const check = (severity: Severity, fromM: number, toM: number): Check => ({
    ...{ id: "setback", severity, fromM, toM, at: null, where: null },
    finding: { kind: "open-toe" },
  });
  const checks = [
    check("note", 0, 0),
    check("caution", 40, 60),
    check("stop", 50, 55),
    check("note", 100, 120),
    check("caution", 195, 200),
  ];

  it("stand in rows of their own where they would touch, the severe one in the first", () => {
    expect(markLanes(checks, 200, 400, 250)).toBe(2);
    const marks = checkMarks(checks, 2, (m) => m * 2, 0, 400);
    const byId = new Map(marks.map((mark) => [nameOf(mark.check), mark.lane]));
    expect(Object.fromEntries(byId)).toEqual({
      "stop 50": 0,
      "caution 40": 1,
      "note 100": 0,
      "caution 195": 0,
    });
    expect(marks.at(-1)!.check.severity).toBe("stop");
  });

  it("take no room when no check speaks of a stretch, and only one row in a low room", () => {
    expect(markLanes([checks[0]!], 200, 400, 250)).toBe(0);
    expect(markLanes(checks, 200, 400, 150)).toBe(1);
  });

  it("are cut to the part in view, and join where rows run out, each stretch keeping its own ends", () => {
    const marks = checkMarks(checks, 1, (m) => (m - 45) * 10, 0, 100);
    const seen = marks.map(({ check, fromPx, toPx, count, isJoined }) => ({
      id: nameOf(check),
      ends: [fromPx, toPx],
      count,
      isJoined,
    }));
    expect(seen).toEqual([
      { id: "caution 40", ends: [0, 100], count: 1, isJoined: true },
      { id: "stop 50", ends: [50, 100], count: 2, isJoined: false },
    ]);
  });
});

import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { planFrames } from "../../src/pages/plan-frame.ts";
import { type Label, placeWords } from "../../src/pages/plan-labels.ts";
import { largestFitting } from "../../src/pages/plan-scale.ts";
import { planWindows } from "../../src/pages/plan-windows.ts";
import { groundOf, openLine, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const ROOM = { widthMm: 160, heightMm: 100 };

describe("the scale of the plan on paper", () => {
  it.each([
    [{ widthM: 80, heightM: 40 }, "metric", "1 : 500", 0.5],
    [{ widthM: 81, heightM: 40 }, "metric", "1 : 600", 0.6],
    [{ widthM: 10, heightM: 10 }, "metric", "1 : 100", 0.1],
    [{ widthM: 100, heightM: 1 }, "us", "1 in = 60 ft", (60 * FOOT_M) / 25.4],
    [{ widthM: 1, heightM: 100 * FOOT_M }, "us", "1 in = 30 ft", (30 * FOOT_M) / 25.4],
  ] as const)(
    "%o in 160 x 100 mm, %s, is the next usual one: %s",
    (site, system, words, mPerMm) => {
      const scale = largestFitting(site, ROOM, system)!;
      expect(scale.words).toBe(words);
      expect(scale.mPerMm).toBeCloseTo(mPerMm, 9);
    },
  );

  it("is none for what needs more than 1 in = 100 ft or 1 : 1000", () => {
    expect(largestFitting({ widthM: 161, heightM: 1 }, ROOM, "metric")).toBeNull();
    expect(largestFitting({ widthM: 631 * FOOT_M, heightM: 1 }, ROOM, "us")).toBeNull();
  });
});

describe("a plan laid out on paper", () => {
  const ground = groundOf(() => 100);

  function framesOf(alternative: Plan["alignments"][number], system: "us" | "metric") {
    const plan = planWith(101);
    const line: SizedLine = size(plan, alternative, ground);
    return planFrames(
      { ...plan, alignments: [alternative] },
      line,
      { widthMm: 190, heightMm: 130 },
      system,
    );
  }

  it.each(["us", "metric"] as const)(
    "is true to its scale, %s: a leg of 200 ft is as long as it says",
    (system) => {
      const [frame] = framesOf(ring(rectangle(100 * FOOT_M, 50 * FOOT_M)), system);
      const { corners } = ring(rectangle(100 * FOOT_M, 50 * FOOT_M));
      const [a, b] = [frame!.toSpot(corners[0]!), frame!.toSpot(corners[1]!)];
      const legMm = Math.hypot(a[0] - b[0], a[1] - b[1]);
      const feetPerInch =
        system === "us" ? Number(/= (\d+) ft/.exec(frame!.scale.words)![1]) : null;
      const statedMm = feetPerInch
        ? (200 / feetPerInch) * 25.4
        : (200 * FOOT_M * 1000) / Number(/: (\d+)/.exec(frame!.scale.words)![1]);
      expect(legMm / statedMm).toBeCloseTo(1, 4);
      expect(frame!.scale.barM / frame!.scale.mPerMm).toBeGreaterThan(15);
    },
  );

  it("goes on over pages that meet at whole stations and each fit, where it is too long for one", () => {
    const path = Array.from({ length: 1201 }, (_, i) => ({
      chainageM: i,
      x: 0.9 * i,
      y: 0.43 * i,
    }));
    const windows = planWindows(path, [], { widthMm: 146, heightMm: 106 }, "us");
    expect(windows.length).toBeGreaterThan(5);
    expect(windows[0]!.fromM).toBe(0);
    expect(windows.at(-1)!.toM).toBe(1200);
    windows.forEach(({ fromM, toM, scale }, i) => {
      expect(scale.words).toBe("1 in = 100 ft");
      expect((0.9 * (toM - fromM)) / scale.mPerMm).toBeLessThanOrEqual(146 + 1e-6);
      if (i > 0) {
        expect(fromM).toBe(windows[i - 1]!.toM);
        const stations = fromM / FOOT_M / 50;
        expect(stations).toBeCloseTo(Math.round(stations), 6);
      }
    });
  });

  it("leaves the buildings out of account where only the line fits", () => {
    const path = [0, 100].map((m) => ({ chainageM: m, x: m, y: 0 }));
    const far = [[0, 5000]] as const;
    expect(planWindows(path, far, ROOM, "metric")[0]!.scale.words).toBe("1 : 750");
  });

  it("lays an open line out too", () => {
    expect(
      framesOf(
        openLine([
          [0, 0],
          [60, 0],
        ]),
        "metric",
      ),
    ).toHaveLength(1);
  });
});

describe("words on the plan", () => {
  const label = (key: string, x: number): Label => ({
    key,
    point: [x, 50],
    words: [{ text: "2.4", look: "big" }],
    layout: "stack",
    away: [0, -1],
    reach: "near",
  });
  const bounds = { left: 0, right: 200, top: 0, bottom: 100 };
  const EMPTY = { obstacles: [], barred: { buildings: [], line: [] } };

  it("are beside their point, without a leader, where there is room", () => {
    const [placed] = placeWords([label("a", 50)], EMPTY, bounds);
    expect(placed!.leader).toBeNull();
    expect(placed!.box.bottom).toBeCloseTo(49, 6);
  });

  it("move out and have a leader where others are in the way, and overlap none", () => {
    const placed = placeWords(
      [50, 51, 52, 53, 54, 55].map((x) => label(`at ${x}`, x)),
      EMPTY,
      bounds,
    );
    expect(placed).toHaveLength(6);
    expect(placed.some(({ leader }) => leader !== null)).toBe(true);
    placed.forEach(({ box }, i) => {
      for (const other of placed.slice(i + 1)) {
        const isApart =
          box.right <= other.box.left ||
          other.box.right <= box.left ||
          box.bottom <= other.box.top ||
          other.box.bottom <= box.top;
        expect(isApart).toBe(true);
      }
    });
  });

  it("cover nothing that must not be covered", () => {
    const wall = { left: 0, right: 200, top: 0, bottom: 49.9, cost: Infinity };
    expect(placeWords([label("a", 50)], { ...EMPTY, obstacles: [wall] }, bounds)).toEqual([]);
  });
});

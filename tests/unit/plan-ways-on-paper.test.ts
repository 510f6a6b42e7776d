import { describe, expect, it } from "vitest";
import type { Exported } from "../../shared/exports/exported.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { planFrames } from "../../src/pages/plan-frame.ts";
import { placeWords } from "../../src/pages/plan-labels.ts";
import { planLabels } from "../../src/pages/plan-marks.ts";
import { planRoom } from "../../src/pages/plan-room.ts";
import { wayLabels } from "../../src/pages/plan-ways.tsx";
import { flat, lonLats, planWith, rectangle, ring, size, structure } from "../helpers/grounds.ts";

const [WEST, EAST, SOUTH, FAR, FARTHER] = lonLats([
  [-40, 0],
  [34, 6],
  [-36, -14],
  [5000, 0],
  [5100, 0],
]) as [LonLat, LonLat, LonLat, LonLat, LonLat];

const line = {
  ...ring(rectangle(30, 20)),
  closures: [{ fromM: 10, toM: 16, closeBy: { stageM: null, at: null }, people: null }],
};
/** Its middle, where its name would stand, is on the culvert. */
const HOUSE = structure("House", [
  [-9, -4],
  [9, -4],
  [9, 9],
  [-9, 9],
]);
const plan: Plan = planWith(100.5, {
  structures: [HOUSE],
  alignments: [line],
  culverts: [
    {
      id: "c",
      name: "Mill culvert",
      path: [WEST, EAST],
      invertsM: [null, null],
      sizeM: null,
      gate: null,
      plugged: false,
    },
    {
      id: "f",
      name: "Far culvert",
      path: [FAR, FARTHER],
      invertsM: [null, null],
      sizeM: null,
      gate: null,
      plugged: true,
    },
  ],
  drains: [
    { id: "d", name: "Laundry", at: EAST, kind: "floor-drain", joinsOutside: true, plugged: true },
  ],
  possibleCulverts: [
    { id: "p", name: "Possible culvert 1", path: [SOUTH, WEST], answer: "look" },
    { id: "q", name: "Possible culvert 2", path: [WEST, EAST], answer: "no" },
  ],
  roads: [{ id: "r", name: "Drive", path: [EAST, FAR] }],
});

describe("ways of water and people on the printed plan", () => {
  const sized = size(plan, line, flat(100));
  const exported: Exported = {
    ...{ plan, line: sized, alternative: line, system: "us", checks: sized.checks },
    ...{ isTraced: false, verticalDatum: "" },
  };
  const [frame] = planFrames(plan, sized, { widthMm: 180, heightMm: 150 }, "us");

  it("are named with their state, where they lie on the drawing", () => {
    const texts = wayLabels(exported, frame!).map(({ words }) => words.map(({ text }) => text));
    expect(texts).toEqual([
      ["Left open", "0+33 to 0+52", "when to close: not set"],
      ["Mill culvert", "open: plug it"],
      ["Floor drain: Laundry", "plugged"],
      ["Possible culvert 1", "look for a pipe"],
      ["Exit road: Drive"],
    ]);
  });

  it("are all named, and no words lie over a pipe, its openings or a drain", () => {
    const placed = placeWords(planLabels(exported, frame!), planRoom(exported, frame!), {
      ...{ left: 0, top: 0, right: frame!.widthMm, bottom: frame!.heightMm },
    });
    const keys = placed.map(({ label }) => label.key);
    for (const { key } of wayLabels(exported, frame!)) expect(keys).toContain(key);
    const [[ax, ay], [bx, by]] = [frame!.toSpot(WEST), frame!.toSpot(EAST)];
    for (let share = 0; share <= 1; share += 0.02) {
      const [x, y] = [ax + share * (bx - ax), ay + share * (by - ay)];
      const over = placed.filter(
        ({ box }) => box.left < x && x < box.right && box.top < y && y < box.bottom,
      );
      expect(over.map(({ label }) => label.key)).toEqual([]);
    }
  });

  it("have their names led to them, since words may stand elsewhere", () => {
    const labels = wayLabels(exported, frame!);
    expect(labels.every(({ hasLeader }) => hasLeader)).toBe(true);
    for (const { point } of labels) {
      expect(point[0]).toBeGreaterThan(0);
      expect(point[0]).toBeLessThan(frame!.widthMm);
    }
  });
});

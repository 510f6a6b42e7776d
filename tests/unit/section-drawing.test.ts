import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { sectionFrame } from "../../src/drawing/section/section-frame.ts";
import { sectionDimensions, sectionLabels } from "../../src/drawing/section/section-labels.ts";
import { laidBeside } from "../../src/drawing/section/section-laid.ts";
import { sectionPaths } from "../../src/drawing/section/section-paths.ts";
import { cutOver, LIMIT_M, seeded } from "../helpers/profile-fixture.ts";

const NONE = { baseM: 0, heightM: 0 };

function frameOf(cross: CrossSection, widthPx = 300, heightPx = 200) {
  return sectionFrame(cross, DEFAULT_SECTION, widthPx, heightPx, NONE);
}

function pathsOf(cross: CrossSection) {
  const frame = frameOf(cross);
  return { frame, paths: sectionPaths(cross, DEFAULT_SECTION, LIMIT_M, frame) };
}

const pointsOf = (d: string) =>
  [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map((match) => [Number(match[1]), Number(match[2])]);

describe("drawing of a section", () => {
  const level = cutOver(() => 260, 260 + 3 * FOOT_M);

  it("is to scale, the same across and up", () => {
    const frame = frameOf(level);
    const acrossPx = Math.abs(frame.x(1) - frame.x(0));
    const upPx = frame.y(260) - frame.y(261);
    expect(acrossPx).toBeCloseTo(upPx, 9);
    expect(acrossPx).toBeCloseTo(frame.pxPerM, 9);
  });

  it("has the water on the left whichever side it stands on, and the levee in view", () => {
    for (const waterSide of [1, -1] as const) {
      const cross = { ...level, waterSide };
      const { frame, paths } = pathsOf(cross);
      expect(frame.x(waterSide * 2)).toBeLessThan(frame.x(0));
      const wet = pointsOf(paths.water);
      expect(Math.min(...wet.map(([x]) => x!))).toBe(0);
      expect(Math.max(...wet.map(([x]) => x!))).toBeLessThan(frame.x(0));
      for (const { plain, shaded } of paths.bags) {
        for (const [x, y] of pointsOf(plain + shaded)) {
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(frame.widthPx);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(frame.heightPx);
        }
      }
    }
  });

  it("draws the water up to its level", () => {
    const { frame, paths } = pathsOf(level);
    const top = Math.min(...pointsOf(paths.water).map(([, y]) => y!));
    expect(top).toBeCloseTo(frame.y(level.waterM), 1);
  });

  it("lays the sheet from beyond the toe over the crown to its tail", () => {
    const { frame, paths } = pathsOf(level);
    const sheet = pointsOf(paths.sheet);
    const side = level.waterSide;
    const { toeExtensionM } = DEFAULT_SECTION.sheet;
    const toeM = side === 1 ? level.toeLeftM : level.toeRightM;
    expect(sheet[0]![0]).toBeCloseTo(frame.x(side * (toeM + toeExtensionM)), 0);
    expect(Math.min(...sheet.map(([, y]) => y!))).toBeLessThan(frame.y(level.crestM));
    expect(sheet.at(-1)![0]).toBeGreaterThan(frame.x(0));
    expect(sheet.at(-1)![1]).toBeGreaterThan(frame.y(level.crestM));
  });

  it("colours courses by their height above the ground, in quarters of the limit and over it", () => {
    const levels = (heightFt: number) =>
      pathsOf(cutOver(() => 260, 260 + heightFt * FOOT_M)).paths.bags.map((bag) => bag.level);
    expect(levels(1)).toEqual([0]);
    expect(levels(3)).toEqual([0, 1, 2]);
    expect(levels(4)).toEqual([0, 1, 2, 3]);
    expect(levels(5)).toEqual([0, 1, 2, 3, 4]);
  });

  it("draws no ground, bags or sheet where data is missing", () => {
    const cross = cutOver((_, y) => (y > 0.5 && y < 1.5 ? Number.NaN : 260), 261);
    const { frame, paths } = pathsOf(cross);
    expect(paths.bags).toEqual([]);
    expect(paths.sheet).toBe("");
    expect(paths.groundLine.match(/M/g)).toHaveLength(2);
    const [gap] = paths.gaps;
    const ends = [frame.x(0.5), frame.x(1.5)].sort((a, b) => a - b);
    expect(gap![0]).toBeLessThanOrEqual(ends[0]!);
    expect(gap![1]).toBeGreaterThanOrEqual(ends[1]!);
    expect(sectionDimensions(cross, frame)).toBeNull();
  });

  it("has no water where the ground on the water side stands above it", () => {
    const side = level.waterSide;
    const dry = cutOver((_, y) => 260 + Math.max(0, 2 * side * y), 260 + FOOT_M);
    expect(pathsOf(dry).paths.water).toBe("");
  });

  it("measures greatest height and base, and marks the limit only when passed", () => {
    const at = (heightFt: number) => {
      const cross = cutOver(() => 260, 260 + heightFt * FOOT_M);
      const frame = frameOf(cross);
      return { cross, frame, marks: sectionDimensions(cross, frame)! };
    };
    const { cross, frame, marks } = at(3);
    expect((marks.footY - marks.crestY) / frame.pxPerM).toBeCloseTo(3 * FOOT_M, 9);
    expect((marks.landToeX - marks.waterToeX) / frame.pxPerM).toBeCloseTo(9 * FOOT_M, 6);
    expect(marks.limitY).toBeNull();
    const texts = (halfWidths: boolean) =>
      sectionLabels(cross, frame, marks, "us", halfWidths).map(({ text }) => text);
    expect(texts(true)).toEqual(["3.0 ft", "base 9.0 ft", "4.5", "4.5", "Water side", "Land side"]);
    expect(texts(false)).toEqual(["3.0 ft", "base 9.0 ft", "Water side", "Land side"]);
    expect(at(5).marks.limitY).not.toBeNull();
  });

  it("keeps its labels apart and in view, over many grounds and sizes", () => {
    const random = seeded(23);
    for (let turn = 0; turn < 80; turn++) {
      const [fall, wave] = [(random() - 0.5) * 0.3, random() * 0.2];
      const cross = cutOver(
        (_, y) => 260 + fall * y + wave * Math.sin(3 * y),
        260.2 + random() * 1.8,
      );
      const [widthPx, heightPx] = [240 + random() * 400, 90 + random() * 250];
      const frame = sectionFrame(cross, DEFAULT_SECTION, widthPx, heightPx, NONE);
      const marks = sectionDimensions(cross, frame);
      const labels = sectionLabels(cross, frame, marks, "us", turn % 2 === 0);
      for (const [i, { box, text }] of labels.entries()) {
        expect(box.left, text).toBeGreaterThanOrEqual(0);
        expect(box.right, text).toBeLessThanOrEqual(widthPx);
        expect(box.bottom, text).toBeLessThanOrEqual(heightPx);
        for (const other of labels.slice(i + 1)) {
          const isApart =
            box.right <= other.box.left ||
            other.box.right <= box.left ||
            box.bottom <= other.box.top ||
            other.box.bottom <= box.top;
          expect(isApart, `${text} / ${other.text}`).toBe(true);
        }
      }
    }
  });
});

describe("what is laid beside the levee's bags", () => {
  const beside = (heightFt: number, waterSide: 1 | -1 = 1) => {
    const cross = { ...cutOver(() => 260, 260 + heightFt * FOOT_M), waterSide };
    const frame = frameOf(cross);
    return { cross, frame, laid: laidBeside(cross, DEFAULT_SECTION, frame) };
  };

  it.each([1, -1] as const)(
    "is an anchor bag on each edge of the poly sheeting, water side %i",
    (side) => {
      const { cross, frame, laid } = beside(2, side);
      const [foot, top] = laid.anchors;
      const toe = frame.x(side * (side === 1 ? cross.toeLeftM : cross.toeRightM));
      expect(laid.anchors).toHaveLength(2);
      expect(foot!.x + foot!.widthPx / 2).toBeLessThanOrEqual(toe + 0.5);
      expect(foot!.y).toBeLessThan(frame.y(260));
      expect(foot!.y).toBeGreaterThan(frame.y(260) - frame.pxPerM * 0.2);
      expect(top!.x).toBeGreaterThan(frame.x(0));
      expect(top!.tiltDeg).toBeGreaterThan(10);
      expect(top!.y).toBeLessThan(frame.y(260 + FOOT_M));
    },
  );

  it("is a bond trench of 21 by 5 in under the middle of the base, over 3 ft alone", () => {
    expect(beside(3).laid.trench).toEqual([]);
    const { frame, laid } = beside(3.2);
    expect(laid.trench).toHaveLength(2);
    const [left, right] = [...laid.trench].sort((a, b) => a.x - b.x);
    const widthM = (right!.x + right!.widthPx / 2 - (left!.x - left!.widthPx / 2)) / frame.pxPerM;
    expect(widthM).toBeCloseTo(21 * 0.0254, 3);
    expect(left!.heightPx / frame.pxPerM).toBeCloseTo(5 * 0.0254, 3);
    expect(left!.y - left!.heightPx / 2).toBeCloseTo(frame.y(260), 6);
  });
});

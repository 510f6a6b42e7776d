import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { crossSection } from "../../shared/cross-section.ts";
import { DEFAULT_HOLDING, DEFAULT_SECTION } from "../../shared/defaults.ts";
import { standingAt } from "../../shared/holding/standing-at.ts";
import type { Uplift } from "../../shared/plan.ts";
import { sectionFrame } from "../../src/drawing/section/section-frame.ts";
import { freeBodyPicture } from "../../src/profile/free-body.ts";
import { flat, openLine, PLANE, planWith } from "../helpers/grounds.ts";

const WATER_FT = 3;

function pictureOf(uplift: Uplift, widthPx = 420, heightPx = 260) {
  const bare = planWith(100 + WATER_FT * FOOT_M);
  const plan = { ...bare, holding: { ...DEFAULT_HOLDING, uplift } };
  const alignment = openLine([
    [0, 0],
    [30, 0],
  ]);
  const cross = crossSection({
    ...{ plan, alignment, plane: PLANE, ground: flat(100) },
    ...{ chainageM: 15, marginM: 3 },
  });
  const frame = sectionFrame(cross, DEFAULT_SECTION, widthPx, heightPx, { baseM: 0, heightM: 0 });
  const body = standingAt(cross, plan)!;
  return { cross, frame, body, picture: freeBodyPicture(cross, body, frame, "us", [])! };
}

describe("the forces on a section of 3 ft of water on flat ground", () => {
  it("stand where statics puts them: thrust at a third of the depth, weight at mid-base (handbook, W1)", () => {
    const { frame, picture, body } = pictureOf("triangular");
    const depthPx = WATER_FT * FOOT_M * frame.pxPerM;
    const { thrust, weight, turns } = picture;
    expect(turns.y - thrust!.toY).toBeCloseTo(depthPx / 3, 1);
    expect(weight.toX).toBeCloseTo(frame.x(0), 1);
    expect(turns.x - thrust!.toX).toBeCloseTo(body.baseM * frame.pxPerM, 1);
    expect(picture.labels.map(({ text }) => text)).toContain("thrust 281 lb/ft");
  });

  it("draws uplift as a triangle to the drained toe, a third of the base from the water, or in full at its middle", () => {
    const triangular = pictureOf("triangular");
    const basePx = triangular.body.baseM * triangular.frame.pxPerM;
    const fromWater = (of: typeof triangular) =>
      of.picture.uplift!.toX - (of.picture.turns.x - basePx);
    expect(fromWater(triangular)).toBeCloseTo(basePx / 3, 1);
    expect(fromWater(pictureOf("full"))).toBeCloseTo(basePx / 2, 1);
    const none = pictureOf("none").picture;
    expect([none.uplift, none.upliftArea]).toEqual([null, ""]);
  });

  it("keeps its words inside, apart from each other, at any size", () => {
    for (const [width, height] of [
      [240, 100],
      [288, 150],
      [390, 300],
    ] as const) {
      const { labels } = pictureOf("triangular", width, height).picture;
      for (const [i, { box }] of labels.entries()) {
        expect(box.left).toBeGreaterThanOrEqual(0);
        expect(box.right).toBeLessThanOrEqual(width);
        expect(box.bottom).toBeLessThanOrEqual(height);
        for (const other of labels.slice(i + 1)) {
          const isApart =
            box.right <= other.box.left ||
            other.box.right <= box.left ||
            box.bottom <= other.box.top ||
            other.box.bottom <= box.top;
          expect(isApart).toBe(true);
        }
      }
    }
  });
});

import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { layBags } from "../../src/drawing/section/bag-courses.ts";
import { groundAcross } from "../../src/drawing/section/section-ground.ts";
import { BAG, cutOver } from "../helpers/profile-fixture.ts";

const GROUND_M = 260;

function laidOver(formula: (xM: number, yM: number) => number, heightM: number) {
  const cross = cutOver(formula, GROUND_M + heightM);
  return { cross, laid: layBags(cross, BAG)! };
}

const shapes = {
  level: () => GROUND_M,
  "falling to the left": (_: number, y: number) => GROUND_M - 0.12 * y,
  "falling to the right": (_: number, y: number) => GROUND_M + 0.12 * y,
  "with a hump": (_: number, y: number) => GROUND_M + 0.5 * Math.exp(-(((y - 1) / 0.3) ** 2)),
  "with a ditch": (_: number, y: number) => GROUND_M - 0.6 * Math.exp(-(((y + 1) / 0.4) ** 2)),
  rough: (_: number, y: number) => GROUND_M + 0.08 * Math.sin(9 * y) + 0.05 * Math.sin(23 * y),
};

describe("bags of a section", () => {
  it("come to 45 per foot of line at 3 ft on level ground (source: NDSU-11, its worked answer)", () => {
    const { laid } = laidOver(shapes.level, 3 * FOOT_M);
    const bagLengthM = BAG.placedVolumeM3 / (BAG.placedWidthM * BAG.courseM);
    const perFoot = laid.bags.length / (bagLengthM / FOOT_M);
    expect(perFoot).toBeGreaterThan(45 * 0.92);
    expect(perFoot).toBeLessThan(45 * 1.08);
  });

  it("stand in 9 to 12 courses at 3 ft (source: DWR-03, 3 to 4 in a course)", () => {
    const { laid } = laidOver(shapes.level, 3 * FOOT_M);
    const courses = new Set(laid.bags.map(({ course }) => course)).size;
    expect(courses).toBeGreaterThanOrEqual(9);
    expect(courses).toBeLessThanOrEqual(12);
  });

  for (const [name, formula] of Object.entries(shapes)) {
    for (const heightFt of [0.4, 1, 2.3, 4, 6.5]) {
      it(`fill the template and stay in it on ground ${name}, ${heightFt} ft`, () => {
        const { cross, laid } = laidOver(formula, heightFt * FOOT_M);
        expectInside(cross, laid.bags, laid.courseM);
        const drawnM2 = laid.bags.reduce((sum, bag) => sum + faceAboveGround(cross, bag), 0);
        const offM2 = Math.abs(drawnM2 - cross.areaM2!);
        expect(offM2).toBeLessThan(0.08 * cross.areaM2! + 0.75 * BAG.placedWidthM * laid.courseM);
      });
    }
  }

  it("break joints by a third of a bag at least (source: DWR-03)", () => {
    for (const formula of Object.values(shapes)) {
      const { laid } = laidOver(formula, 4 * FOOT_M);
      const joints = jointsByCourse(laid.bags);
      for (const [course, here] of joints) {
        for (const joint of here) {
          const near = (joints.get(course + 1) ?? []).map((other) => Math.abs(other - joint));
          expect(Math.min(Infinity, ...near)).toBeGreaterThan(BAG.placedWidthM / 3);
        }
      }
    }
  });

  it("are not laid where any ground under the base is missing", () => {
    const cross = cutOver((_, y) => (y > 0.3 ? Number.NaN : GROUND_M), GROUND_M + FOOT_M);
    expect(cross.greatestHeightM).toBeNull();
    expect(layBags(cross, BAG)).toBeNull();
  });

  it("are not laid where the ground stands above the crest", () => {
    const cross = cutOver(() => GROUND_M, GROUND_M - 0.1);
    expect(layBags(cross, BAG)).toBeNull();
  });
});

type Bags = NonNullable<ReturnType<typeof layBags>>["bags"];

function expectInside(cross: CrossSection, bags: Bags, courseM: number): void {
  const ground = groundAcross(cross);
  expect(bags.length).toBeGreaterThan(0);
  for (const bag of bags) {
    const middleM = bag.topM - courseM / 2;
    const halfM = cross.crownM / 2 + cross.sideSlope * (cross.crestM - middleM);
    expect(bag.toM).toBeGreaterThan(bag.fromM);
    expect(bag.toM).toBeLessThanOrEqual(Math.min(halfM, cross.toeLeftM) + 1e-9);
    expect(bag.fromM).toBeGreaterThanOrEqual(-Math.min(halfM, cross.toeRightM) - 1e-9);
    expect(bag.topM).toBeLessThanOrEqual(cross.crestM + 1e-9);
    expect(bag.topM).toBeGreaterThan(ground((bag.fromM + bag.toM) / 2));
    expect(bag.bottomM).toBeGreaterThanOrEqual(lowestBetween(ground, bag.fromM, bag.toM) - 1e-6);
    expect(bag.toM - bag.fromM).toBeLessThan(1.36 * BAG.placedWidthM);
  }
}

const SLICES = 200;

function lowestBetween(ground: (m: number) => number, fromM: number, toM: number): number {
  const levels = Array.from({ length: SLICES + 1 }, (_, k) =>
    ground(fromM + ((toM - fromM) * k) / SLICES),
  );
  return Math.min(...levels) - 0.01;
}

function faceAboveGround(cross: CrossSection, bag: Bags[number]): number {
  const ground = groundAcross(cross);
  const widthM = (bag.toM - bag.fromM) / SLICES;
  return Array.from({ length: SLICES }, (_, k) => {
    const level = ground(bag.fromM + (k + 0.5) * widthM);
    return Math.max(0, bag.topM - Math.max(bag.bottomM, level)) * widthM;
  }).reduce((sum, slice) => sum + slice, 0);
}

function jointsByCourse(bags: Bags): Map<number, number[]> {
  const joints = new Map<number, number[]>();
  for (const bag of bags) {
    const touching = bags.some((each) => each.course === bag.course && each.fromM === bag.toM);
    if (touching) joints.set(bag.course, [...(joints.get(bag.course) ?? []), bag.toM]);
  }
  return joints;
}

import { describe, expect, it } from "vitest";
import { DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import type { Section } from "../../shared/plan.ts";
import { cutAcross, emptyCut, levelAreaM2, sideSlope } from "../../shared/section.ts";
import { flat, groundOf } from "../helpers/grounds.ts";

/** Cuts across a line that runs north at x = 0: offsets to the left are westward, negative x. */
function cut(ground: GroundSampler, crestM: number, section: Section = DEFAULT_SECTION) {
  const out = emptyCut();
  cutAcross(out, ground, section, { xM: 0, yM: 0, leftX: -1, leftY: 0, crestM, shiftM: 0 });
  return out;
}

/** Area of a polygon by the surveyor's formula. */
function shoelace(points: readonly (readonly [number, number])[]): number {
  const twice = points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

/**
 * The section on ground that rises by `fall` per metre toward positive x, from geometry: the template's two
 * sides meet the ground line where crest - (|x| - c) / m = fall * x.
 */
function byGeometry(section: Section, heightM: number, fall: number) {
  const c = section.crownM / 2;
  const m = (section.baseRatio * heightM - section.crownM) / (2 * heightM);
  const low = (m * heightM + c) / (1 - m * fall);
  const high = (m * heightM + c) / (1 + m * fall);
  const area = shoelace([
    [-low, -fall * low],
    [high, fall * high],
    [c, heightM],
    [-c, heightM],
  ]);
  return { low, high, area };
}

describe("the section on level ground", () => {
  it.each([0.01, 0.05, 0.0762, 0.08, 0.1, 0.3048, 0.5, 0.9144, 1.2192, 2, 3])(
    "has the area h (max(r h, w) + w) / 2 at h = %s m",
    (heightM) => {
      const found = cut(flat(100), 100 + heightM);
      expect(found.heightM).toBeCloseTo(heightM, 12);
      expect(Math.abs(found.areaM2 - levelAreaM2(DEFAULT_SECTION, found.heightM))).toBeLessThan(
        1e-9,
      );
      const baseM = Math.max(3 * heightM, DEFAULT_SECTION.crownM);
      expect(found.toeLeftM + found.toeRightM).toBeCloseTo(baseM, 9);
      expect(found.toeLeftM).toBeCloseTo(found.toeRightM, 12);
      expect(found.lowestM).toBe(100);
      expect(found.toeOpen).toBe(false);
    },
  );

  it("has vertical sides where the base would be narrower than the crown", () => {
    expect(sideSlope(DEFAULT_SECTION, 0.05)).toBe(0);
    expect(sideSlope(DEFAULT_SECTION, 1)).toBeCloseTo((3 - DEFAULT_SECTION.crownM) / 2, 12);
    expect(levelAreaM2(DEFAULT_SECTION, 0.05)).toBeCloseTo(0.05 * DEFAULT_SECTION.crownM, 12);
  });

  it("takes any crown and ratio, a broad crown and none", () => {
    for (const section of [
      { ...DEFAULT_SECTION, crownM: 0 },
      { ...DEFAULT_SECTION, crownM: 3.1 },
      { ...DEFAULT_SECTION, baseRatio: 2, crownM: 0.24 },
      { ...DEFAULT_SECTION, baseRatio: 0.5 },
    ]) {
      const found = cut(flat(0), 1.1, section);
      expect(found.areaM2).toBeCloseTo(levelAreaM2(section, 1.1), 10);
    }
  });

  it("builds nothing where the ground reaches the crest", () => {
    for (const groundM of [100, 100.5]) {
      const found = cut(flat(groundM), 100);
      expect([found.heightM, found.areaM2, found.toeLeftM, found.toeRightM]).toEqual([0, 0, 0, 0]);
      expect(found.groundM).toBe(groundM);
    }
    expect(levelAreaM2(DEFAULT_SECTION, 0)).toBe(0);
    expect(levelAreaM2(DEFAULT_SECTION, -1)).toBe(0);
  });
});

describe("the section on ground that falls across the line", () => {
  it.each([
    [1, 0.05],
    [1, 0.3],
    [1.2192, -0.2],
    [0.3, 0.4],
    [2, 0.1],
  ])("h = %s m, fall %s: toes and area are those of the trapezoid", (heightM, fall) => {
    const found = cut(
      groundOf((x) => 50 + fall * x),
      50 + heightM,
    );
    const { low, high, area } = byGeometry(DEFAULT_SECTION, heightM, fall);
    expect(found.areaM2).toBeCloseTo(area, 9);
    expect(found.toeLeftM).toBeCloseTo(low, 9);
    expect(found.toeRightM).toBeCloseTo(high, 9);
    expect(found.lowestM).toBeCloseTo(50 - Math.abs(fall) * (fall > 0 ? low : high), 9);
    expect(found.dropLeftM).toBeCloseTo(heightM + fall * low, 9);
    expect(found.dropRightM).toBeCloseTo(heightM - fall * high, 9);
  });

  it("is exact over a bend in the ground at the centre line", () => {
    const found = cut(
      groundOf((x) => 10 - 0.2 * Math.abs(x)),
      11,
    );
    const { low } = byGeometry(DEFAULT_SECTION, 1, 0.2);
    expect(found.toeLeftM).toBeCloseTo(low, 9);
    expect(found.toeRightM).toBeCloseTo(low, 9);
    const c = DEFAULT_SECTION.crownM / 2;
    const half = shoelace([
      [0, 0],
      [low, -0.2 * low],
      [c, 1],
      [0, 1],
    ]);
    expect(found.areaM2).toBeCloseTo(2 * half, 9);
  });

  it("ends within the crown where the ground rises through it", () => {
    const found = cut(
      groundOf((x) => (x > 0 ? 2 * x : 0)),
      0.1,
    );
    expect(found.toeRightM).toBeCloseTo(0.05, 9);
    expect(found.dropRightM).toBeCloseTo(0, 9);
  });

  it("ends on the first ground it meets, a bank before a ditch", () => {
    const found = cut(
      groundOf((x) => (x >= 0.5 && x < 0.8 ? 0.9 : x >= 0.8 ? -3 : 0)),
      1,
    );
    expect(found.toeRightM).toBeLessThan(0.6);
    expect(found.lowestM).toBe(0);
  });

  it("follows a side into a hollow and reports the lowest ground under the base", () => {
    const found = cut(
      groundOf((x) => (x > 0.9 ? -0.4 : 0)),
      1,
    );
    expect(found.lowestM).toBeCloseTo(-0.4, 9);
    expect(found.toeRightM).toBeGreaterThan(1.5);
  });
});

describe("a side that never meets the ground", () => {
  it("stops at a bound and says so", () => {
    const found = cut(
      groundOf((x) => (x > 0 ? -2 * x : 0)),
      1,
    );
    expect(found.toeOpen).toBe(true);
    expect(found.toeRightM).toBeLessThan(13);
    expect(Number.isFinite(found.areaM2)).toBe(true);
  });

  it("does not call a level or a gently falling side open", () => {
    expect(cut(flat(0), 1).toeOpen).toBe(false);
    expect(
      cut(
        groundOf((x) => 0.5 * x),
        1,
      ).toeOpen,
    ).toBe(false);
  });
});

describe("missing ground", () => {
  it("makes the cut unknown when any needed point is missing, and never fills it in", () => {
    for (const hole of [0.3, -0.3, 1.2, -1.4]) {
      const found = cut(
        groundOf((x) => (Math.abs(x - hole) < 0.3 ? Number.NaN : 0)),
        1,
      );
      expect(found.areaM2).toBeNaN();
      expect(found.lowestM).toBeNaN();
      expect(found.toeLeftM).toBeNaN();
      expect(found.toeRightM).toBeNaN();
    }
  });

  it("keeps ground and height at the centre line, which are known", () => {
    const found = cut(
      groundOf((x) => (x > 0.5 ? Number.NaN : 0)),
      1,
    );
    expect(found.groundM).toBe(0);
    expect(found.heightM).toBe(1);
  });

  it("is unknown altogether without ground at the centre line", () => {
    const found = cut(flat(Number.NaN), 1);
    expect(found.groundM).toBeNaN();
    expect(found.heightM).toBeNaN();
    expect(found.areaM2).toBeNaN();
  });

  it("does not ask for ground beyond the toes", () => {
    const found = cut(
      groundOf((x) => (Math.abs(x) > 1.55 ? Number.NaN : 0)),
      1,
    );
    expect(found.areaM2).toBeCloseTo(levelAreaM2(DEFAULT_SECTION, 1), 9);
    const dry = cut(
      groundOf((x) => (x === 0 ? 5 : Number.NaN)),
      1,
    );
    expect(dry.areaM2).toBe(0);
  });
});

describe("sampling across the line", () => {
  it("is no coarser than half a cell, nor than half a metre", () => {
    for (const [cellM, coarsest] of [
      [1, 0.5],
      [0.4, 0.2],
      [10, 0.5],
    ] as const) {
      const offsets: number[] = [];
      const watched = groundOf((x) => {
        offsets.push(x);
        return 0;
      }, cellM);
      cut(watched, 1.2);
      const sorted = offsets.sort((a, b) => a - b);
      const gaps = sorted.slice(1).map((x, i) => x - sorted[i]!);
      expect(Math.max(...gaps)).toBeLessThanOrEqual(coarsest + 1e-9);
      expect(sorted.at(-1)).toBeCloseTo(1.8, 6);
    }
  });
});

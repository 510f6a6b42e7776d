import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { crossSection } from "../../shared/cross-section.ts";
import { DEFAULT_HOLDING, DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { GroundSampler } from "../../shared/ground.ts";
import { standingAt } from "../../shared/holding/standing-at.ts";
import type { Alignment, Plan, ReachSection } from "../../shared/plan.ts";
import { figuresOf, PYRAMID, SECTIONS, sectionById } from "../../shared/sections.ts";
import type { SizedLine, Totals } from "../../shared/sizing-types.ts";
import { leveeTypeText } from "../../shared/words/levee-types.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { remedyOf } from "../helpers/check-text.ts";
import {
  flat,
  groundOf,
  openLine,
  PLANE,
  planWith,
  rectangle,
  ring,
  size,
} from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

/** Crest at 101, ground at 100: 1 m high on the level. */
const PLAN = planWith(101 - FOOT_M);
const BAG_M3 = DEFAULT_SECTION.bag.placedVolumeM3;
const LENGTH_M = 60;

const built = (section: string, figures: Record<string, number> = {}): ReachSection => ({
  section,
  figures,
});

/** A line to the east; without structures its water stands to the right, in the south. */
function lineOf(
  reachSections: readonly ReachSection[],
  breaksM: readonly number[] = [],
): Alignment {
  const line = openLine(
    [
      [0, 0],
      [LENGTH_M, 0],
    ],
    breaksM,
  );
  return { ...line, reachSections };
}

function sizedAs(
  section: string,
  figures: Record<string, number> = {},
  ground: GroundSampler = flat(100),
  plan = PLAN,
): SizedLine {
  return size(plan, lineOf([built(section, figures)]), ground);
}

function cutAs(
  section: string,
  figures: Record<string, number>,
  ground: GroundSampler,
  plan = PLAN,
) {
  const alignment = lineOf([built(section, figures)]);
  return crossSection({ plan, alignment, plane: PLANE, ground, chainageM: 30, marginM: 2 });
}

/** Shoelace area of an outline given as interleaved offsets and elevations. */
function areaOf(outlineM: Float64Array): number {
  let twice = 0;
  for (let i = 0; i < outlineM.length; i += 2) {
    const j = (i + 2) % outlineM.length;
    twice += outlineM[i]! * outlineM[j + 1]! - outlineM[j]! * outlineM[i + 1]!;
  }
  return Math.abs(twice) / 2;
}

const partArea = (parts: ReturnType<typeof cutAs>["parts"], material: string) =>
  parts
    .filter((part) => part.material === material)
    .reduce((sum, { outlineM }) => sum + areaOf(outlineM), 0);

/** Area between a top and the ground, both over offsets positive to the water, by narrow strips. */
function stripArea(
  top: (waterM: number) => number,
  bottom: (waterM: number) => number,
  halfM: number,
): number {
  const strips = 400_000;
  const widthM = (2 * halfM) / strips;
  let areaM2 = 0;
  for (let k = 0; k < strips; k++) {
    const m = -halfM + (k + 0.5) * widthM;
    areaM2 += Math.max(0, top(m) - bottom(m)) * widthM;
  }
  return areaM2;
}

const trapezoid =
  (crownM: number, runWater: number, runLand: number, topM: number) => (m: number) =>
    topM - Math.max(0, Math.abs(m) - crownM / 2) / (m > 0 ? runWater : runLand);

describe("every section", () => {
  it("has an identifier of its own, and figures whose defaults lie in their ranges", () => {
    expect(new Set(SECTIONS.map(({ id }) => id)).size).toBe(SECTIONS.length);
    for (const section of SECTIONS) {
      expect(sectionById(section.id)).toEqual({ ok: true, value: section });
      const { limit, source: typeSource } = leveeTypeText(section.id, unitsOf("us"));
      expect(limit.source).not.toBe("");
      expect(typeSource).not.toBe("");
      for (const { key, lowSI, highSI, source } of section.figures) {
        const value = figuresOf(section, null, PLAN)[key]!;
        expect(value).toBeGreaterThanOrEqual(lowSI);
        expect(value).toBeLessThanOrEqual(highSI);
        expect(source).not.toBe("");
      }
    }
  });

  it("takes a figure that a reach states, and the plan's own for the others", () => {
    const plan = planWith(100, { section: { crownM: 0.5 } });
    const figures = figuresOf(PYRAMID, built("pyramid", { baseRatio: 2.5 }), plan);
    expect(figures).toEqual({ baseRatio: 2.5, crownM: 0.5 });
  });

  it("is refused by a name nobody knows, with the names that are known", () => {
    const found = sectionById("moat");
    expect(found.ok).toBe(false);
    if (!found.ok) expect(said(found.failure).message).toMatch(/pyramid.*two-bag-wall.*"moat"/);
  });

  it.each(SECTIONS.map(({ id }) => id))(
    "%s draws as much fill as it counts, on ground that falls",
    (id) => {
      const ground = groundOf((_x, y) => 100 + 0.07 * y + 0.02 * Math.sin(2 * y));
      const cut = cutAs(id, {}, ground);
      const { fill } = SECTIONS.find((section) => section.id === id)!;
      const drawnM2 = partArea(cut.parts, fill);
      expect(Math.abs(drawnM2 / cut.areaM2! - 1)).toBeLessThan(0.01);
      for (const { outlineM } of cut.parts) {
        for (let i = 0; i < outlineM.length; i += 2) {
          const groundM = ground.heightAt(0, outlineM[i]!);
          expect(outlineM[i + 1]!).toBeGreaterThan(groundM - 0.02);
        }
      }
    },
  );
});

describe("areas on level ground, by hand", () => {
  it("of the upright walls are width times height", () => {
    const widthM = 2 * DEFAULT_SECTION.bag.placedWidthM;
    for (const id of ["two-bag-wall", "braced-wall", "lumber-topping"]) {
      expect(cutAs(id, {}, flat(100)).areaM2).toBeCloseTo(widthM, 9);
      expect(cutAs(id, { widthM: 0.5 }, flat(100)).areaM2).toBeCloseTo(0.5, 9);
    }
    expect(cutAs("plywood-box", { widthRatio: 1.2 }, flat(100)).areaM2).toBeCloseTo(1.2, 9);
  });

  it("of the earth levee are crown and two triangles, the flatter one on its own side", () => {
    const cut = cutAs("earth-levee", { crownM: 1.5, runWater: 2.5, runLand: 2 }, flat(100));
    expect(cut.areaM2).toBeCloseTo(1.5 + 1.25 + 1, 6);
    expect(cut.waterSide).toBe(-1);
    expect([cut.toeRightM, cut.toeLeftM]).toEqual([
      expect.closeTo(0.75 + 2.5, 6),
      expect.closeTo(0.75 + 2, 6),
    ]);
  });

  it("of a raise are the new trapezoid less the old one", () => {
    const figures = { raiseM: 0.4, baseRatio: 3, leastBaseRatio: 2, crownM: 0.3 };
    const base = Math.max(3 * 0.6, 2 * 1);
    const cut = cutAs("raised", figures, flat(100));
    expect(cut.bodyM2).toBeCloseTo((base + 0.3) / 2, 9);
    expect(cut.areaM2).toBeCloseTo((base + 0.3) / 2 - (0.6 * (3 * 0.6 + 0.3)) / 2, 9);
    expect(partArea(cut.parts, "earlier")).toBeCloseTo((0.6 * (3 * 0.6 + 0.3)) / 2, 6);
    expect(cut.baseM).toBeCloseTo(base, 9);
  });

  it("of a raise higher than the levee are the whole levee", () => {
    const cut = cutAs("raised", { raiseM: 1.2 }, flat(100));
    expect(cut.areaM2).toBeCloseTo(cut.bodyM2!, 12);
    expect(partArea(cut.parts, "earlier")).toBe(0);
  });
});

describe("areas on ground that falls across the line, by strips", () => {
  const SLOPES = [-0.18, -0.05, 0.11, 0.2];

  it.each(SLOPES)("of an earth levee, the ground rising by %s toward the land", (slope) => {
    const figures = { crownM: 1.2, runWater: 2.5, runLand: 2 };
    const cut = cutAs(
      "earth-levee",
      figures,
      groundOf((_x, y) => 100 + slope * y, 0.5),
    );
    const expected = stripArea(trapezoid(1.2, 2.5, 2, 101), (m) => 100 - slope * m, 12);
    expect(cut.areaM2).toBeCloseTo(expected, 4);
  });

  it.each(SLOPES)("of a raise, the ground rising by %s toward the land", (slope) => {
    const figures = { raiseM: 0.35, baseRatio: 3, leastBaseRatio: 2, crownM: 0.3 };
    const cut = cutAs(
      "raised",
      figures,
      groundOf((_x, y) => 100 + slope * y, 0.5),
    );
    const base = Math.max(3 * 0.65, 2);
    const newRun = (base - 0.3) / 2;
    const oldRun = (3 * 0.65 - 0.3) / (2 * 0.65);
    const ground = (m: number) => 100 - slope * m;
    const old = trapezoid(0.3, oldRun, oldRun, 101 - 0.35);
    const added = stripArea(
      trapezoid(0.3, newRun, newRun, 101),
      (m) => Math.max(ground(m), old(m)),
      12,
    );
    expect(cut.areaM2).toBeCloseTo(added, 4);
    expect(cut.bodyM2).toBeCloseTo(added + stripArea(old, ground, 12), 4);
    expect(partArea(cut.parts, "bags")).toBeCloseTo(added, 3);
  });

  it("swaps its sides with the line's direction and counts the same", () => {
    const ground = groundOf((_x, y) => 100 + 0.1 * y);
    const figures = { crownM: 1, runWater: 3, runLand: 1.5 };
    const forth = lineOf([built("earth-levee", figures)]);
    const gauge = { name: "G", at: PLANE.toLonLat(30, -50) };
    const plan = { ...PLAN, gauge };
    const back = { ...forth, corners: [...forth.corners].reverse() };
    const [a, b] = [size(plan, forth, ground), size(plan, back, ground)];
    expect(a.totals.volumeM3).toBeCloseTo(b.totals.volumeM3, 6);
    expect(a.walk.toeRightM[5]).toBeCloseTo(b.walk.toeLeftM[5]!, 6);
  });
});

describe("a line of several sections", () => {
  const SECTIONS_HERE = [
    built("pyramid"),
    built("plywood-box"),
    built("earth-levee"),
    built("braced-wall"),
  ];
  const mixed = (plan: Plan = PLAN) => size(plan, lineOf(SECTIONS_HERE, [15, 30, 45]), flat(100));

  it("has each reach's volume by its own section, with nothing smeared over the breaks", () => {
    const widthM = 2 * DEFAULT_SECTION.bag.placedWidthM;
    const pyramidM2 = (3 + DEFAULT_SECTION.crownM) / 2;
    const earthM2 = 5 * FOOT_M + (2.5 + 3) / 2;
    const areas = [pyramidM2, 2, earthM2, widthM];
    for (const [i, { totals, section }] of mixed().reaches.entries()) {
      expect(totals.volumeM3).toBeCloseTo(15 * areas[i]!, 5);
      expect(section).toBe(SECTIONS_HERE[i]!.section);
    }
  });

  it("counts bags from what is filled with bags only, loose sand and earth apart", () => {
    const { reaches } = mixed();
    const [pyramid, box, earth, wall] = reaches.map(({ totals }) => totals);
    expect([box!.bags, earth!.bags]).toEqual([0, 0]);
    expect(pyramid!.bagsPlaced).toBe(Math.ceil(pyramid!.volumeM3 / BAG_M3));
    expect(wall!.bagsPlaced).toBeGreaterThan(0);
    expect(box!.materials.looseSandM3).toBeCloseTo(15 * 2 * 1.1, 6);
    expect(box!.sandM3).toBeCloseTo(15 * 2 * 1.1, 6);
    expect(earth!.sandM3).toBe(0);
    expect(earth!.materials.earthM3).toBeCloseTo(earth!.volumeM3 * 1.1, 6);
    expect([box!.sheetBags, earth!.sheetRolls, box!.sheetM2]).toEqual([0, 0, 0]);
  });

  it("takes plywood, lumber and stakes where its walls ask for them", () => {
    const { reaches } = mixed();
    const [pyramid, box, , wall] = reaches.map(({ totals }) => totals.materials);
    expect(pyramid).toEqual({
      ...{ looseSandM3: 0, earthM3: 0, plywoodM2: 0, plywoodSheets: 0, stakes: 0 },
      ...{ lumberM: 0, lumberPieces: 0, boardsM: 0, boardPieces: 0 },
    });
    expect(box!.plywoodM2).toBeCloseTo(2 * 15, 6);
    expect(wall!.plywoodM2).toBeCloseTo(15, 6);
    expect(box!.lumberM).toBeCloseTo(15 * (2 + 2 / (4 * FOOT_M)), 6);
    expect(wall!.lumberM).toBeCloseTo(15 * (1 + 10 / 6), 6);
    expect(box!.lumberPieces).toBe(Math.ceil((15 * (2 + 2 / (4 * FOOT_M))) / (10 * FOOT_M)));
    expect(box!.stakes).toBe(Math.ceil((15 * 2) / (4 * FOOT_M)));
    const sheetM2 = 32 * FOOT_M ** 2;
    expect(box!.plywoodSheets).toBe(Math.ceil(30 / sheetM2));
  });

  it("has reaches that add up, counts to the last one", () => {
    const { totals, reaches } = mixed();
    const sum = (of: (each: Totals) => number) =>
      reaches.reduce((total, reach) => total + of(reach.totals), 0);
    for (const key of ["bags", "bagsPlaced", "sheetBags", "sheetRolls", "trucks"] as const) {
      expect(sum((each) => each[key])).toBe(totals[key]);
    }
    for (const key of ["plywoodSheets", "lumberPieces", "boardPieces", "stakes"] as const) {
      expect(sum((each) => each.materials[key])).toBe(totals.materials[key]);
    }
    for (const key of [
      "volumeM3",
      "sandM3",
      "sheetM2",
      "jobPersonHours",
      "builtLengthM",
    ] as const) {
      expect(sum((each) => each[key])).toBeCloseTo(totals[key], 6);
    }
    for (const key of ["looseSandM3", "earthM3", "plywoodM2", "lumberM", "boardsM"] as const) {
      expect(sum((each) => each.materials[key])).toBeCloseTo(totals.materials[key], 6);
    }
  });

  it("is over the limit by each reach's own", () => {
    const { totals, reaches } = mixed();
    expect(reaches.map(({ limitM }) => limitM)).toEqual(
      [4, 4, 6, 3].map((feet) => expect.closeTo(feet * FOOT_M, 9)),
    );
    expect(totals.lengthOverLimitM).toBeCloseTo(15, 4);
    expect(totals.underLimitM).toBeCloseTo(3 * FOOT_M - 1, 6);
    expect(totals.lengthByClassM.at(-1)).toBeCloseTo(15, 4);
    expect(totals.lengthByClassM.reduce((sum, m) => sum + m, 0)).toBeCloseTo(LENGTH_M, 6);
  });

  it("has lifts that take as many bags, or the same volume, as its hours are reckoned by", () => {
    const { totals, time } = mixed();
    const worked = time!.stretches.reduce((sum, { bags }) => sum + bags, 0);
    expect(worked / PLAN.practice.jobRate).toBeCloseTo(totals.jobPersonHours, 3);
  });

  it("is the same as without breaks when all its reaches are one section", () => {
    const plain = size(PLAN, lineOf([]), flat(100));
    const same = size(PLAN, lineOf([built("pyramid"), built("pyramid")], [21.3]), flat(100));
    expect(same.totals.bags).toBe(plain.totals.bags);
    expect(same.walk.chainageM.length - plain.walk.chainageM.length).toBeLessThan(3);
  });

  it("leaves entries beyond its reaches alone", () => {
    const more = size(PLAN, lineOf([built("pyramid"), built("plywood-box")]), flat(100));
    expect(more.totals).toEqual(size(PLAN, lineOf([]), flat(100)).totals);
  });

  it("counts published bags over its pyramids alone and says so", () => {
    const whole = size(PLAN, lineOf([]), flat(100)).published[0]!;
    const part = mixed().published[0]!;
    expect(part.bags! / whole.bags!).toBeCloseTo(0.25, 2);
    expect(part.why).toMatch(/other sections are left out/);
    expect(whole.why).not.toMatch(/left out/);
  });

  it("says which stations are not of bags", () => {
    const { stations } = mixed();
    const at = (m: number) => stations.findLast(({ chainageM }) => chainageM <= m)!;
    expect(at(20)).toMatchObject({
      courses: null,
      bagsAcrossBase: null,
      bagsPerM: 0,
      raiseToM: null,
    });
    expect(at(5).courses).toBe(10);
    expect(at(50).bagsPerM).toBeCloseTo((2 * DEFAULT_SECTION.bag.placedWidthM) / BAG_M3, 6);
  });

  it("tells no reserve of a line of which a part has none that is published", () => {
    const raiseOf = (sections: readonly ReachSection[]) =>
      size(PLAN, lineOf(sections, [LENGTH_M / 2]), flat(100)).holding!.raise;
    expect(raiseOf([built("pyramid"), built("two-bag-wall")])).toBeNull();
    expect(raiseOf([built("pyramid"), built("pyramid")])!.leastM).toBeGreaterThan(0.2);
  });

  it("counts a raise by what is left to do when the water comes higher", () => {
    const { time } = sizedAs("raised", { raiseM: 0.3 }, flat(100.2));
    const wholeAt = sizedAs("raised", { raiseM: 0.3 + FOOT_M }, flat(100.2), planWith(101));
    const point = time!.curve.points.find(({ riseM }) => Math.abs(riseM - FOOT_M) < 1e-9)!;
    expect(point.bags).toBe(wholeAt.totals.bags);
  });
});

describe("holding by section", () => {
  /** 4 ft high, the water 1 ft below the crest. */
  const plan = planWith(100 + 3 * FOOT_M);

  it("has the two-bag wall fail at 3 ft of water where the pyramid stands (handbook 6.3)", () => {
    const wall = sizedAs("two-bag-wall", {}, flat(100), plan).holding!.standing!;
    expect(wall.sliding.factor.low).toBeLessThan(1);
    expect(wall.sliding.verdict).toBe("below-required");
    const standard = sizedAs("pyramid", {}, flat(100), plan).holding!.standing!;
    expect([standard.sliding.verdict, standard.overturning.verdict]).toEqual([
      "meets-required",
      "meets-required",
    ]);
  });

  it("has factors of the wall that statics by hand gives", () => {
    const widthM = 2 * DEFAULT_SECTION.bag.placedWidthM;
    const weight = 4 * FOOT_M * widthM * DEFAULT_HOLDING.leveeKgPerM3;
    const thrust = (1000 * (3 * FOOT_M) ** 2) / 2;
    const uplift = (1000 * 3 * FOOT_M * widthM) / 2;
    const { sliding, overturning } = sizedAs("two-bag-wall", {}, flat(100), plan).holding!
      .standing!;
    expect(sliding.factor.low).toBeCloseTo((0.3 * (weight - uplift)) / thrust, 3);
    const turning = thrust * FOOT_M + uplift * (2 / 3) * widthM;
    expect(overturning.factor.low).toBeCloseTo((weight * (widthM / 2)) / turning, 3);
  });

  it.each(["braced-wall", "lumber-topping"])("rates no %s, and says who must", (id) => {
    const line = sizedAs(id, {}, flat(100), plan);
    expect(line.holding!.standing).toBeNull();
    expect(line.holding!.profile.slidingLow.every((factor) => Number.isNaN(factor))).toBe(true);
    expect(line.holding!.seepage.totalM3PerS.high).toBeGreaterThan(0);
    const said = line.checks.find((check) => check.id === "bracing-not-calculated")!;
    expect(remedyOf(said)).toMatch(/licensed engineer/);
    expect(standingAt(cutAs(id, {}, flat(100), plan), plan)).toBeNull();
  });

  it("seeks the weakest place among what stands by its weight", () => {
    const alignment = lineOf([built("braced-wall"), built("pyramid")], [30]);
    const { standing } = size(plan, alignment, flat(100)).holding!;
    expect(standing!.sliding.chainageM).toBeGreaterThanOrEqual(30);
  });

  it("has a raised levee stand with its whole body", () => {
    const raise = sizedAs("raised", { raiseM: FOOT_M }, flat(100), plan).holding!.standing!;
    const ratio = Math.max(3 * 3, 2 * 4) / 4;
    const steeper = planWith(100 + 3 * FOOT_M, { section: { baseRatio: ratio } });
    const same = sizedAs("pyramid", {}, flat(100), steeper).holding!.standing!;
    expect(raise.sliding.factor.low).toBeCloseTo(same.sliding.factor.low, 4);
    const drawn = standingAt(cutAs("raised", { raiseM: FOOT_M }, flat(100), plan), plan)!;
    expect(drawn.sliding.low).toBeCloseTo(same.sliding.factor.low, 4);
  });

  it("lets more through where no sheet is laid", () => {
    const box = sizedAs("plywood-box", {}, flat(100), plan).holding!.seepage;
    expect(box.throughSheetM3PerS).toEqual(box.throughBareM3PerS);
    const wall = sizedAs("two-bag-wall", {}, flat(100), plan).holding!.seepage;
    expect(wall.throughSheetM3PerS.high).toBeCloseTo(wall.throughBareM3PerS.high * 0.4, 9);
  });

  it("has a reserve for pyramids alone", () => {
    const { raise } = sizedAs("earth-levee", {}, flat(100)).holding!;
    expect(raise).toBeNull();
    expect(sizedAs("raised", { raiseM: 0.2 }, flat(100)).holding!.raise!.leastM).toBeGreaterThan(0);
  });
});

describe("the levee cut across in a section", () => {
  it("names the section of its reach, the one that begins at a break", () => {
    const alignment = lineOf([built("pyramid"), built("plywood-box")], [30]);
    const at = (chainageM: number) =>
      crossSection({
        plan: PLAN,
        alignment,
        plane: PLANE,
        ground: flat(100),
        chainageM,
        marginM: 1,
      });
    expect(at(29.9)).toMatchObject({ section: "pyramid", limitM: PLAN.practice.limitM });
    expect(at(30)).toMatchObject({
      section: "plywood-box",
      sectionName: "Plywood box filled with sand",
      courses: null,
      bagsPerM: 0,
    });
  });

  it("has boards and braces on the land side, over the ground", () => {
    const cut = cutAs("braced-wall", {}, flat(100));
    const kinds = cut.parts.map(({ material }) => material);
    expect(kinds).toEqual(["bags", "plywood", "lumber", "lumber", "lumber"]);
    const plywood = cut.parts.find(({ material }) => material === "plywood")!;
    expect(areaOf(plywood.outlineM)).toBeCloseTo(0.018, 6);
    for (let i = 0; i < plywood.outlineM.length; i += 2) {
      expect(plywood.outlineM[i]! * cut.waterSide).toBeLessThan(0);
    }
  });

  it("has no parts where ground is missing or nothing is built", () => {
    expect(
      cutAs(
        "plywood-box",
        {},
        groundOf((_x, y) => (y > 0.2 ? Number.NaN : 100)),
      ).parts,
    ).toEqual([]);
    expect(cutAs("raised", {}, flat(102)).parts).toEqual([]);
  });
});

describe("a ring of two sections", () => {
  it("meets itself at its closing point, and says so once for each place", () => {
    const corners = rectangle(20, 15);
    const alignment = {
      ...ring(corners, [50]),
      reachSections: [built("pyramid"), built("earth-levee")],
    };
    const met = size(PLAN, alignment, flat(100), true).checks.filter(
      (check) => check.id === "types-meet",
    );
    expect(met.map(({ fromM }) => Math.round(fromM))).toEqual([0, 50]);
  });
});

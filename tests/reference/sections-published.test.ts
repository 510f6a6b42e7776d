import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_HOLDING, DEFAULT_SECTION } from "../../shared/defaults.ts";
import type { ReachSection } from "../../shared/plan.ts";
import type { EmergencySection } from "../../shared/sections/types.ts";
import { SECTIONS, sectionById } from "../../shared/sections.ts";
import { leveeTypeText } from "../../shared/words/levee-types.ts";
import { figureNote } from "../../shared/words/setting-notes.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { flat, openLine, planWith, size } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

const SQUARE_FOOT_M2 = FOOT_M ** 2;
const INCH_M = FOOT_M / 12;

/** 100 ft of line of one section on level ground, so many feet high; the water a foot below the crest. */
function hundredFeet(section: string, heightFt: number, figures: Record<string, number> = {}) {
  const reach: ReachSection = { section, figures };
  const corners = [
    [0, 0],
    [100 * FOOT_M, 0],
  ] as const;
  const plan = planWith(100 + (heightFt - 1) * FOOT_M, { practice: { limitM: 6 * FOOT_M } });
  return size(plan, { ...openLine(corners), reachSections: [reach] }, flat(100));
}

const baseFt = (line: ReturnType<typeof hundredFeet>) => line.stations[2]!.baseM! / FOOT_M;
const areaSqFt = (line: ReturnType<typeof hundredFeet>) =>
  line.stations[2]!.sectionAreaM2! / SQUARE_FOOT_M2;

function sectionOf(id: string): EmergencySection {
  const found = sectionById(id);
  if (!found.ok) throw new Error(said(found.failure).message);
  return found.value;
}

describe("dimensions that are published", () => {
  it("G1: a closure 3 ft high, base 2H + 3 ft, crown 3 ft, has 18 sq ft (CWCB-D2)", () => {
    const line = hundredFeet("pyramid", 3, { baseRatio: (2 * 3 + 3) / 3, crownM: 3 * FOOT_M });
    expect(baseFt(line)).toBeCloseTo(9, 6);
    expect(areaSqFt(line)).toBeCloseTo(18, 6);
    expect(line.totals.volumeM3 / FOOT_M ** 3).toBeCloseTo(1800, 3);
  });

  it("G3: a levee 3 ft high at 3:1 has a base of 9 ft (FFO-96)", () => {
    expect(baseFt(hundredFeet("pyramid", 3))).toBeCloseTo(9, 6);
  });

  it("G4: an earth levee 3 ft high, 3 ft crown and 3:1 on both sides, is 21 ft wide (LSU)", () => {
    const figures = { crownM: 3 * FOOT_M, runWater: 3, runLand: 3 };
    expect(baseFt(hundredFeet("earth-levee", 3, figures))).toBeCloseTo(21, 6);
  });

  it("a residential earth levee: crest 5 ft, wet side 1 on 2.5 (IS-280), land side sand 1 on 3 (IL-RET)", () => {
    const line = hundredFeet("earth-levee", 4);
    expect(baseFt(line)).toBeCloseTo(5 + 4 * (2.5 + 3), 6);
    expect(areaSqFt(line)).toBeCloseTo(4 * 5 + (16 * 5.5) / 2, 6);
    expect(sectionOf("earth-levee").limitM! / FOOT_M).toBeCloseTo(5 + 1, 9);
  });

  it("a mud box is twice as wide as its fill is high; its 6 ft are for tamped earth or clay (FFO-96), so that loose sand has the limit of bags", () => {
    expect(baseFt(hundredFeet("plywood-box", 3))).toBeCloseTo(6, 6);
    expect(sectionOf("plywood-box").limitM).toBeNull();
    const { note } = leveeTypeText("plywood-box", unitsOf("us")).limit;
    expect(note).toMatch(/FFO-96 gives 6 ft for tamped earth or clay/);
  });

  it("a mud box 3 ft high is 30 in wide by the other source (DWR-03), and the difference is shown", () => {
    const line = hundredFeet("plywood-box", 3, { widthRatio: 30 / 36 });
    expect(line.stations[2]!.baseM! / INCH_M).toBeCloseTo(30, 6);
    const note = figureNote("plywood-box", "widthRatio", unitsOf("us"));
    expect(note).toMatch(/FFO-96.*DWR-03/);
  });

  it("100 ft of mud box 3 ft high holds 1,800 cu ft of sand and takes 600 sq ft of plywood (by hand)", () => {
    const { totals } = hundredFeet("plywood-box", 3);
    expect(totals.volumeM3 / FOOT_M ** 3).toBeCloseTo(1800, 3);
    expect(totals.materials.plywoodM2 / SQUARE_FOOT_M2).toBeCloseTo(600, 3);
    expect(totals.materials.plywoodSheets).toBe(Math.ceil(600 / 32));
  });

  it("toppings have kickers of 10 ft and stakes every 6 ft (DWR-03 p49), for less than 3 ft (EMI-L4, FFO-96)", () => {
    const { totals } = hundredFeet("lumber-topping", 2);
    const bays = 100 / 6;
    expect(totals.materials.lumberM / FOOT_M).toBeCloseTo(10 * bays, 3);
    expect(totals.materials.lumberPieces).toBe(Math.ceil(bays));
    expect(totals.materials.boardsM / FOOT_M).toBeCloseTo(2 * 100, 3);
    expect(totals.materials.boardPieces).toBe(Math.ceil(200 / 12));
    expect(totals.materials.stakes).toBe(Math.ceil(2 * bays));
    expect(sectionOf("lumber-topping").limitM! / FOOT_M).toBeCloseTo(3, 9);
  });

  it("a narrow wall is published to 1 ft, with clusters every 5 ft (NDSU-11)", () => {
    const wall = sectionOf("two-bag-wall");
    expect(wall.limitM! / FOOT_M).toBeCloseTo(1, 9);
    expect(leveeTypeText("two-bag-wall", unitsOf("us")).cautions.join(" ")).toMatch(
      /every 5 ft \(NDSU-11\)/,
    );
    expect(hundredFeet("two-bag-wall", 1).stations[2]!.baseM! / INCH_M).toBeCloseTo(28, 6);
  });

  it("a levee 3 ft high at 3:1 carries 4.5 ft on its base at 2:1 (NDSU-NR): no widening, 9 ft", () => {
    const line = hundredFeet("raised", 4.5, { raiseM: 1.5 * FOOT_M });
    expect(baseFt(line)).toBeCloseTo(9, 6);
    const crown = DEFAULT_SECTION.crownM / FOOT_M;
    expect(areaSqFt(line)).toBeCloseTo((4.5 * (9 + crown)) / 2 - (3 * (9 + crown)) / 2, 6);
  });

  it("raised farther it is widened to twice its height (NDSU-NR)", () => {
    expect(baseFt(hundredFeet("raised", 5, { raiseM: 2 * FOOT_M }))).toBeCloseTo(10, 6);
  });
});

describe("table 6.3 (derived; 110 lb/cu ft, triangular uplift): 3 ft of water on 4 ft of levee", () => {
  it("the pyramid stands and the wall two bags wide does not", () => {
    const pyramid = hundredFeet("pyramid", 4, { crownM: FOOT_M }).holding!.standing!;
    expect(DEFAULT_HOLDING.uplift).toBe("triangular");
    expect(Math.abs(pyramid.sliding.factor.low / 1.86 - 1)).toBeLessThan(0.005);
    expect(Math.abs(pyramid.sliding.factor.high / 3.09 - 1)).toBeLessThan(0.005);
    expect(Math.abs(pyramid.overturning.factor.low / 1.85 - 1)).toBeLessThan(0.005);
    const narrow = hundredFeet("pyramid", 4, { crownM: FOOT_M, baseRatio: 2 }).holding!.standing!;
    expect(Math.abs(narrow.sliding.factor.low / 1.32 - 1)).toBeLessThan(0.005);
    const wall = hundredFeet("two-bag-wall", 4).holding!.standing!;
    expect(wall.sliding.factor.low).toBeLessThan(1);
    expect(wall.sliding.verdict).toBe("below-required");
  });
});

describe("what no source gives", () => {
  it("is marked so: every figure and limit names a source or says there is none", () => {
    const sourced = /[A-Z]{2,}[A-Z0-9]*-?[A-Z0-9]*|judgement|no source|derived/;
    for (const { id, figures } of SECTIONS) {
      const { limit, source } = leveeTypeText(id, unitsOf("us"));
      for (const each of [...figures.map((figure) => figure.source), limit.source, source]) {
        expect(each).toMatch(sourced);
      }
    }
  });
});

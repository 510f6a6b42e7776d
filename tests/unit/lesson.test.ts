import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { byHand, byProgram } from "../../shared/lesson/by-hand.ts";
import { answerOf, byAverage, exercisesOn } from "../../shared/lesson/exercises.ts";
import { bagsAtHeight, lessonShape } from "../../shared/lesson/lesson-shape.ts";
import { type LessonChoice, TEACHING_GROUNDS } from "../../shared/lesson/teaching-ground.ts";
import { formatCount } from "../../shared/units.ts";
import { differenceWords, handLines, overWords } from "../../shared/words/lesson.ts";
import { questionWords, rememberWords } from "../../shared/words/lesson-exercises.ts";

const US = TEACHING_GROUNDS.us;
const METRIC = TEACHING_GROUNDS.metric;
const shapeOf = (change: Partial<LessonChoice>, teaching = US) =>
  lessonShape(teaching, { ...teaching.first, ...change });
const FIRST = shapeOf({});
const STEEPER = shapeOf({ slope: 0.025 });

describe("the hand calculation, as a class writes it down", () => {
  it("is rounded line by line, 100 ft down a slope of 2.5 in 100", () => {
    const lines = handLines(US, STEEPER, FIRST).map(
      ({ working, result, before }) => `${working} = ${result} | ${before}`,
    );
    expect(lines).toEqual([
      "333.65 + 1.00 = 334.65 ft | 334.65",
      "332.45 − 2.50 = 329.95 ft | 331.45",
      "334.65 − 329.95 = 4.70 ft | 3.20",
      "3 × 4.70 = 14.10 ft | 9.60",
      "(14.10 + 0.75) ÷ 2 × 4.70 = 34.90 sq ft | 16.56",
      "34.90 × 1 = 34.90 cu ft | 16.56",
      "34.90 ÷ 0.325 = 107.4 | 51.0",
      "107.4 × 1.05 = 112.8 bags | 53.5",
    ]);
  });

  it("says by how much it differs from the program, which does not round on the way", () => {
    expect(byProgram(US, STEEPER).bags).toBeCloseTo(
      ((((14.1 + 0.75) / 2) * 4.7) / 0.325) * 1.05,
      9,
    );
    expect(differenceWords(US, STEEPER)).toBe("By hand 0.1 more, from rounding.");
    expect(differenceWords(US, shapeOf({ riverM: US.first.riverM + 0.8 * FOOT_M }))).toBe(
      "By hand the same.",
    );
  });

  it("goes on in meters as in feet", () => {
    const hand = byHand(METRIC, shapeOf({ slope: 0.025 }, METRIC));
    expect(hand).toMatchObject({ top: 101.96, ground: 100.55, height: 1.41, base: 4.23 });
    expect(hand).toMatchObject({ area: 3.144, placed: 341.7, bags: 358.8 });
    const words = handLines(METRIC, shapeOf({}, METRIC), null).flatMap((line) =>
      Object.values(line),
    );
    expect(words.filter((each) => /\b(?:ft|foot|feet)\b/.test(String(each)))).toEqual([]);
  });

  it("is 0 where the top lies under the ground, and so is the program's", () => {
    const low = shapeOf({ riverM: 331 * FOOT_M, freeboardM: 0, slope: 0 });
    expect(byHand(US, low)).toMatchObject({ height: 0, base: 0, area: 0, bags: 0 });
    expect(low).toMatchObject({ heightM: 0, bagsPerM: 0, lineBags: 0, isOver: false });
    expect(differenceWords(US, low)).toBe("By hand the same.");
  });

  it("takes the crown for the base where three times the height is less", () => {
    const slight = shapeOf({ riverM: 331.6 * FOOT_M, freeboardM: 0 });
    const hand = byHand(US, slight);
    expect(hand).toMatchObject({ height: 0.15, isCrownWide: true, base: 0.75 });
    expect(hand.base).toBeCloseTo(byProgram(US, slight).base, 9);
  });

  /* NDSU-11 prints cubic yards of sand for 100 ft, base 3 H and base 2 H, rounded to whole ones: 95 and 65 at 4 ft. */
  it.each([
    [3, 4, 95],
    [2, 4, 65],
    [3, 3, 54],
    [2, 3, 38],
  ])(
    "with a base of %s times %s ft comes to the published %s cu yd of sand",
    (ratio, heightFt, yards) => {
      const riverM = (331.45 + heightFt - 1) * FOOT_M;
      const { area } = byHand(US, shapeOf({ baseRatio: ratio, riverM }));
      expect(Math.abs((area * 100) / 27 - yards)).toBeLessThanOrEqual(1);
    },
  );

  /* NDSU-11: N = (3 H + 9 H²) / 2 bags for a foot of line, 45 at 3 ft; placed, without spares. */
  it("places about the published 45 bags per foot at 3 ft", () => {
    const { placed } = byHand(US, shapeOf({ riverM: (331.45 + 2) * FOOT_M }));
    expect(Math.abs(placed / 45 - 1)).toBeLessThan(0.02);
  });
});

describe("the exercises", () => {
  const exercises = exercisesOn(US);

  it("have the answers that the engine calculates", () => {
    const answers = exercises.map((each) => formatCount(answerOf(each, FOOT_M)));
    expect(answers).toEqual(["82", "113", "37", "91", "6,439"]);
    expect(exercises.map(({ after }) => after.isOver)).toEqual([false, true, false, true, true]);
    expect(formatCount(byAverage(exercises[4]!.after).bags)).toBe("6,186");
    expect(byProgram(US, exercises[0]!.before).bags).toBeCloseTo(53.5, 2);
  });

  it("count the whole line by the integral of the section along it", () => {
    const bagsTo = (h: number) => ((h ** 3 / 2 + 0.1875 * h ** 2) / 0.325) * 1.05;
    expect(STEEPER.lineBags).toBe(Math.ceil((bagsTo(4.7) - bagsTo(2.2)) / 0.025));
    expect(FIRST.lineBags).toBe(Math.ceil((bagsTo(3.2) - bagsTo(2.2)) / 0.01));
  });

  it.each([US, METRIC])(
    "leave with sentences that are true of their figures in $system",
    (teaching) => {
      const of = exercisesOn(teaching);
      const ratio = (i: number, figure: "heightM" | "bagsPerM") =>
        of[i]!.after[figure] / of[i]!.before[figure];
      expect(ratio(0, "heightM")).toBeCloseTo(1.25, 2);
      expect(ratio(0, "bagsPerM")).toBeCloseTo(1.5, 1);
      expect(ratio(1, "heightM")).toBeCloseTo(1.5, 1);
      expect(Math.round(ratio(1, "bagsPerM"))).toBe(2);
      expect(ratio(2, "bagsPerM")).toBeCloseTo(2 / 3, 1);
      expect(of[2]!.after.section.baseRatio).toBe(of[2]!.after.section.leastBaseRatio);
      const top = of[3]!.after;
      const unitM = teaching.first.freeboardM;
      const slices = [1, 2, 3].map(
        (n) =>
          bagsAtHeight(top, top.heightM - (n - 1) * unitM) -
          bagsAtHeight(top, top.heightM - n * unitM),
      );
      expect(slices[0]).toBeGreaterThan(Math.max(...slices.slice(1)));
      expect(byAverage(of[4]!.after).bags).toBeLessThan(of[4]!.after.lineBags - 1);
    },
  );

  it("are put in the units of the screen", () => {
    expect(questionWords(US, exercises[0]!)).toBe(
      "The river now comes 0.8 ft higher, to 334.45 ft. How many bags per foot at 1+00?",
    );
    const inMeters = exercisesOn(METRIC);
    expect(questionWords(METRIC, inMeters[1]!)).toBe(
      "The ground now falls 2.5 m in 100 m, not 1.0. How many bags per meter at 0+030?",
    );
    const words = inMeters.flatMap((each) => [
      questionWords(METRIC, each),
      rememberWords(METRIC, each),
    ]);
    expect(words.filter((each) => /\b(?:ft|foot|feet)\b/.test(each))).toEqual([]);
  });
});

describe("the height limit", () => {
  it("is said where it is passed, and where it is passed elsewhere on the line", () => {
    expect(overWords(FIRST, "us")).toBeNull();
    expect(overWords(STEEPER, "us")).toContain("Over the 4.0 ft height limit");
    const elsewhere = shapeOf({ slope: 0.025, stationM: 0 });
    expect(elsewhere.isOver).toBe(false);
    expect(overWords(elsewhere, "us")).toContain("Elsewhere on the line over the 4.0 ft");
  });

  it("is not passed at 4 ft", () => {
    expect(exercisesOn(US)[0]!.after.heightM).toBeCloseTo(4 * FOOT_M, 9);
    expect(overWords(exercisesOn(US)[0]!.after, "us")).toBeNull();
  });
});

import { bagsAtHeight, type LessonShape, lessonShape } from "./lesson-shape.ts";
import type { LessonChoice, TeachingGround } from "./teaching-ground.ts";

/** What one exercise changes, and what it is about. */
export type ExerciseKind = "river" | "slope" | "base" | "freeboard" | "average";

/** A question whose answer the engine calculates. */
export interface Exercise {
  readonly kind: ExerciseKind;
  readonly before: LessonShape;
  readonly after: LessonShape;
  /** Whether bags of the whole line are the answer, or those of one foot or meter at the station that is read. */
  readonly asks: "whole-line" | "per-length";
}

/** The line counted as if it were of its average height all along. */
export interface ByAverage {
  readonly heightM: number;
  /** Bags of the whole line, not rounded. */
  readonly bags: number;
}

interface Change {
  readonly kind: ExerciseKind;
  readonly change: (teaching: TeachingGround) => Partial<LessonChoice>;
}

const STEEPER = { slope: 0.025 };

const CHANGES: readonly Change[] = [
  { kind: "river", change: ({ first }) => ({ riverM: first.riverM + 0.8 * first.freeboardM }) },
  { kind: "slope", change: () => STEEPER },
  { kind: "base", change: () => ({ baseRatio: 2 }) },
  { kind: "freeboard", change: ({ first }) => ({ freeboardM: 2 * first.freeboardM }) },
  { kind: "average", change: () => STEEPER },
];

/** The exercises of a teaching ground, in order; each starts from the same levee. */
export function exercisesOn(teaching: TeachingGround): readonly Exercise[] {
  const before = lessonShape(teaching, teaching.first);
  return CHANGES.map(({ kind, change }) => ({
    kind,
    before,
    after: lessonShape(teaching, { ...teaching.first, ...change(teaching) }),
    asks: kind === "average" ? "whole-line" : "per-length",
  }));
}

/** Counts a line by its average height: what is wrong with that is what the last exercise is about. */
export function byAverage(shape: LessonShape): ByAverage {
  const heightM = (shape.startHeightM + shape.endHeightM) / 2;
  return { heightM, bags: bagsAtHeight(shape, heightM) * shape.line.totals.lengthM };
}

/** The answer in the unit it is asked in: bags of the line, or bags per foot or meter; not rounded. */
export function answerOf(exercise: Exercise, unitM: number): number {
  const { after, asks } = exercise;
  return asks === "whole-line" ? after.lineBags : after.bagsPerM * unitM;
}

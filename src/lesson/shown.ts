import type { LessonShape } from "../../shared/lesson/lesson-shape.ts";
import type { TeachingGround } from "../../shared/lesson/teaching-ground.ts";

/** What the lesson shows: a shape, the one before it, and whether the new one may be seen yet. */
export interface Shown {
  readonly teaching: TeachingGround;
  readonly shape: LessonShape;
  readonly before: LessonShape | null;
  /** False while the class is to predict: what follows from the new shape is a question mark. */
  readonly isShown: boolean;
}

/** A part of the lesson that draws: what is shown, and the size of its type. */
export interface Drawn extends Shown {
  readonly typePx: number;
}

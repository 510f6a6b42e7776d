import { answerOf, byAverage, type Exercise, type ExerciseKind } from "../lesson/exercises.ts";
import type { TeachingGround } from "../lesson/teaching-ground.ts";
import { formatCount, lengthFrom, lengthIn, lengthUnit } from "../units.ts";
import { heightWords, lengthName, shortFigure, slopeFigure, stationWords } from "./lesson.ts";
import { unitsOf } from "./units.ts";

/** What the strip of the exercises says. */
export const PREDICT = {
  youSay: "You say",
  youSaid: "You said",
  takes: "It takes",
  overLimit: "over the limit",
  show: "Show",
  next: "Next",
  done: "Explore",
  exercises: "Exercises",
} as const;

/** `Exercise 2`, for one counted from 0. */
export function exerciseName(index: number): string {
  return `Exercise ${index + 1}`;
}

/** The question of an exercise. */
export function questionWords(teaching: TeachingGround, exercise: Exercise): string {
  const { system } = teaching;
  const { before, after, kind } = exercise;
  const unit = lengthUnit(system);
  const fall = `${slopeFigure(after.choice.slope)} ${unit} in 100 ${unit}`;
  const perLength = `How many bags per ${lengthName(system)} at ${stationWords(after.choice.stationM, system)}?`;
  const length = (m: number) => `${shortFigure(lengthIn(m, system))} ${unit}`;
  switch (kind) {
    case "river":
      return `The river now comes ${length(after.choice.riverM - before.choice.riverM)} higher, to ${unitsOf(system).elevation(after.choice.riverM)}. ${perLength}`;
    case "slope":
      return `The ground now falls ${fall}, not ${slopeFigure(before.choice.slope)}. ${perLength}`;
    case "base":
      return `The base is now ${shortFigure(after.choice.baseRatio)} times the height, not ${shortFigure(before.choice.baseRatio)}. ${perLength}`;
    case "freeboard":
      return `The freeboard is now ${length(after.choice.freeboardM)}, not ${shortFigure(lengthIn(before.choice.freeboardM, system))}. ${perLength}`;
    case "average": {
      const average = byAverage(after);
      return `The ground falls ${fall}. At its average height, ${heightWords(average.heightM, system)}, the whole line takes ${formatCount(average.bags)} bags. How many does it take?`;
    }
  }
}

/** The answer as a class says it, whole bags. */
export function answerWords(teaching: TeachingGround, exercise: Exercise): string {
  return formatCount(answerOf(exercise, lengthFrom(1, teaching.system)));
}

const REMEMBER: Readonly<Record<Exclude<ExerciseKind, "freeboard">, string>> = {
  river: "A quarter more height takes half again the bags.",
  slope: "Half again the height takes twice the bags.",
  base: "A third fewer bags, and no base left to raise it on.",
  average: "The average height is not the average bags.",
};

/** The one sentence to remember. */
export function rememberWords({ system, first }: TeachingGround, { kind }: Exercise): string {
  if (kind !== "freeboard") return REMEMBER[kind];
  return system === "us"
    ? "The top foot costs the most."
    : `The top ${heightWords(first.freeboardM, system)} costs the most.`;
}

/** What a person is told who typed no figure. */
export function noFigureWords(teaching: TeachingGround, exercise: Exercise): string {
  const isUs = teaching.system === "us";
  return exercise.asks === "whole-line"
    ? "Type bags for the whole line, such as 5,000"
    : `Type bags per ${lengthName(teaching.system)}, such as ${isUs ? 80 : 250}`;
}

/** What is read aloud once the answer is shown. */
export function shownWords(teaching: TeachingGround, exercise: Exercise): string {
  const over = exercise.after.isOver ? `, ${PREDICT.overLimit}` : "";
  return `${PREDICT.takes} ${answerWords(teaching, exercise)}${over}. ${rememberWords(teaching, exercise)}`;
}

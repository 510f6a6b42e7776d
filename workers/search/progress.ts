import type { SearchStep } from "./types.ts";

export const SHAPING: SearchStep = { share: 0, doing: "Shaping the line" };

/** A part of a search whose shares run from 0 to 1, told as shares from `from` to `to` of the whole. */
export function* partOf<T>(
  steps: Generator<SearchStep, T>,
  from: number,
  to: number,
): Generator<SearchStep, T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield { share: from + (to - from) * step.value.share, doing: step.value.doing };
  }
}

/** The result of steps taken in one go. */
export function driven<T>(steps: Generator<SearchStep, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The result of steps, or null once the time is up. */
export function* unlessLate<T>(
  steps: Generator<SearchStep, T>,
  outOfTime: () => boolean,
): Generator<SearchStep, T | null> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (outOfTime()) return null;
    yield step.value;
  }
}

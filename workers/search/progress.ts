import type { SearchStep } from "./types.ts";

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

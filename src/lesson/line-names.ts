import { bare, beforeWords, LESSON } from "../../shared/words/lesson.ts";
import { apart } from "../drawing/profile/end-labels.ts";
import type { LessonFrame } from "./profile-frame.ts";
import type { Drawn } from "./shown.ts";

/** What a line is called right of the plot; `y` is the middle of its words, pixels. */
export interface LineName {
  readonly kind: "top" | "river" | "before" | "limit" | "ground";
  readonly text: string;
  readonly y: number;
}

const SAME_M = 1e-6;

/** The names of the lines at their right ends, in order of height and none over another. */
export function lineNames(drawn: Drawn, frame: LessonFrame): readonly LineName[] {
  const { teaching, shape, before, typePx } = drawn;
  const { system } = teaching;
  const end = (m: { readonly line: Drawn["shape"]["line"] }) => m.line.walk.groundM.at(-1)!;
  const name = (kind: LineName["kind"], m: number, text: string, down = 0): LineName => ({
    ...{ kind, text },
    y: frame.y(m) + down * typePx,
  });
  const level = (m: number) => bare(m, system);
  const names = [
    name("top", shape.topM, LESSON.topOfLevee, -0.1),
    name("top", shape.topM, level(shape.topM)),
    name("river", shape.choice.riverM, `River ${level(shape.choice.riverM)}`),
    name("ground", end(shape), `Ground ${level(end(shape))}`),
  ];
  const limitM = shape.topM - shape.practice.limitM;
  if (frame.y(limitM) <= frame.plot.bottom) names.push(name("limit", limitM, LESSON.limit));
  for (const [was, now] of before
    ? [
        [before.topM, shape.topM],
        [end(before), end(shape)],
      ]
    : []) {
    if (Math.abs(was! - now!) > SAME_M) names.push(name("before", was!, beforeWords(level(was!))));
  }
  return apart(
    names.sort((a, b) => a.y - b.y),
    frame.plot.top + 0.4 * typePx,
    frame.plot.bottom - 0.2 * typePx,
    1.12 * typePx,
  );
}

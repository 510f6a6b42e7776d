import type { Stretch } from "./stretch.ts";
import { distanceWords, stretchWords } from "./words.ts";

/** More stretches than this are no list that anybody reads. Source: judgement. */
export const MOST_TOLD = 5;
/** How many of the worst stay apart where the others are told in one. */
export const KEPT_APART = 3;

/** One thing to tell of a stretch, or of several for which the worst stands. */
export interface Told {
  readonly stretch: Stretch;
  /** Where it runs, to begin a sentence with. */
  readonly where: string;
  /** Length objected to, of all stretches it tells of, metres. */
  readonly lengthM: number;
}

/** Stretches one by one; where they are many, the worst few and one word for all the others. */
export function toldOf(
  stretches: readonly Stretch[],
  severityAt: (sample: number) => number,
): Told[] {
  if (stretches.length <= MOST_TOLD) return stretches.map(alone);
  const fromWorst = [...stretches].sort((a, b) => severityAt(b.worst) - severityAt(a.worst));
  const others = fromWorst.slice(KEPT_APART);
  return [
    ...fromWorst.slice(0, KEPT_APART).map(alone),
    inOne(others, `${others.length} more stretches`),
  ];
}

/** All stretches as one thing to tell; none where there are none. */
export function toldAsOne(
  stretches: readonly Stretch[],
  severityAt: (sample: number) => number,
): Told[] {
  if (stretches.length <= 1) return stretches.map(alone);
  const fromWorst = [...stretches].sort((a, b) => severityAt(b.worst) - severityAt(a.worst));
  return [inOne(fromWorst, `${stretches.length} stretches`)];
}

function alone(stretch: Stretch): Told {
  return { stretch, where: stretchWords(stretch), lengthM: stretch.lengthM };
}

function inOne(fromWorst: readonly Stretch[], count: string): Told {
  const stretch = fromWorst[0]!;
  const lengthM = fromWorst.reduce((sum, each) => sum + each.lengthM, 0);
  const where = `${distanceWords(lengthM)} in ${count}, the worst ${stretchWords(stretch)}`;
  return { stretch, where, lengthM };
}

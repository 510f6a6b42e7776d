import type { Stretch } from "./stretch.ts";
import { type Where, whereOf } from "./where.ts";

/** More stretches than this are too long a list to read. Source: judgement. */
export const MOST_LISTED = 5;
/** How many of the worst are listed on their own where the others are put in one. */
export const LISTED_ALONE = 3;

/** One stretch to list, or several in one with the worst for its place. */
export interface Listed {
  readonly stretch: Stretch;
  readonly where: Where;
  /** Length of all its stretches, without the short gaps in them, metres. */
  readonly lengthM: number;
}

/** Stretches one by one; where they are many, the worst few and all others in one. */
export function listStretches(
  stretches: readonly Stretch[],
  severityAt: (sample: number) => number,
): Listed[] {
  if (stretches.length <= MOST_LISTED) return stretches.map(alone);
  const fromWorst = [...stretches].sort((a, b) => severityAt(b.worst) - severityAt(a.worst));
  return [
    ...fromWorst.slice(0, LISTED_ALONE).map(alone),
    inOne(fromWorst.slice(LISTED_ALONE), true),
  ];
}

/** All stretches in one; none where there are none. */
export function listInOne(
  stretches: readonly Stretch[],
  severityAt: (sample: number) => number,
): Listed[] {
  if (stretches.length <= 1) return stretches.map(alone);
  return [
    inOne(
      [...stretches].sort((a, b) => severityAt(b.worst) - severityAt(a.worst)),
      false,
    ),
  ];
}

function alone(stretch: Stretch): Listed {
  return { stretch, where: whereOf(stretch), lengthM: stretch.lengthM };
}

function inOne(fromWorst: readonly Stretch[], isRest: boolean): Listed {
  const stretch = fromWorst[0]!;
  const lengthM = fromWorst.reduce((sum, each) => sum + each.lengthM, 0);
  const count = fromWorst.length;
  const where: Where = { at: "stretches", count, isRest, lengthM, worst: whereOf(stretch) };
  return { stretch, where, lengthM };
}

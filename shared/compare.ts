import { isWhole, mayBeBest } from "./completeness.ts";
import type { LevelDoubt } from "./level-doubt.ts";
import type { Totals } from "./sizing-types.ts";

/** What alternatives are compared by, in the order of the table. All SI, less is better. */
export const MEASURES = [
  "lengthM",
  "bags",
  "sandM3",
  "greatestHeightM",
  "lengthOverLimitM",
  "jobPersonHours",
] as const satisfies readonly (keyof Totals)[];

export type Measure = (typeof MEASURES)[number];

export interface ComparedLine {
  readonly id: string;
  readonly values: Readonly<Record<Measure, number>>;
  /** True when all of it is counted: its values are of the whole line. */
  readonly isWhole: boolean;
  /** How many things must be fixed on it. */
  readonly mustFix: number;
  /** This line minus the chosen one; null on that itself, without one, and where either is not counted in full. */
  readonly differences: Readonly<Record<Measure, number>> | null;
  /** Measures in which no line is better of those that are counted in full and have nothing that must be fixed. */
  readonly best: ReadonlySet<Measure>;
}

/** A line to be compared. */
interface Comparable {
  readonly id: string;
  readonly totals: Totals;
  readonly levelDoubt?: LevelDoubt | null;
}

/**
 * Lines side by side with their differences to the chosen one.
 * @param lines results in the order shown
 * @param mustFixOn how many things must be fixed on a line
 */
export function compareLines<T extends Comparable>(
  lines: readonly T[],
  chosenId: string | null,
  mustFixOn: (line: T) => number,
): readonly ComparedLine[] {
  const chosenLine = lines.find(({ id }) => id === chosenId);
  const chosen = chosenLine && isWhole(chosenLine) ? chosenLine.totals : null;
  const ranked = lines.filter((line) => mayBeBest(line, mustFixOn(line)));
  const least = recordOf((measure) => Math.min(...ranked.map((line) => line.totals[measure])));
  return lines.map((line): ComparedLine => {
    const { id, totals } = line;
    const comparable = chosen !== null && isWhole(line) && id !== chosenId;
    const isLeast = (measure: Measure) => totals[measure] <= least[measure];
    return {
      ...{ id, isWhole: isWhole(line), mustFix: mustFixOn(line) },
      values: recordOf((measure) => totals[measure]),
      differences: comparable ? recordOf((measure) => totals[measure] - chosen[measure]) : null,
      best: new Set(ranked.includes(line) ? MEASURES.filter(isLeast) : []),
    };
  });
}

/** The alternative a chosen one is measured against at a glance: the first other one that has a result. */
export function rivalOf<T extends { readonly id: string }>(
  lines: readonly T[],
  chosenId: string | null,
): T | null {
  return lines.find((line) => line.id !== chosenId) ?? null;
}

function recordOf(value: (measure: Measure) => number): Record<Measure, number> {
  return Object.fromEntries(MEASURES.map((measure) => [measure, value(measure)])) as Record<
    Measure,
    number
  >;
}

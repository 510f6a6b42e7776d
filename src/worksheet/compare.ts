import type { Totals } from "../../shared/sizing-types.ts";

/** What alternatives are compared by, in the order of the table. All SI, less is better. */
export const MEASURES = [
  "lengthM",
  "bags",
  "sandM3",
  "greatestHeightM",
  "lengthOverLimitM",
  "jobHours",
] as const satisfies readonly (keyof Totals)[];

export type Measure = (typeof MEASURES)[number];

export interface ComparedLine {
  readonly id: string;
  readonly values: Readonly<Record<Measure, number>>;
  /** This alternative minus the chosen one; null on the chosen one itself and when there is none. */
  readonly differences: Readonly<Record<Measure, number>> | null;
  /** Measures in which no alternative is better. */
  readonly best: ReadonlySet<Measure>;
}

/**
 * Alternatives side by side with their differences to the chosen one.
 * @param lines results in the order shown
 */
export function compareLines(
  lines: readonly { readonly id: string; readonly totals: Totals }[],
  chosenId: string | null,
): readonly ComparedLine[] {
  const chosen = lines.find((line) => line.id === chosenId)?.totals;
  const least = recordOf((measure) => Math.min(...lines.map((line) => line.totals[measure])));
  return lines.map((line) => ({
    id: line.id,
    values: recordOf((measure) => line.totals[measure]),
    differences:
      chosen && line.id !== chosenId
        ? recordOf((measure) => line.totals[measure] - chosen[measure])
        : null,
    best: new Set(MEASURES.filter((measure) => line.totals[measure] <= least[measure])),
  }));
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

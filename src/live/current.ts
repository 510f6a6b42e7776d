import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import { importedByLines } from "./imported-by-lines.ts";
import { lagOf } from "./lag.ts";
import { SIZING } from "./parts.ts";
import { questionOf } from "./question.ts";
import { sizingFailure } from "./results.ts";
import { uncounted } from "./uncounted.ts";

/** What is to be sized now; null where nothing can be counted. */
export const toSize = questionOf(SIZING, () =>
  uncounted.value ? null : { imported: importedByLines.value },
);

/** What `sized` is of. `isWhole` when it has all that is left out during a drag: stability, time, ranges. */
export const sizedFor = signal<{
  readonly of: typeof toSize.value;
  readonly isWhole: boolean;
} | null>(null);

/** Whether the lines that are shown are sized for the plan as it stands. */
export const sizedIsCurrent: ReadonlySignal<boolean> = computed(
  () => sizedFor.value !== null && sizedFor.value.of === toSize.value,
);

/** The same, with all that is left out during a drag: only then is there a verdict to say. */
export const sizedIsWhole: ReadonlySignal<boolean> = computed(
  () => sizedIsCurrent.value && sizedFor.value?.isWhole === true,
);

/** True while the lines that are shown are of a former plan, and have been for longer than a drag takes a step. */
export const sizedLags: ReadonlySignal<boolean> = lagOf(sizedIsCurrent, sizedFor);

/**
 * Marks the page where its figures are of a former plan, for stale.css: `data-sizing` is `current`, `counting` or
 * `failed`, `data-verdicts` is `current` or `counting`.
 */
export function markStale(root: HTMLElement): () => void {
  return effect(() => {
    const behind = sizingFailure.value ? "failed" : "counting";
    root.dataset.sizing = sizedFor.value && sizedLags.value ? behind : "current";
    root.dataset.verdicts = sizedFor.value && !sizedIsWhole.value ? "counting" : "current";
  });
}

import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import type { GroundSummary } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { plan } from "../document/store.ts";
import { ground } from "./ground.ts";
import { lagOf } from "./lag.ts";
import { type Parts, sameParts, sizingParts } from "./parts.ts";
import { sizingFailure } from "./results.ts";

/** The plan and the ground that an answer of the engine is of. */
export interface Asked {
  readonly plan: Plan;
  readonly on: GroundSummary | null;
}

/** What is asked now. */
export function askedNow(): Asked {
  return { plan: plan.value, on: ground.value };
}

/** True while what is counted for `asked` is so for the plan and the ground as they stand. */
export function isCurrent(asked: Asked): boolean {
  return sameParts(partsOf(asked), partsOf(askedNow()));
}

function partsOf({ plan: of, on }: Asked): Parts {
  return [...sizingParts(of), on];
}

/** What `sized` is of. `isWhole` when it has all that is left out during a drag: stability, time, ranges. */
export const sizedFor = signal<(Asked & { readonly isWhole: boolean }) | null>(null);

/** Whether the lines that are shown are sized for the plan as it stands. */
export const sizedIsCurrent: ReadonlySignal<boolean> = computed(
  () => sizedFor.value !== null && isCurrent(sizedFor.value),
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

import { computed, type ReadonlySignal } from "@preact/signals";
import { isWaterGiven } from "../../shared/stage.ts";
import { missingCrew } from "../../shared/time/crew-inputs.ts";
import type { StepKey } from "../../shared/words/steps.ts";
import { plan } from "../document/store.ts";
import { ground, unitQuestion } from "./ground.ts";
import { planElsewhere } from "./plan-apart.ts";
import { markAsked } from "./uncounted.ts";

/** One of the steps from nothing to a timed line. */
export interface PlanStep {
  readonly key: StepKey;
  readonly isDone: boolean;
}

/** The steps of a plan, in their order. */
export const steps: ReadonlySignal<readonly PlanStep[]> = computed(() => {
  const now = plan.value;
  const isAsked = unitQuestion.value !== null || markAsked.value !== null;
  const isGround = ground.value !== null && !isAsked && !planElsewhere.value;
  return [
    { key: "ground", isDone: isGround },
    { key: "water", isDone: isWaterGiven(now.water) },
    { key: "building", isDone: now.structures.length > 0 },
    { key: "line", isDone: now.alignments.length > 0 },
    { key: "crew", isDone: missingCrew(now).length === 0 },
  ];
});

/** The first step that is not done; null when all are. */
export const nextStep: ReadonlySignal<StepKey | null> = computed(
  () => steps.value.find(({ isDone }) => !isDone)?.key ?? null,
);

import { computed, type ReadonlySignal } from "@preact/signals";
import { type Failure, failureOf } from "../../shared/failure.ts";
import type { LoneValue } from "../../shared/ground-marks.ts";
import { isWaterGiven } from "../../shared/stage.ts";
import { plan } from "../document/store.ts";
import { ground } from "./ground.ts";
import { planElsewhere } from "./plan-apart.ts";

/** The height of the ground that the person is asked about; null when there is none. */
export const markAsked: ReadonlySignal<LoneValue | null> = computed(
  () => ground.value?.marksAsked[0] ?? null,
);

/** Why nothing can be counted: without elevation data, on the one that is open, or without a stage; null when it can. */
export const uncounted: ReadonlySignal<Failure | null> = computed(() => {
  if (!ground.value) return failureOf("ground/none");
  if (planElsewhere.value) return planElsewhere.value;
  if (markAsked.value) return failureOf("ground/mark-unknown", { mark: markAsked.value });
  return isWaterGiven(plan.value.water) ? null : failureOf("plan/no-water");
});

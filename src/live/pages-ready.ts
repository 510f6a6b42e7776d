import { computed, type ReadonlySignal } from "@preact/signals";
import type { Failure } from "../../shared/failure.ts";
import { sizedIsCurrent, sizedIsWhole } from "./current.ts";
import { ground } from "./ground.ts";
import { sizingFailure, tracingFailure } from "./results.ts";
import { isSimulating } from "./simulated.ts";
import { waterNow } from "./water-now.ts";

/**
 * Whether pages and files may leave: sizes, checks, water and what the ground may be are all of the plan as it stands. `counting` until
 * then; the failure when the plan as it stands cannot be counted.
 */
export const pagesReady: ReadonlySignal<"ready" | "counting" | Failure> = computed(() => {
  if (sizingFailure.value && !sizedIsCurrent.value) return sizingFailure.value;
  if (!sizedIsWhole.value || isSimulating.value) return "counting";
  const isTraced = waterNow.value !== null || tracingFailure.value !== null;
  return ground.value === null || isTraced ? "ready" : "counting";
});

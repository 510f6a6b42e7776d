import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { type Apart, apartFrom } from "../../shared/apart.ts";
import type { Failure } from "../../shared/failure.ts";
import { elsewhere } from "../../shared/words/apart.ts";
import { plan } from "../document/store.ts";
import { ground } from "./ground.ts";

/** How far the plan lies from the elevation data that is open; null when they overlap or one is not there. */
const planApart: ReadonlySignal<Apart | null> = computed(() => {
  const bounds = ground.value?.bounds;
  return bounds ? apartFrom(plan.value, bounds) : null;
});

/** That nothing can be worked out because the elevation data lies elsewhere; null when it does not. */
export const planElsewhere: ReadonlySignal<Failure | null> = computed(() =>
  planApart.value ? elsewhere(planApart.value) : null,
);

/** Whether the plan came after the elevation data: then it is that data which is in the wrong place. */
export const planCameLast = signal(false);

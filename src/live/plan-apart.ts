import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import { type Apart, apartBy, gapTo } from "../../shared/apart.ts";
import { type Failure, failureOf } from "../../shared/failure.ts";
import { plan } from "../document/store.ts";
import { ground } from "./ground.ts";

const gap = computed(() => {
  const bounds = ground.value?.bounds;
  return bounds ? gapTo(plan.value, bounds) : null;
});
/** How far the plan lies from the elevation data that is open; null where they overlap, and until it is calculated. */
const apart = signal<Apart | null>(null);
effect(() => {
  const now = gap.value;
  apart.value = null;
  if (!now) return;
  apartBy(now).then(
    (by) => {
      if (gap.peek() === now) apart.value = by;
    },
    () => undefined,
  );
});

/** That nothing can be worked out because the elevation data lies elsewhere; null when it does not. */
export const planElsewhere: ReadonlySignal<Failure | null> = computed(() =>
  gap.value ? failureOf("plan/elsewhere", { apart: apart.value }) : null,
);

/** Whether the plan came after the elevation data: then it is that data which is in the wrong place. */
export const planCameLast = signal(false);

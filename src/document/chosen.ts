import { computed, type ReadonlySignal } from "@preact/signals";
import type { Alignment } from "../../shared/plan.ts";
import { plan } from "./store.ts";

/** The line that totals, profile and cross-section are of; null when there is none. */
export const chosenId: ReadonlySignal<string | null> = computed(
  () => plan.value.chosenId ?? plan.value.alignments[0]?.id ?? null,
);

/** The alternative that the worksheet speaks of; null when there is none. */
export const chosenAlternative: ReadonlySignal<Alignment | null> = computed(
  () => plan.value.alignments.find((each) => each.id === chosenId.value) ?? null,
);

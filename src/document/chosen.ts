import { computed, type ReadonlySignal } from "@preact/signals";
import type { Alignment } from "../../shared/plan.ts";
import { chosenId } from "../live/state.ts";
import { plan } from "./store.ts";

/** The alternative that the worksheet speaks of; null when there is none. */
export const chosenAlternative: ReadonlySignal<Alignment | null> = computed(
  () => plan.value.alignments.find((each) => each.id === chosenId.value) ?? null,
);

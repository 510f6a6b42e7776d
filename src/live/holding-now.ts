import { computed, type ReadonlySignal } from "@preact/signals";
import type { Holding } from "../../shared/holding/types.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { chosenLine } from "./results.ts";

/** What is known of the chosen line's holding. */
export interface HoldingNow {
  readonly line: SizedLine;
  readonly holding: Holding;
  /** False while the line is being changed: the figures are the last ones that were worked out. */
  readonly isSettled: boolean;
}

let last: { readonly id: string; readonly holding: Holding } | null = null;

/** Holding of the chosen line, the last known of it while a drag is under way; null before the first. */
export const holdingNow: ReadonlySignal<HoldingNow | null> = computed(() => {
  const line = chosenLine.value;
  if (!line) return null;
  if (line.holding) {
    last = { id: line.id, holding: line.holding };
    return { line, holding: line.holding, isSettled: true };
  }
  return last?.id === line.id ? { line, holding: last.holding, isSettled: false } : null;
});

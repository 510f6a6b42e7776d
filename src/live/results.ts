import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Failure } from "../../shared/failure.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { WaterTrace } from "../../shared/water-types.ts";
import { chosenId } from "../document/chosen.ts";

/** Latest whole result per alternative id. */
export const sized = signal<ReadonlyMap<string, SizedLine>>(new Map());
export const sizingFailure = signal<Failure | null>(null);
/** The water as it was followed last, to which question and with which line chosen; see `waterNow`. */
export const traced = signal<{
  readonly trace: WaterTrace;
  readonly of: object;
  readonly chosenId: string | null;
} | null>(null);
/** Why the water could not be followed for the plan as it is. */
export const tracingFailure = signal<Failure | null>(null);
export const chosenLine: ReadonlySignal<SizedLine | null> = computed(() => {
  const id = chosenId.value;
  return id === null ? null : (sized.value.get(id) ?? null);
});

import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { LonLat } from "../../shared/plan.ts";
import { engine } from "../engine.ts";
import { ground } from "./ground.ts";
import { latest } from "./latest.ts";

export interface Pointed {
  readonly at: LonLat;
  /** Metres. Null where there is no ground data; undefined until the engine has answered. */
  readonly groundM: number | null | undefined;
}

const place = signal<LonLat | null>(null);
const probes = latest((at: LonLat, signal) => engine.probe({ at }, { signal }));

/** The place under the pointer, or tapped last; null when the pointer is not over the map. */
export const pointed: ReadonlySignal<Pointed | null> = computed(
  () => place.value && { at: place.value, groundM: probes.answered.value?.answer.groundM },
);

/** Points at a place of the map, or at none. */
export function pointAt(at: LonLat | null): void {
  place.value = at;
  if (at && ground.peek()) probes.want(at);
}

import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Failure } from "../../shared/failure.ts";
import { accuracyOf, type GroundAccuracy, longestCellM } from "../../shared/ground-accuracy.ts";
import type { LoneValue } from "../../shared/ground-marks.ts";
import type { GroundSummary, HeightRange } from "../../shared/messages.ts";
import { plan } from "../document/store.ts";

/** Ground as opened; null before the first raster. */
export const ground = signal<GroundSummary | null>(null);
/** Why the elevation data chosen last could not be opened; null when it could. */
export const groundFailure = signal<Failure | null>(null);
/** How many openings of elevation data are under way. */
export const groundsOpening = signal(0);
/** The files of `ground`, side-cars too. */
export const openFiles = signal<readonly File[]>([]);
/** A height that may mark missing data, met while `ground` was read; null when there was none. */
export const markMet = signal<LoneValue | null>(null);
/** How good the heights of the ground are taken to be; before any is open, as for lidar. */
export const accuracyNow: ReadonlySignal<GroundAccuracy> = computed(() => {
  return accuracyOf(plan.value.ground, longestCellM(ground.value));
});
/** Files waiting for the person to say in which unit their heights are, and what their heights are as stored. */
export const unitQuestion = signal<{
  readonly files: readonly File[];
  /** Why it is asked; null where the person asked for the question again. */
  readonly failure: Failure | null;
  readonly range: HeightRange | null;
} | null>(null);

import { computed, type ReadonlySignal } from "@preact/signals";
import { type BandLevels, bandLevels } from "../../../shared/buildings/band-levels.ts";
import { isWaterGiven, waterElevationAtGauge } from "../../../shared/stage.ts";
import { plan } from "../../document/store.ts";
import { accuracyNow } from "../ground.ts";

/** Crests of the low, the likely and the high forecast, as elevations at the gauge; null without these bands. */
export const bandsNow: ReadonlySignal<BandLevels | null> = computed(() => bandLevels(plan.value));

/** The sized-for water and what the error of the ground makes of it, elevations at the gauge; null before it is given. */
export const offNow: ReadonlySignal<{
  readonly lowM: number;
  readonly highM: number;
  readonly byM: number;
} | null> = computed(() => {
  const { water } = plan.value;
  if (!isWaterGiven(water)) return null;
  const at = waterElevationAtGauge(water);
  const byM = accuracyNow.value.rmseM;
  return { lowM: at - byM, highM: at + byM, byM };
});

/** Water at the gauge for which each line is counted too, meters, rising. */
export const levelsToCount: ReadonlySignal<readonly number[]> = computed(() => {
  const bands = bandsNow.value;
  const off = offNow.value;
  const levels = [...(bands ? Object.values(bands) : []), ...(off ? [off.lowM, off.highM] : [])];
  return [...new Set(levels)].sort((a, b) => a - b);
});

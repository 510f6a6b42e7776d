import { computed, type ReadonlySignal } from "@preact/signals";
import { DEFAULT_WATER } from "../../shared/defaults.ts";
import { plan } from "../document/store.ts";
import { ground } from "./ground.ts";

/** Whether somebody has said how high the water comes: what a new plan starts from is nobody's. */
export const waterIsGiven: ReadonlySignal<boolean> = computed(() => {
  const { by, stageM, gaugeZeroM, elevationM } = plan.value.water;
  if (by === "stage") {
    return stageM !== DEFAULT_WATER.stageM || gaugeZeroM !== DEFAULT_WATER.gaugeZeroM;
  }
  return elevationM !== DEFAULT_WATER.elevationM && elevationM !== ground.value?.lowestM;
});

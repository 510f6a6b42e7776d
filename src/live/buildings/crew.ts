import { computed, type ReadonlySignal } from "@preact/signals";
import { withCrew } from "../../../shared/buildings/line-times.ts";
import type { Sweep } from "../../../shared/buildings/shown-states.ts";
import { lineCrewOf, type Workers, workersOf } from "../../../shared/buildings/stock-settings.ts";
import { plan } from "../../document/store.ts";
import { sweepShown, sweepWhole } from "./checking.ts";
import { stock } from "./stock.ts";
import { untilWaterH, workStart } from "./times.ts";

/** Who works: those of the stock, else the plan's; null where nobody typed how many. */
export const workersNow: ReadonlySignal<Workers | null> = computed(() =>
  workersOf(stock.value, plan.value.practice.people),
);

/** Most people on one line at a time; null where nobody typed how many there are. */
export const onOneLine: ReadonlySignal<number | null> = computed(() => {
  const workers = workersNow.value;
  if (!workers) return null;
  return Math.min(stock.value.mostOnOneLine, Math.floor(workers.people * workers.atWorkShare));
});

/** A check with latest starts and "too late" as the people make them that there are now. */
function timed(sweep: Sweep | null): Sweep | null {
  if (!sweep) return null;
  const startAtS = workStart.value?.atS ?? null;
  return withCrew(sweep, lineCrewOf(stock.value, workersNow.value, startAtS, untilWaterH.value));
}

/** What the check found, as far as it is shown. */
export const sweepTimed: ReadonlySignal<Sweep | null> = computed(() => timed(sweepShown.value));

/** What is known of all listed buildings as they are now; null until all are checked. */
export const wholeTimed: ReadonlySignal<Sweep | null> = computed(() => timed(sweepWhole.value));

/** Whether any line can be said to be too late: who works and by when are known. */
export const isTimeKnown: ReadonlySignal<boolean> = computed(() => {
  if (workersNow.value === null) return false;
  if (untilWaterH.value !== null) return true;
  return [...(sweepShown.value?.checked.values() ?? [])].some(
    ({ firstWetAtS, closedByAtS }) => firstWetAtS !== null || closedByAtS !== null,
  );
});

import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Plan, Water } from "../../shared/plan.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import { type RiverClock, riverClock } from "../../shared/time/river-clock.ts";
import type { HourRow, LineTime } from "../../shared/time/types.ts";
import type { WaterTrace } from "../../shared/water-types.ts";
import { chosenId } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { ground } from "./ground.ts";
import { WATER } from "./parts.ts";
import { questionOf } from "./question.ts";
import { chosenLine } from "./results.ts";
import { uncounted } from "./uncounted.ts";

/** The moment of the forecast that is looked at, hours from the start of work; null when none is. */
export const momentH = signal<number | null>(null);

/** The water as it was followed last for a moment, and to which question. */
export const momentTraced = signal<{ readonly trace: WaterTrace; readonly of: object } | null>(
  null,
);

/** The plan's likely forecast on the clock of the work; null without a forecast. */
export const riverNow: ReadonlySignal<RiverClock | null> = computed(() => riverClock(plan.value));

/** Forecast water at the gauge at that moment, elevation in metres; null when no moment is looked at. */
export const levelAtMomentM: ReadonlySignal<number | null> = computed(() => {
  const levelM = momentH.value === null ? null : riverNow.value?.levelAtH(momentH.value);
  return levelM === undefined || levelM === null || Number.isNaN(levelM) ? null : levelM;
});

/** Time of the chosen line; while it is being worked out anew, as it was, and stale. Null before the first. */
export const timeNow: ReadonlySignal<{
  readonly time: LineTime;
  readonly isStale: boolean;
} | null> = computed(lastTime());

/** State of the work at the moment looked at, by the whole hour; null when none is looked at. */
export const hourAtMoment: ReadonlySignal<HourRow | null> = computed(() => {
  if (levelAtMomentM.value === null || momentH.value === null) return null;
  return timeNow.value?.time.hours[Math.max(0, Math.floor(momentH.value))] ?? null;
});

const water: ReadonlySignal<Water> = computed(() => plan.value.water);
/** The water of the moment looked at, with its freeboard below the same top of levee; null when none is. */
const waterAtMoment: ReadonlySignal<Water | null> = computed(() => {
  if (levelAtMomentM.value === null) return null;
  const { stageM, elevationM, freeboardM } = water.value;
  const riseM = levelAtMomentM.value - waterElevationAtGauge(water.value);
  return {
    ...water.value,
    stageM: stageM + riseM,
    elevationM: elevationM + riseM,
    freeboardM: freeboardM - riseM,
  };
});

/**
 * The plan with the water of the moment looked at, its crest where it is; without a chosen line when that is lower
 * than the water by then. The plan itself when no moment is looked at.
 */
export const planAtMoment: ReadonlySignal<Plan> = computed(() => {
  if (!waterAtMoment.value) return plan.value;
  const chosen = standsAtMoment.value ? chosenId.value : null;
  return { ...plan.value, water: waterAtMoment.value, chosenId: chosen };
});

/** What is to be followed of the water at the moment looked at; null when none is. */
export const toTraceAtMoment = questionOf(
  WATER,
  () => (waterAtMoment.value && ground.value ? { chosenId: planAtMoment.value.chosenId } : null),
  planAtMoment,
);

/** Whether the chosen line stands above the water all along at the moment looked at; false while no crew is known. */
export const standsAtMoment: ReadonlySignal<boolean> = computed(
  () => timeNow.value?.time.missing.length === 0 && (hourAtMoment.value?.leastAheadM ?? 0) >= 0,
);

/** Ends the look at a moment: map and profile show the plan's water again. */
export function leaveMoment(): void {
  momentH.value = null;
}

function lastTime() {
  let last: { readonly id: string; readonly time: LineTime } | null = null;
  return () => {
    const line = chosenLine.value;
    if (uncounted.value) last = null;
    else if (line?.time) last = { id: line.id, time: line.time };
    if (!last || last.id !== chosenId.value) return null;
    return { time: last.time, isStale: last.time !== line?.time };
  };
}

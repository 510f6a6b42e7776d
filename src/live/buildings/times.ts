import { computed, type ReadonlySignal } from "@preact/signals";
import { hoursUntil, isByOwnWater } from "../../../shared/buildings/stock-settings.ts";
import { HOUR_S } from "../../../shared/constants.ts";
import { timeOf } from "../../../shared/defaults.ts";
import { type Moment, momentOf } from "../../../shared/time/forecast-time.ts";
import type { UnitSystem } from "../../../shared/units.ts";
import { momentWords } from "../../../shared/words/clock.ts";
import { plan } from "../../document/store.ts";
import { sweepShown } from "./checking.ts";
import { stock } from "./stock.ts";

/** Start of the work as the plan has it; null until someone has typed it. */
export const workStart: ReadonlySignal<Moment | null> = computed(() => {
  const { startAt } = timeOf(plan.value);
  return startAt === null ? null : momentOf(startAt);
});

/** Minutes of the forecast's clock ahead of UTC; null where it states none. */
export const clockOffsetMin: ReadonlySignal<number | null> = computed(() => {
  const first = timeOf(plan.value).forecast?.rows[0];
  const moment = first ? momentOf(first.at) : workStart.value;
  return moment?.offsetMin ?? null;
});

/** Hours from the start of work to the first water at any building; as typed, else from the forecast; null where not known. */
export const untilWaterH: ReadonlySignal<number | null> = computed(
  () => stock.value.untilWaterH ?? forecastUntilH.value,
);

/** The same from the forecast alone. */
const forecastUntilH: ReadonlySignal<number | null> = computed(() => {
  const checked = [...(sweepShown.value?.checked.values() ?? [])];
  return firstWaterH(checked.map(({ firstWetAtS }) => firstWetAtS));
});

/** Hours from the start of work to the first of some moments, to a quarter and never after it; null where not known. */
export function firstWaterH(momentsS: Iterable<number | null>): number | null {
  const hours = hoursUntil(workStart.value?.atS ?? null, momentsS);
  return hours === null ? null : Math.floor(hours * 4) / 4;
}

/** `Thu 06:00`: when the first water comes; null where no start of work is known. */
export function firstWaterWords(system: UnitSystem): string | null {
  return momentAfter(untilWaterH.value, system);
}

/** When all lines must be closed: so many hours before the first water; null where that is not known, or each has its own. */
export function closedByWords(system: UnitSystem): string | null {
  const until = isByOwnWater(stock.value) ? null : untilWaterH.value;
  return momentAfter(until === null ? null : until - stock.value.closeBeforeH, system);
}

function momentAfter(hours: number | null, system: UnitSystem): string | null {
  const start = workStart.value;
  if (!start || hours === null) return null;
  return momentWords({ ...start, atS: start.atS + hours * HOUR_S }, false, system);
}

import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { BandLevels } from "../../../shared/buildings/band-levels.ts";
import { type BuildingRow, buildingRows, type Said } from "../../../shared/buildings/rows.ts";
import {
  countStates,
  floodedAt,
  isFlooded,
  lowBehindBanks,
  type ShownState,
  type StateCounts,
  type Sweep,
  shownStates,
} from "../../../shared/buildings/shown-states.ts";
import { type SortColumn, type Sorting, sortRows } from "../../../shared/buildings/sort-rows.ts";
import { isWaterGiven, waterElevationAtGauge } from "../../../shared/stage.ts";
import type { BuildingTab } from "../../../shared/words/buildings-table.ts";
import { plan } from "../../document/store.ts";
import { choiceShown } from "./choosing.ts";
import { sweepTimed, wholeTimed } from "./crew.ts";
import { bandsNow } from "./levels.ts";
import { listed } from "./listed.ts";

/** The one state that map and table are narrowed to; null for all. */
export const stateFilter = signal<ShownState | null>(null);
/** The row that is picked: centered on the map and opened in the table. */
export const pickedId = signal<string | null>(null);
const tabChosen = signal<BuildingTab>("chosen");
const NO_SWEEP: Sweep = { checked: new Map(), groups: [] };

/** The check as far as it is shown. */
export const sweepNow: ReadonlySignal<Sweep> = computed(() => sweepTimed.value ?? NO_SWEEP);

/** State of each checked building. */
export const statesNow: ReadonlySignal<ReadonlyMap<string, ShownState>> = computed(() =>
  shownStates(sweepNow.value, choiceShown.value?.choice ?? null),
);

export const countsNow: ReadonlySignal<StateCounts> = computed(() =>
  countStates(statesNow.value.values()),
);

/** Names of the buildings that the water does not reach over the ground and that lie lower than it. */
export const lowBehindNow: ReadonlySignal<readonly string[]> = computed(() => {
  const { water } = plan.value;
  if (!isWaterGiven(water)) return [];
  const { checked } = sweepNow.value;
  const ids = lowBehindBanks({ checked }, waterElevationAtGauge(water));
  return ids.map((id) => checked.get(id)!.name || id);
});

/** How many buildings flood at the crest of each band of the forecast; null before all are checked, and without bands. */
export const bandsFlooded: ReadonlySignal<BandLevels | null> = computed(() => {
  const bands = bandsNow.value;
  const sweep = wholeTimed.value;
  if (!bands || !sweep) return null;
  const at = (levelM: number) => floodedAt(sweep, levelM);
  return { low: at(bands.low), likely: at(bands.likely), high: at(bands.high) };
});

/** The rows of all that is checked. */
export const rowsNow: ReadonlySignal<readonly BuildingRow[]> = computed(() => {
  const said: Said = new Map(listed.value?.buildings.map((each) => [each.id, each]));
  const choice = choiceShown.value?.choice ?? null;
  return buildingRows({ sweep: sweepNow.value, states: statesNow.value, choice, said });
});

/** The tab that is shown: that of the choice only once there is one. */
export const tabNow: ReadonlySignal<BuildingTab> = computed(() =>
  tabChosen.value === "chosen" && !choiceShown.value ? "flooded" : tabChosen.value,
);

/** Without a sort of their own the chosen come by latest start, all others by bags. */
const sortingSet = signal<Sorting | null>(null);
export const sortingNow: ReadonlySignal<Sorting> = computed(
  () =>
    sortingSet.value ?? {
      by: tabNow.value === "chosen" ? "latest-start" : "bags",
      descending: false,
    },
);

/** Sorts by a column; pressed again, the other way. */
export function sortBy(by: SortColumn): void {
  const now = sortingNow.peek();
  sortingSet.value = { by, descending: now.by === by && !now.descending };
}

/** Shows a tab; the filter of the bar is taken off, since it may leave nothing there. */
export function showTab(tab: BuildingTab): void {
  tabChosen.value = tab;
  stateFilter.value = null;
  sortingSet.value = null;
}

/** Narrows map and table to one state; pressed again, to none. */
export function filterBy(state: ShownState): void {
  const isOn = stateFilter.peek() === state;
  stateFilter.value = isOn ? null : state;
  if (isOn) return;
  if (state === "chosen") tabChosen.value = "chosen";
  else tabChosen.value = isFlooded(state) ? "flooded" : "all";
}

/** A list of the table with its own order. */
export interface TableList {
  readonly kind: BuildingTab | "not-chosen";
  readonly rows: readonly BuildingRow[];
}

/** The lists of the tab that is shown: under the chosen those that stock does not reach, fewest bags first. */
export const listsNow: ReadonlySignal<readonly TableList[]> = computed(() => {
  const tab = tabNow.value;
  const filter = stateFilter.value;
  const rows = rowsNow.value;
  const sorted = (of: readonly BuildingRow[]) => sortRows(of, sortingNow.value);
  if (filter !== null) {
    return [{ kind: tab, rows: sorted(rows.filter(({ state }) => state === filter)) }];
  }
  if (tab === "all") return [{ kind: tab, rows: sorted(rows) }];
  if (tab === "flooded") {
    return [{ kind: tab, rows: sorted(rows.filter(({ state }) => isFlooded(state))) }];
  }
  const others = rows.filter(({ state }) => state === "can-be-ringed");
  return [
    { kind: tab, rows: sorted(rows.filter(({ state }) => state === "chosen")) },
    { kind: "not-chosen", rows: sortRows(others, { by: "bags", descending: false }) },
  ];
});

/** The row that is picked, as long as it is there. */
export const pickedRow: ReadonlySignal<BuildingRow | null> = computed(
  () => rowsNow.value.find(({ id }) => id === pickedId.value) ?? null,
);

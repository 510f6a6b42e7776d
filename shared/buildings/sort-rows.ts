import type { BuildingRow } from "./rows.ts";
import { SHOWN_STATES } from "./shown-states.ts";
import type { Priority } from "./types.ts";

/** Columns of the table of buildings by which it can be sorted. */
export const SORT_COLUMNS = [
  "name",
  "floor",
  "depth",
  "first-wet",
  "bags",
  "height",
  "person-hours",
  "latest-start",
  "priority",
] as const;

export type SortColumn = (typeof SORT_COLUMNS)[number];

export interface Sorting {
  readonly by: SortColumn;
  readonly descending: boolean;
}

const PRIORITIES: Readonly<Record<Priority, number>> = { first: 0, "": 1, never: 2 };

/** Names with numbers in them as people count: `9 Main St` before `12 Main St`. */
const names = new Intl.Collator("en-US", { numeric: true, sensitivity: "base" });

const FIGURES: Readonly<
  Record<Exclude<SortColumn, "name">, (row: BuildingRow) => number | null | undefined>
> = {
  floor: ({ floorM }) => floorM,
  depth: ({ depthM }) => depthM,
  "first-wet": ({ firstWetAtS }) => firstWetAtS,
  bags: ({ line }) => line?.bags,
  height: ({ line }) => line?.greatestHeightM,
  "person-hours": ({ line }) => line?.personHours,
  "latest-start": ({ latestStartAtS }) => latestStartAtS,
  priority: ({ priority }) => PRIORITIES[priority],
};

/** Rows in order; what is not known comes last either way, and equals by state, then name. */
export function sortRows(
  rows: readonly BuildingRow[],
  { by, descending }: Sorting,
): readonly BuildingRow[] {
  const way = descending ? -1 : 1;
  if (by === "name") return [...rows].sort((a, b) => way * byName(a, b));
  const figure = FIGURES[by];
  return [...rows].sort((a, b) => {
    const [of, other] = [figure(a) ?? null, figure(b) ?? null];
    if (of === null || other === null) {
      return of === other ? byState(a, b) : of === null ? 1 : -1;
    }
    return of === other ? byState(a, b) : way * (of - other);
  });
}

function byState(a: BuildingRow, b: BuildingRow): number {
  return SHOWN_STATES.indexOf(a.state) - SHOWN_STATES.indexOf(b.state) || byName(a, b);
}

function byName(a: BuildingRow, b: BuildingRow): number {
  return names.compare(a.name, b.name);
}

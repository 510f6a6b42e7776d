import { type Footprint, type FootprintColumns, floorOf, nameOf } from "../plan-footprints.ts";
import type { Building, Priority } from "./types.ts";

/** Columns that say what is known of each building; null = none does. */
export interface BuildingColumns extends FootprintColumns {
  /** `first` or `never`, or a number of what it counts in the choice. */
  readonly priority: string | null;
}

/** Most that one building counts in the choice. */
const MOST_WEIGHT = 1000;

/** The footprints as buildings to check, ids by their place in the file: the same file gives the same. */
export function buildingsFrom(
  footprints: readonly Footprint[],
  columns: BuildingColumns,
): readonly Building[] {
  return footprints.map((footprint, index) => ({
    id: `building-${index + 1}`,
    name: nameOf(footprint, columns) ?? `Building ${index + 1}`,
    parts: [footprint.corners],
    floorM: floorOf(footprint, columns),
    ...importanceOf(columns.priority === null ? null : footprint.columns[columns.priority]),
  }));
}

/** What a cell says of a building's part in the choice; what is neither a word nor a number above 0 says nothing. */
export function importanceOf(cell: unknown): Pick<Building, "priority" | "weight"> {
  const text = typeof cell === "string" ? cell.trim().toLowerCase() : cell;
  const priority: Priority = text === "first" || text === "never" ? text : "";
  const figure = text === "" || text === null ? Number.NaN : Number(text);
  const weight = figure > 0 && figure <= MOST_WEIGHT ? figure : 1;
  return { priority, weight };
}

import type { BuildingRow } from "../buildings/rows.ts";
import type { SortColumn } from "../buildings/sort-rows.ts";
import type { Priority } from "../buildings/types.ts";
import {
  formatCount,
  formatElevation,
  formatLength,
  grouped,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import { peopleCount } from "./buildings-answer.ts";
import { momentWords } from "./clock.ts";

/** Without people nobody can say when a line must be begun. */
const NO_PEOPLE = "people not typed";

/** Head of a column in two lines: `Floor,` and `ft`. */
export function columnWords(
  column: SortColumn,
  system: UnitSystem,
  people: number | null,
): readonly [string, string] {
  const unit = lengthUnit(system);
  switch (column) {
    case "name":
      return ["", "Building"];
    case "floor":
      return ["Floor,", unit];
    case "depth":
      return ["Water", `depth, ${unit}`];
    case "first-wet":
      return ["First", "wet"];
    case "bags":
      return ["Bags", "to order"];
    case "height":
      return ["Greatest", `height, ${unit}`];
    case "person-hours":
      return ["Person-", "hours"];
    case "latest-start":
      return ["Latest start", people === null ? NO_PEOPLE : `with ${peopleCount(people)}`];
    case "priority":
      return ["", "Priority"];
  }
}

/** Head of the column of ticks. */
export const RING_IT = ["Ring", "it?"] as const;

/** In a cell of which nothing is known. */
const NOTHING = "–";
const NOT_KNOWN = "not known";

/** A cell of the table; an en dash where nothing is known. */
export function cellWords(
  row: BuildingRow,
  column: Exclude<SortColumn, "name" | "priority">,
  { system, offsetMin }: CellAbout,
): string {
  const { floorM, depthM, firstWetAtS, latestStartAtS, line } = row;
  const at = (atS: number | null) =>
    atS === null || !Number.isFinite(atS)
      ? NOTHING
      : momentWords({ atS: quarterDown(atS), offsetMin }, false, system);
  switch (column) {
    case "floor":
      return floorM === null ? NOTHING : grouped(lengthIn(floorM, system), DIGITS[system]);
    case "depth":
      return depthM === null ? NOTHING : grouped(lengthIn(depthM, system), DIGITS[system]);
    case "first-wet":
      return at(firstWetAtS);
    case "bags":
      return line ? formatCount(line.bags) : NOTHING;
    case "height":
      return line ? grouped(lengthIn(line.greatestHeightM, system), DIGITS[system]) : NOTHING;
    case "person-hours":
      return line ? formatCount(Math.round(line.personHours)) : NOTHING;
    case "latest-start":
      return latestStartAtS === null && line ? NOT_KNOWN : at(latestStartAtS);
  }
}

/** Earlier by less than a quarter of an hour: neither forecast nor pace is known closer. */
function quarterDown(atS: number): number {
  return Math.floor(atS / QUARTER_S) * QUARTER_S;
}

const QUARTER_S = 900;

const DIGITS: Readonly<Record<UnitSystem, number>> = { us: 1, metric: 2 };

/** What writing a cell needs beside the row. */
export interface CellAbout {
  readonly system: UnitSystem;
  /** Minutes of the forecast's clock ahead of UTC; null where none is stated. */
  readonly offsetMin: number | null;
}

/** `30 Wharf St and 3 neighbors`. */
export function rowName({ name, members }: Pick<BuildingRow, "name" | "members">): string {
  const others = members.length - 1;
  if (others === 0) return name;
  return others === 1 ? `${name} and 1 neighbor` : `${name} and ${others} neighbors`;
}

/** Under the name of a group: `One ring for 4: 8,632 fewer bags`. */
export function groupWords({ members, savesBags }: BuildingRow): string {
  const inside = `One ring for ${members.length}`;
  return savesBags !== null && savesBags > 0
    ? `${inside}: ${formatCount(savesBags)} fewer bags`
    : inside;
}

/** In an opened row: what the narrow table has no column for. */
export function openedWords(row: BuildingRow, system: UnitSystem): readonly string[] {
  const { floorM, line } = row;
  return [
    floorM === null ? "Floor not known" : `Floor ${formatElevation(floorM, system)}`,
    ...(line ? [`${formatCount(line.leveeBags)} bags in the levee`] : []),
    ...(line ? [`${formatCount(Math.round(line.personHours))} person-hours`] : []),
    ...(line ? [`${formatLength(line.lengthM, system, 0)} long`] : []),
    ...(line && line.lengthOverLimitM > 0
      ? [`${formatLength(line.lengthOverLimitM, system, 0)} over the height limit`]
      : []),
  ];
}

/** A priority in a cell: `First`, an en dash, `Never`. */
export function priorityWords(priority: Priority): string {
  return priority === "first" ? "First" : priority === "never" ? "Never" : NOTHING;
}

/** A priority where it is chosen from a list. */
export function priorityChoice(priority: Priority): string {
  return priority === "" ? "Not set" : priorityWords(priority);
}

/** Names of the table's tabs. */
export type BuildingTab = "chosen" | "flooded" | "all";

export function tabWords(tab: BuildingTab, total: number): string {
  if (tab === "chosen") return "Chosen";
  return tab === "flooded" ? "All that flood" : `All ${formatCount(total)}`;
}

export const TABLE = {
  chosen: "Rings to build",
  soFar: "Checked so far",
  flooded: "Buildings that flood",
  all: "All buildings",
  notChosen: "Can be ringed, not in stock",
  fewestFirst: "fewest bags first",
  none: "No building is in this list.",
  openInPlan: "Open in plan",
  csv: "CSV",
  geojson: "GeoJSON",
  print: "Print",
  clearHand: "Clear ticks set by hand",
  byHand: "Set by hand",
  close: "Close this note",
} as const;

/** Name of a tick: `Ring Clinic`. */
export function tickWords(row: BuildingRow, isByHand: boolean): string {
  return isByHand ? `Ring ${rowName(row)}, set by hand` : `Ring ${rowName(row)}`;
}

/** Beside the title: `9 lines for 13 buildings`. */
export function chosenWords(lines: number, buildings: number): string {
  const of = buildings === 1 ? "1 building" : `${formatCount(buildings)} buildings`;
  return `${lines === 1 ? "1 line" : `${formatCount(lines)} lines`} for ${of}`;
}

/** Beside the title while buildings are checked: `27 of 213 flood`. */
export function floodedSoFarWords(flooded: number, checked: number): string {
  if (checked === 0) return "none checked yet";
  return `${formatCount(flooded)} of ${formatCount(checked)} flood`;
}

/** Over the opened ring on the map: `4 rings (dotted) take 22,393 to order.` */
export function ownRingsWords({ members, savesBags, line }: BuildingRow): string | null {
  if (savesBags === null || line === null) return null;
  return `${members.length} rings (dotted) take ${formatCount(line.bags + savesBags)} to order.`;
}

/** Title of the note on the map: `4 buildings, one ring: 13,761 bags to order`. */
export function ringTitle({ name, members, line }: BuildingRow): string {
  if (!line) return name;
  const bags = `${formatCount(line.bags)} bags to order`;
  return members.length === 1
    ? `${name}: ${bags}`
    : `${members.length} buildings, one ring: ${bags}`;
}

/** In the note on the map: the count that the card of the line has in the plan. */
export function leveeBagsWords({ line }: Pick<BuildingRow, "line">): string | null {
  return line
    ? `${formatCount(line.leveeBags)} of them in the levee, as on its card in the plan.`
    : null;
}

export function greatestHeightWords({ line }: BuildingRow, system: UnitSystem): string | null {
  return line ? `Greatest height ${formatLength(line.greatestHeightM, system)}.` : null;
}

import type { UnitSystem } from "../units.ts";

/** What a column of a forecast holds. */
type Column = "time" | "likely" | "low" | "high";

export interface Columns {
  /** Place of each column, from 0; null for a band that is not there. */
  readonly at: Readonly<Record<Column, number | null>>;
  /** What the first line says the levels are; null when it says neither. */
  readonly levels: "stage" | "elevation" | null;
  /** Unit named in the first line; null when it names none. */
  readonly unit: UnitSystem | null;
  /** Columns that are not used, by name. */
  readonly unused: readonly string[];
}

const NAMES: ReadonlyMap<string, Column> = new Map([
  ...[
    "time",
    "date",
    "datetime",
    "date time",
    "date/time",
    "date time zone",
    "date time offset",
    "valid",
    "valid time",
    "when",
  ].map((name): [string, Column] => [name, "time"]),
  ...["stage", "level", "elevation", "likely", "forecast", "value", "height"].map(
    (name): [string, Column] => [name, "likely"],
  ),
  ...["low", "lower", "min", "minimum", "least"].map((name): [string, Column] => [name, "low"]),
  ...["high", "upper", "max", "maximum", "greatest"].map((name): [string, Column] => [
    name,
    "high",
  ]),
]);
const UNITS: ReadonlyMap<string, UnitSystem> = new Map([
  ...["ft", "feet", "foot"].map((name): [string, UnitSystem] => [name, "us"]),
  ...["m", "metre", "metres", "meter", "meters"].map((name): [string, UnitSystem] => [
    name,
    "metric",
  ]),
]);
const UNIT = new RegExp(String.raw`[\s_]*[([]?\b(${[...UNITS.keys()].join("|")})\b[)\]]?$`);

/** No name of a column is longer. */
const LONGEST_NAME = 60;

/** True for a first line that names columns: it does not begin with a figure. */
export function isHeading(cells: readonly string[]): boolean {
  return !/^\s*["']?\d/.test(cells[0] ?? "");
}

/**
 * Columns as a first line names them, in any order, with a unit if it says one: `time, stage_ft, low_ft`.
 * Null when time or stage is not among them, or one is there twice.
 */
export function namedColumns(cells: readonly string[]): Columns | null {
  const at: Record<Column, number | null> = { time: null, likely: null, low: null, high: null };
  const unused: string[] = [];
  const units = new Set<UnitSystem>();
  let levels: Columns["levels"] = null;
  for (const [index, cell] of cells.entries()) {
    const plain = cell.trim().slice(0, LONGEST_NAME).toLowerCase().replace(/_/g, " ");
    const unit = UNIT.exec(plain);
    const name = (unit ? plain.slice(0, unit.index) : plain).replace(/[^a-z/ ]/g, "").trim();
    const column = NAMES.get(name) ?? NAMES.get(name.replace(/^stage |^level /, ""));
    if (column === undefined) unused.push(cell.trim());
    else if (at[column] !== null) return null;
    else at[column] = index;
    if (column === "likely" && (name === "stage" || name === "elevation")) levels = name;
    if (column !== undefined && column !== "time" && unit) units.add(UNITS.get(unit[1]!)!);
  }
  if (at.time === null || at.likely === null || units.size > 1) return null;
  return { at, levels, unit: [...units][0] ?? null, unused };
}

/** Columns without a first line: time and stage, or time, stage, low and high. Null for other counts. */
export function plainColumns(count: number): Columns | null {
  if (count !== 2 && count !== 4) return null;
  const bands = count === 4 ? { low: 2, high: 3 } : { low: null, high: null };
  return { at: { time: 0, likely: 1, ...bands }, levels: null, unit: null, unused: [] };
}

import type { TextCell } from "../text-rows.ts";
import type { UnitSystem } from "../units.ts";
import type { Levels } from "./types.ts";
import { ZONE_WORDS } from "./zones.ts";

/** What a column of a forecast holds. */
type Column = "time" | "likely" | "low" | "high";

export interface Columns {
  /** Place of each column, from 0; null for a band that is not there. */
  readonly at: Readonly<Record<Column, number | null>>;
  /** What the first line says the levels are; null when it says neither. */
  readonly levels: Levels | null;
  /** Unit named in the first line; null when it names none. */
  readonly unit: UnitSystem | null;
  /** Zone named with the time; null when it names none. */
  readonly zone: string | null;
  /** Columns that are not used, by name. */
  readonly unused: readonly string[];
}

const TIMES = [
  ...["time", "date", "datetime", "date time", "date/time", "date / time", "date time zone"],
  ...["date time offset", "valid", "valid time", "valid date", "forecast time", "when"],
];
const LIKELY = [
  ...["stage", "level", "elevation", "likely", "forecast", "value", "height", "gage height"],
  ...["gauge height", "river stage", "forecast stage", "water level", "pool elevation"],
];
const NAMES: ReadonlyMap<string, Column> = new Map([
  ...TIMES.map((name): [string, Column] => [name, "time"]),
  ...LIKELY.map((name): [string, Column] => [name, "likely"]),
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
const ZONE = new RegExp(String.raw`[\s_]*[([]?\b(${ZONE_WORDS.join("|")})\b[)\]]?$`, "i");
const FLOW = /^[-+]?[\d.,]+\s*(kcfs|cfs|cms|m3\/s|m³\/s|ft3\/s)$/i;

/** No name of a column is longer. */
const LONGEST_NAME = 60;

/** A unit of length behind a figure; null when there is none or it is another. */
export function unitBehind(text: string): UnitSystem | null {
  const word = /\d\s*([a-z]+)\.?$/i.exec(text.trim())?.[1]?.toLowerCase();
  return word === undefined ? null : (UNITS.get(word) ?? null);
}

/**
 * Columns as a first line names them, in any order, with a unit if it says one: `time, stage_ft, low_ft`.
 * Null when time or stage is not among them, or one is there twice.
 */
export function namedColumns(cells: readonly TextCell[]): Columns | null {
  const at: Record<Column, number | null> = { time: null, likely: null, low: null, high: null };
  const unused: string[] = [];
  const units = new Set<UnitSystem>();
  let levels: Columns["levels"] = null;
  let zone: string | null = null;
  for (const [index, { text }] of cells.entries()) {
    const plain = text.trim().slice(0, LONGEST_NAME).toLowerCase().replace(/_/g, " ");
    const unit = UNIT.exec(plain);
    const zoned = unit ? null : ZONE.exec(plain);
    const name = letters(unit || zoned ? plain.slice(0, (unit ?? zoned)!.index) : plain);
    const column = NAMES.get(name) ?? NAMES.get(name.replace(/^stage |^level /, ""));
    const isUsed = column !== undefined && !(zoned && column !== "time");
    if (!isUsed) unused.push(text.trim());
    else if (at[column] !== null) return null;
    else at[column] = index;
    if (!isUsed) continue;
    if (column === "time" && zoned) zone = zoned[1]!.toUpperCase();
    if (column === "likely") levels = levelsNamed(name) ?? levels;
    if (column !== "time" && unit) units.add(UNITS.get(unit[1]!)!);
  }
  if (at.time === null || at.likely === null || units.size > 1) return null;
  return { at, levels, unit: [...units][0] ?? null, zone, unused };
}

function letters(text: string): string {
  return text
    .replace(/[^a-z/ ]/g, "")
    .replace(/\s+/g, " ")
    .trim();
}

function levelsNamed(name: string): Levels | null {
  if (/stage|gage|gauge/.test(name)) return "stage";
  return /elevation/.test(name) ? "elevation" : null;
}

/**
 * Columns without a first line: time and stage, or time, stage, low and high; flow with its unit beside them is not
 * used. Null for other counts.
 */
export function plainColumns(row: readonly TextCell[], time: number): Columns | null {
  const others = row.flatMap((cell, index) => (index === time ? [] : [{ cell, index }]));
  const levels = others.filter(({ cell }) => !FLOW.test(cell.text)).map(({ index }) => index);
  if (levels.length !== 1 && levels.length !== 3) return null;
  const [likely, low = null, high = null] = levels;
  return {
    at: { time, likely: likely!, low, high },
    ...{ levels: null, unit: null, zone: null },
    unused: others.length > levels.length ? ["flow"] : [],
  };
}

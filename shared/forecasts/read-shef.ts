import { refusal } from "../failure.ts";
import { lengthFrom } from "../units.ts";
import { zoneName } from "./clock.ts";
import { chosenSeries, levelsGiven, type Series } from "./series.ts";
import {
  DOUBTFUL_QUALIFIERS,
  FAILED_QUALIFIERS,
  isExtremeCode,
  isForecastCode,
  LEVEL_ELEMENTS,
} from "./shef-codes.ts";
import { messagesIn } from "./shef-text.ts";
import { type ShefValue, valuesOf } from "./shef-values.ts";
import type { ForecastNote, LeftOut, ReadingWith, ReadRow } from "./types.ts";
import type { Unchecked } from "./understood.ts";
import { momentIn } from "./zones.ts";

interface ShefSeries extends Series {
  readonly code: string;
  readonly values: ShefValue[];
}

const VALUE = /^([+-]?(?:\d+\.?\d*|\.\d+))([A-Z]?)$/;
const MISSING = /^(|M+(\.M+)?|-?9999(\.0*)?[A-Z]?|[+-]|\*+|X+)$/;
/** Two values for one time that differ by less are the same, metres: a stage given in feet and in meters. */
const SAME_M = 0.01;

/**
 * Reads SHEF messages (.A, .B and .E, revisions too): water levels of one gauge, a forecast before what is observed.
 * Failures name line and column: those of `messagesIn` and `valuesOf`; `forecast/no-level`, `forecast/which`,
 * `forecast/columns`, `forecast/level`.
 */
export function readShef(text: string, how: ReadingWith): Unchecked {
  const values = messagesIn(text).flatMap((message) => valuesOf(message, how.nowS));
  const { all, others } = seriesOf(values);
  const { taken, notes } = chosenSeries(all, how, others);
  const element = taken.code.slice(0, 2);
  const levels = levelsGiven(LEVEL_ELEMENTS.get(element)!, how, { series: taken.name });
  const leftOut: LeftOut[] = [];
  const doubtful = new Map<string, number>();
  const rows = taken.values.flatMap((value) => rowOf(value, leftOut, doubtful, how));
  const unit = taken.values[0]!.unit;
  return {
    ...{ from: "shef", levels, unit, series: taken.name },
    ...{ rows: inOrder(rows, leftOut), leftOut, zones: zonesOf(taken.values) },
    notes: [...notes, ...notesOf(taken, doubtful, how)],
  };
}

function seriesOf(values: readonly ShefValue[]): {
  readonly all: readonly ShefSeries[];
  readonly others: readonly string[];
} {
  const found = new Map<string, ShefSeries>();
  const others = new Set<string>();
  for (const value of values) {
    const { station, code } = value;
    const name = `${station} ${code.replace(/Z{1,2}$/, "")}`;
    if (!LEVEL_ELEMENTS.has(code.slice(0, 2))) {
      others.add(name);
      continue;
    }
    const rank = (isForecastCode(code) ? 0 : 1) + (isExtremeCode(code) ? 2 : 0);
    const one = found.get(name) ?? { station, name, code, rank, values: [] };
    one.values.push(value);
    found.set(name, one);
  }
  return { all: [...found.values()], others: [...others] };
}

interface Row extends ReadRow {
  readonly isRevision: boolean;
}

function rowOf(
  { text, qualifier, moment, unit, place, isRevision }: ShefValue,
  leftOut: LeftOut[],
  doubtful: Map<string, number>,
  { zone }: ReadingWith,
): Row[] {
  if (MISSING.test(text) || !moment) {
    leftOut.push({ place, why: moment ? "missing" : "no-time", came: text });
    return [];
  }
  const match = VALUE.exec(text);
  if (!match) throw refusal("forecast/level", { place, how: "shef", came: text });
  const code = match[2] || qualifier;
  if (FAILED_QUALIFIERS.has(code)) {
    leftOut.push({ place, why: "rejected", came: text });
    return [];
  }
  if (DOUBTFUL_QUALIFIERS.has(code)) doubtful.set(code, (doubtful.get(code) ?? 0) + 1);
  const levelM = lengthFrom(Number(match[1]), unit);
  const shown = zone ? momentIn(moment, zone) : moment;
  return [{ moment: shown, levelM, lowM: null, highM: null, place, isRevision }];
}

/** Rows rising in time, whatever the order of the messages; a revised value is in the place of the one before it. */
function inOrder(rows: readonly Row[], leftOut: LeftOut[]): ReadRow[] {
  const sorted = [...rows].sort((a, b) => a.moment.atS - b.moment.atS);
  const kept: Row[] = [];
  for (const row of sorted) {
    const before = kept.at(-1);
    if (before?.moment.atS !== row.moment.atS) {
      kept.push(row);
    } else if (row.isRevision) {
      leftOut.push({ place: before.place, why: "replaced", came: "" });
      kept[kept.length - 1] = row;
    } else if (Math.abs(before.levelM - row.levelM) > SAME_M) {
      kept.push(row);
    }
  }
  return kept.map(({ isRevision: _, ...row }) => row);
}

function zonesOf(values: readonly ShefValue[]): Unchecked["zones"] {
  const met = new Map<string, Unchecked["zones"][number]>();
  for (const { zone, moment } of values) {
    if (!moment) continue;
    const offsetMin = moment.offsetMin!;
    met.set(`${zone} ${offsetMin}`, { written: zone, offsetMin });
  }
  return [...met.values()];
}

function notesOf(
  { code, values }: ShefSeries,
  doubtful: ReadonlyMap<string, number>,
  { zone }: ReadingWith,
): ForecastNote[] {
  const years = values.filter(({ isYearInferred }) => isYearInferred);
  const year = years[0]?.moment && new Date(1000 * years[0].moment.atS).getUTCFullYear();
  const notes: (ForecastNote | null | undefined)[] = [
    isForecastCode(code) ? null : { kind: "observed" },
    year ? { kind: "year-inferred", year } : null,
    ...[...doubtful].map(
      ([letter, rows]): ForecastNote => ({
        ...{ kind: "doubtful", code: letter, rows },
      }),
    ),
    zone && { kind: "shown-in", name: zoneName(zone) },
  ];
  return notes.filter((note) => note !== null && note !== undefined);
}

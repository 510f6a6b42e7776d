import { refusal } from "../failure.ts";
import { cellsOf, filledLines, separatorOf, type TextCell, type TextLine } from "../text-rows.ts";
import { lengthFrom, parseLength, type UnitSystem } from "../units.ts";
import { forecastClock } from "./clock.ts";
import { levelsGiven } from "./series.ts";
import { type Columns, namedColumns, plainColumns, unitBehind } from "./table-columns.ts";
import type { ForecastNote, LeftOut, ReadingWith, ReadRow, TextPlace } from "./types.ts";
import type { Unchecked } from "./understood.ts";
import { type WrittenTime, writtenTime } from "./written-time.ts";

interface Row {
  readonly line: number;
  readonly cells: readonly TextCell[];
  /** The cell that is a time; null where none is. */
  readonly time: { readonly index: number; readonly written: WrittenTime } | null;
}

const MISSING = /^(m+|n\/?a|nan|null|none|missing|msng|-{1,3}|\*+)$/i;
/** Most parts in which date, hour and zone stand beside each other. */
const MOST_PARTS = 7;

/**
 * Reads a pasted table: one row for each time, time and stage, low and high if there are, flow beside it; commas,
 * semicolons, tabs or spaces between; a line above may name the columns, the unit and the zone.
 * Failures name line and column: `forecast/empty`, `forecast/columns`, `forecast/time`, `forecast/zone`,
 * `forecast/zone-needed`, `forecast/zone-clock`, `forecast/level`.
 */
export function readTable(text: string, how: ReadingWith): Unchecked {
  const lines = filledLines(text);
  if (lines.length === 0) throw refusal("forecast/empty");
  const separator = separatorOf((lines.find(isTimed) ?? lines[0]!).content);
  const rows = lines.map((line) => rowOf(line, separator));
  const { columns, body, titles } = arranged(rows);
  const levels = levelsGiven(columns.levels, how, { line: rows[0]!.line });
  const named = columns.unit ?? unitNamed(body, columns);
  const unit = named ?? how.units ?? how.system;
  const clock = forecastClock(how, columns.zone);
  refuseMixedZones(body, columns);
  const leftOut: LeftOut[] = [];
  const read = body.flatMap((row): ReadRow[] => {
    const at = row.cells[columns.at.time!]!;
    const timePlace = placeOf(row, at);
    const moment = clock.momentOf(timeOf(row, at), at.text, timePlace);
    const likely = row.cells[columns.at.likely!]!;
    const place = placeOf(row, likely);
    if (MISSING.test(likely.text)) {
      leftOut.push({ place, why: "missing", came: likely.text });
      return [];
    }
    const level = (index: number | null) =>
      index === null ? null : levelOf(row.cells[index]!, row, unit);
    const { low, high } = columns.at;
    const levelM = level(columns.at.likely)!;
    return [{ moment, levelM, lowM: level(low), highM: level(high), place, timePlace }];
  });
  const notes: ForecastNote[] = [];
  if (!named && !how.units) notes.push({ kind: "unit-assumed", unit });
  if (columns.unused.length > 0) notes.push({ kind: "columns-not-used", names: columns.unused });
  if (titles.length > 0) notes.push({ kind: "lines-not-used", lines: titles });
  return {
    ...{ from: "table", levels, unit, series: null, rows: read, leftOut },
    ...{ zones: clock.zones(), notes: [...notes, ...clock.notes()] },
  };
}

function isTimed({ content }: TextLine): boolean {
  return rowOf({ content, number: 0 }, separatorOf(content)).time !== null;
}

function rowOf({ content, number }: TextLine, separator: RegExp): Row {
  const isSpaced = separator.source === "\\s+";
  const split = cellsOf(content, separator);
  const cells = isSpaced ? withUnits(split) : split;
  for (let from = 0; from < cells.length; from++) {
    for (let parts = Math.min(MOST_PARTS, cells.length - from); parts > 0; parts--) {
      const joined = cells.slice(from, from + parts);
      const text = joined.map((cell) => cell.text).join(" ");
      const written = joined.every((cell) => cell.text !== "") && writtenTime(text);
      if (!written) continue;
      const time: TextCell = { text, column: joined[0]!.column };
      return {
        line: number,
        cells: [...cells.slice(0, from), time, ...cells.slice(from + parts)],
        time: { index: from, written },
      };
    }
  }
  return { line: number, cells: joinedNames(cells), time: null };
}

/** Figures and units, names and what stands in brackets, which only spaces separate. */
function withUnits(cells: readonly TextCell[]): TextCell[] {
  const joined: TextCell[] = [];
  for (const cell of cells) {
    const before = joined.at(-1);
    const isUnit = /^(ft|feet|foot|m|meters?|metres?|k?cfs|cms|m3\/s|ft3\/s)\.?$/i.test(cell.text);
    const isBehind =
      before && ((isUnit && /^[-+]?[\d.,]+$/.test(before.text)) || /^\(/.test(cell.text));
    if (isBehind) joined[joined.length - 1] = { ...before, text: `${before.text} ${cell.text}` };
    else joined.push(cell);
  }
  return joined;
}

/** The names of a date, an hour and a zone in cells of their own become one, as what is below them does. */
function joinedNames(cells: readonly TextCell[]): TextCell[] {
  const is = (index: number, pattern: RegExp) => pattern.test(cells[index]?.text ?? "");
  const isApart = is(0, /^(date|\d{4}-\d{2}-\d{2})$/i) && is(1, /^(time|\d{1,2}:\d{2})\b/i);
  const clocks = isApart ? 2 : 1;
  const taken = is(clocks, /^(offset|zone|time zone|tz)$/i) ? clocks + 1 : clocks;
  const text = cells
    .slice(0, taken)
    .map((cell) => cell.text)
    .join(" ");
  return [{ text, column: cells[0]!.column }, ...cells.slice(taken)];
}

interface Arranged {
  readonly columns: Columns;
  readonly body: readonly Row[];
  /** Lines above the table that are no part of it. */
  readonly titles: readonly number[];
}

function arranged(rows: readonly Row[]): Arranged {
  const start = rows.findIndex(({ time }) => time !== null);
  if (start < 0) return withoutTimes(rows);
  const heading = start > 0 ? rows[start - 1]! : null;
  const named = heading && namedColumns(heading.cells);
  const first = rows[start]!;
  if (
    heading &&
    !named &&
    heading.cells.length > 1 &&
    heading.cells.length === first.cells.length
  ) {
    throw unknownColumns(heading, true);
  }
  const columns = named ?? plainColumns(first.cells, first.time!.index);
  if (!columns) throw unknownColumns(first, false);
  const titled = rows.slice(0, named ? start - 1 : start);
  const count = (named ? heading! : first).cells.length;
  const body = rows.slice(start);
  for (const row of body) refuseCount(row, count, named ? heading! : first);
  return { columns, body, titles: titled.map(({ line }) => line) };
}

/** A table in which nothing looks like a time: the first row says why. */
function withoutTimes(rows: readonly Row[]): Arranged {
  const [first] = rows as [Row];
  const isHeaded = !/^\d|^=/.test(first.cells[0]!.text);
  const columns = isHeaded ? namedColumns(first.cells) : plainColumns(first.cells, 0);
  const body = rows.slice(isHeaded ? 1 : 0);
  if (!columns) throw unknownColumns(first, isHeaded);
  for (const row of body) refuseCount(row, first.cells.length, first);
  return { columns, body, titles: [] };
}

function refuseCount({ line, cells }: Row, count: number, first: Row): void {
  if (cells.length === count) return;
  const column = cells.length > count ? cells[count]!.column : cells.at(-1)!.column;
  const about = { count, came: cells.length, asInLine: first.line };
  throw refusal("forecast/columns", { place: { line, column }, how: "count", ...about });
}

function unitNamed(body: readonly Row[], { at }: Columns): UnitSystem | null {
  const units = new Set<UnitSystem>();
  for (const { cells } of body) {
    const unit = unitBehind(cells[at.likely!]!.text);
    if (unit) units.add(unit);
  }
  return units.size === 1 ? [...units][0]! : null;
}

function refuseMixedZones(body: readonly Row[], columns: Columns): void {
  if (columns.zone !== null) return;
  const isZoned = ({ time }: Row) => time === null || time.written.zone !== null;
  const other = body.find((row) => isZoned(row) !== isZoned(body[0]!));
  if (!other?.time) return;
  const place = placeOf(other, other.cells[other.time.index]!);
  throw refusal("forecast/zone", { place, in: "table" });
}

function placeOf({ line }: Row, { column }: TextCell): TextPlace {
  return { line, column };
}

function timeOf(row: Row, at: TextCell): WrittenTime {
  const written = row.time && row.cells[row.time.index] === at ? row.time.written : null;
  if (written) return written;
  throw refusal("forecast/time", { place: placeOf(row, at), how: "table", came: at.text });
}

function levelOf(cell: TextCell, row: Row, unit: UnitSystem): number {
  const { text } = cell;
  const about = { place: placeOf(row, cell), came: text };
  if (/^[-+]?[1-9]\d{0,2},\d{3}$/.test(text)) {
    throw refusal("forecast/level", { ...about, how: "thousands" });
  }
  if (/^[-+]?\d+([.,]\d+)?$/.test(text)) return lengthFrom(Number(text.replace(",", ".")), unit);
  const length = parseLength(text, unit);
  if (length.ok) return length.value;
  throw refusal("forecast/level", { ...about, how: "table" });
}

function unknownColumns({ line, cells }: Row, isHeaded: boolean) {
  const place = { line, column: cells[0]!.column };
  return refusal(
    "forecast/columns",
    isHeaded
      ? { place, how: "names", names: cells.map(({ text }) => text) }
      : { place, how: "unnamed", came: cells.length },
  );
}

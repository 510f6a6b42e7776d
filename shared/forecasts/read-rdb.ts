import { refusal } from "../failure.ts";
import { lengthFrom, type UnitSystem } from "../units.ts";
import { forecastClock } from "./clock.ts";
import { chosenSeries, levelsGiven, type Series } from "./series.ts";
import type { ForecastNote, LeftOut, Levels, ReadingWith, ReadRow } from "./types.ts";
import type { Unchecked } from "./understood.ts";
import { writtenTime } from "./written-time.ts";

/**
 * Parameter codes that are a water level: what it counts from, and its unit. Source: USGS parameter codes, physical
 * group (00065 gage height; 62614 to 62620, 63158, 63160, 72020 elevations; 30207 and 99065 in meters).
 */
const LEVELS: ReadonlyMap<string, readonly [Levels, UnitSystem]> = new Map<
  string,
  readonly [Levels, UnitSystem]
>([
  ["00065", ["stage", "us"]],
  ["30207", ["stage", "metric"]],
  ["99065", ["stage", "metric"]],
  ...["62614", "62615", "62616", "62617", "62619", "62620", "63158", "63160", "72020"].map(
    (code): [string, readonly [Levels, UnitSystem]] => [code, ["elevation", "us"]],
  ),
]);
const VALUE_COLUMN = /^(?:.*_)?(\d{5})(?:_\d{5})?$/;
/** Marks in the place of a value. Source: USGS, codes of NWIS instantaneous values. */
const MISSING = /^(|---?|\*{3}|Bkw|Dis|Dry|Eqp|Ice|Mnt|Pr|Rat|Ssn|ZFL|Tst|-?9999(99)?(\.0*)?)$/i;

interface Row {
  readonly line: number;
  readonly cells: readonly string[];
  readonly columns: readonly number[];
}

interface RdbSeries extends Series {
  readonly site: string;
  readonly column: number;
  readonly parameter: string;
}

/** True where a text has a line of column names and one of their widths and types below it. */
export function isRdb(text: string): boolean {
  const rows = rowsOf(text.slice(0, 200_000));
  return rows.length > 1 && isTypes(rows[1]!);
}

/**
 * Reads a tab-delimited file of the USGS (RDB): notes that begin with `#`, a line of names, one of types, rows. One
 * water level of one site; what is a forecast's there is not marked, so that it is said to be observed.
 * Failures name line and column: `forecast/cut-off`, `forecast/columns`, `forecast/which`, `forecast/no-level`,
 * `forecast/time`, `forecast/zone-needed`, `forecast/zone-clock`, `forecast/level`.
 */
export function readRdb(text: string, how: ReadingWith): Unchecked {
  const [names, , ...all] = rowsOf(text) as [Row, Row, ...Row[]];
  const columnOf = (name: string) => names.cells.indexOf(name);
  const [site, time, zone] = [columnOf("site_no"), columnOf("datetime"), columnOf("tz_cd")];
  if (time < 0) {
    const place = { line: names.line, column: 1 };
    throw refusal("forecast/columns", { place, how: "rdb-names", names: names.cells });
  }
  const rows = all.filter((row) => !isTypes(row) && row.cells.join() !== names.cells.join());
  for (const row of rows) refuseCount(row, names);
  const { found, others } = seriesOf(names, rows, site, how);
  const { taken, notes } = chosenSeries(found, how, others);
  const [levels, unit] = LEVELS.get(taken.parameter)!;
  const clock = forecastClock(how, null);
  const leftOut: LeftOut[] = [];
  const doubtful = new Map<string, number>();
  const quality = columnOf(`${names.cells[taken.column]}_cd`);
  const read = rows.flatMap((row): ReadRow[] => {
    if (site >= 0 && row.cells[site] !== taken.site) return [];
    const place = { line: row.line, column: row.columns[taken.column]! };
    const timePlace = { line: row.line, column: row.columns[time]! };
    const came = row.cells[taken.column]!;
    if (MISSING.test(came)) {
      leftOut.push({ place, why: "missing", came });
      return [];
    }
    const raw = `${row.cells[time]} ${zone < 0 ? "" : row.cells[zone]}`.trim();
    const written = writtenTime(raw);
    if (!written) throw refusal("forecast/time", { place: timePlace, how: "rdb", came: raw });
    const moment = clock.momentOf(written, raw, timePlace);
    const code = quality < 0 ? "" : row.cells[quality]!;
    for (const mark of doubtfulMarks(code)) doubtful.set(mark, (doubtful.get(mark) ?? 0) + 1);
    const levelM = lengthFrom(figureOf(came, place), unit);
    return [{ moment, levelM, lowM: null, highM: null, place, timePlace }];
  });
  const marked = [...doubtful].map(
    ([code, count]): ForecastNote => ({
      ...{ kind: "doubtful", code, rows: count },
    }),
  );
  return {
    ...{
      from: "rdb",
      levels: levelsGiven(levels, how, { series: taken.name }),
      unit,
      series: taken.name,
    },
    ...{ rows: read, leftOut, zones: clock.zones() },
    notes: [...notes, { kind: "observed" }, ...marked, ...clock.notes()],
  };
}

function rowsOf(text: string): Row[] {
  const lines = text.replace(/^\ufeff/, "").split(/\r\n|\r|\n/);
  return lines.flatMap((content, index) => {
    if (/^\s*(#|$)/.test(content)) return [];
    let at = 1;
    const cells = content.split("\t");
    const columns = cells.map((cell) => {
      const column = at;
      at += cell.length + 1;
      return column;
    });
    return [{ line: index + 1, cells: cells.map((cell) => cell.trim()), columns }];
  });
}

function isTypes({ cells }: Row): boolean {
  return cells.length > 1 && cells.every((cell) => /^\d{1,4}[snd]$/i.test(cell));
}

function seriesOf(names: Row, rows: readonly Row[], site: number, how: ReadingWith) {
  const sites = site < 0 ? [""] : [...new Set(rows.map(({ cells }) => cells[site]!))];
  const others: string[] = [];
  const found = names.cells.flatMap((name, column): RdbSeries[] => {
    const parameter = VALUE_COLUMN.exec(name)?.[1];
    if (parameter === undefined) return [];
    const level = LEVELS.get(parameter);
    if (!level) others.push(name);
    if (!level) return [];
    const wanted = how.levels ?? "stage";
    return sites.map((each) => ({
      ...{ site: each, column, parameter, rank: level[0] === wanted ? 0 : 1 },
      station: each,
      name: `${each} ${name}`.trim(),
    }));
  });
  return { found, others };
}

/** Estimated, and what else is neither approved (A) nor provisional (P). */
function doubtfulMarks(code: string): string[] {
  return code.split(/[\s:,]+/).filter((mark) => mark !== "" && !/^[AP]$/.test(mark));
}

function figureOf(text: string, place: { line: number; column: number }): number {
  if (/^[-+]?(\d+\.?\d*|\.\d+)$/.test(text)) return Number(text);
  throw refusal("forecast/level", { place, how: "rdb", came: text });
}

function refuseCount({ line, cells, columns }: Row, names: Row): void {
  if (cells.length === names.cells.length) return;
  const isShort = cells.length < names.cells.length;
  const column = isShort ? columns.at(-1)! : columns[names.cells.length]!;
  const counted = { count: names.cells.length, came: cells.length, asInLine: names.line };
  const about = { place: { line, column }, ...counted };
  throw isShort
    ? refusal("forecast/cut-off", { ...about, how: "rdb" })
    : refusal("forecast/columns", { ...about, how: "rdb-count" });
}

import { asFailure, type Outcome, Refusal, refusalOf } from "../failure.ts";
import type { Forecast, ForecastRow } from "../plan.ts";
import { lengthFrom, lengthUnit, parseLength, type UnitSystem } from "../units.ts";
import { MOST_ROWS, rowsComplaint } from "./check-rows.ts";
import { type Columns, isHeading, namedColumns, plainColumns } from "./forecast-columns.ts";
import { momentOf, momentText } from "./forecast-time.ts";

export interface ParsedForecast {
  readonly forecast: Forecast;
  /** What was assumed or left out, each in one sentence for the person. */
  readonly notes: readonly string[];
}

interface Line {
  /** Counted from 1, as an editor shows it. */
  readonly number: number;
  readonly cells: readonly string[];
}

const LONGEST = 1_000_000;
const DATE = /^(\d{4}-\d{2}-\d{2}|date)$/i;
const CLOCK = /^(\d{1,2}:\d{2}(:\d{2})?(Z|[+-]\d{2}:?\d{2})?|time)$/i;
const OFFSET = /^(Z|UTC|GMT|[+-](0\d|1[0-4]):?[0-5]\d|offset|zone)$/i;

/**
 * Reads a forecast as it is pasted or comes in a file: one row for each time, time and stage, and low and
 * high if there are; commas, semicolons, tabs or spaces between; a first line may name the columns and the
 * unit. Without one, levels are in the unit of `system`, and that is said. Offsets from UTC are kept.
 * Failures name the line: `forecast/empty`, `forecast/columns`, `forecast/time`, `forecast/zone`,
 * `forecast/level`, `forecast/band`, `forecast/disorder`, `forecast/duplicate`, `forecast/gap`,
 * `forecast/rows`.
 */
export function parseForecast(
  text: string,
  levels: "stage" | "elevation",
  system: UnitSystem,
): Outcome<ParsedForecast> {
  try {
    return { ok: true, value: read(text, levels, system) };
  } catch (thrown) {
    if (thrown instanceof Refusal) return { ok: false, failure: asFailure(thrown) };
    throw thrown;
  }
}

function read(text: string, levels: "stage" | "elevation", system: UnitSystem): ParsedForecast {
  const lines = linesOf(text);
  const first = lines[0];
  if (!first) {
    throw new Refusal(
      "forecast/empty",
      "Expected rows of time and stage; nothing came.",
      "Paste the forecast, one row for each time: 2026-04-03 14:00 -05:00, 31.2",
    );
  }
  const headed = isHeading(first.cells);
  const columns = headed ? namedColumns(first.cells) : plainColumns(first.cells.length);
  if (!columns) throw unknownColumns(first, headed);
  if (columns.levels !== null && columns.levels !== levels) throw otherLevels(first, levels);
  const rows = lines.slice(headed ? 1 : 0);
  const unit = columns.unit ?? system;
  const found = rows.map((line) => rowOf(line, columns, first, unit));
  const place = (index: number) => `line ${rows[index]!.number}`;
  const wrong = rowsComplaint(found, levels, place);
  if (wrong) throw refusalOf(wrong);
  return { forecast: { levels, rows: found, note: "" }, notes: notesOf(columns, found, unit) };
}

function linesOf(text: string): Line[] {
  if (text.length > LONGEST) {
    throw new Refusal(
      "forecast/rows",
      `Expected a forecast of at most ${MOST_ROWS} rows; this text is ${Math.round(text.length / 1e6)} MB long.`,
      "Give the forecast alone, without the whole record of the gauge.",
    );
  }
  const plain = text.replace(/^\ufeff/, "").split(/\r\n|\r|\n/);
  const numbered = plain.map((content, index) => ({ content, number: index + 1 }));
  const filled = numbered.filter(({ content }) => !/^\s*(#.*)?$/.test(content));
  const separator = separatorOf(filled[0]?.content ?? "");
  return filled.map(({ content, number }) => ({
    number,
    cells: joinedTime(content.trim().split(separator).map(unquoted)),
  }));
}

function separatorOf(line: string): RegExp {
  if (line.includes("\t")) return /\t/;
  if (line.includes(";")) return /;/;
  if (line.includes(",")) return /,/;
  return /\s+/;
}

function unquoted(cell: string): string {
  const plain = cell.trim();
  return /^(["']).*\1$/.test(plain) ? plain.slice(1, -1).trim() : plain;
}

/** A date, a clock and an offset that stand in cells of their own become one cell; so do their names. */
function joinedTime(cells: readonly string[]): string[] {
  const matches = (index: number, pattern: RegExp) => pattern.test(cells[index] ?? "");
  const apart = matches(0, DATE) && matches(1, CLOCK);
  const clocks = apart ? 2 : 1;
  const taken = matches(clocks, OFFSET) ? clocks + 1 : clocks;
  return [cells.slice(0, taken).join(" "), ...cells.slice(taken)];
}

function rowOf(line: Line, columns: Columns, first: Line, unit: UnitSystem): ForecastRow {
  const { cells, number } = line;
  if (cells.length !== first.cells.length) {
    throw new Refusal(
      "forecast/columns",
      `Line ${number}: expected ${first.cells.length} columns as in line ${first.number}; came ${cells.length}.`,
      "Give every row the same columns. Units stand in the first line, not behind each figure.",
    );
  }
  const at = cells[columns.at.time!]!;
  const moment = momentOf(at);
  const level = (column: "likely" | "low" | "high") => {
    const index = columns.at[column];
    return index === null ? null : levelOf(cells[index]!, number, unit);
  };
  return {
    at: moment ? momentText(moment) : at,
    levelM: level("likely")!,
    lowM: level("low"),
    highM: level("high"),
  };
}

function levelOf(cell: string, line: number, unit: UnitSystem): number {
  if (/^[-+]?[1-9]\d{0,2},\d{3}$/.test(cell)) {
    throw new Refusal(
      "forecast/level",
      `Line ${line}: expected a level without a comma for thousands; "${cell}" may be one, or a decimal.`,
      `Write it without a comma: ${cell.replace(",", "")}, or ${cell.replace(",", ".")}.`,
    );
  }
  if (/^[-+]?\d+([.,]\d+)?$/.test(cell)) return lengthFrom(Number(cell.replace(",", ".")), unit);
  const length = parseLength(cell, unit);
  if (length.ok) return length.value;
  throw new Refusal(
    "forecast/level",
    `Line ${line}: expected a level such as 31.2; ${cell === "" ? "the place is empty" : `"${cell.slice(0, 40)}" came`}.`,
    "Put in the missing figure, or take the row out if its time is not needed.",
  );
}

function notesOf(columns: Columns, rows: readonly ForecastRow[], unit: UnitSystem): string[] {
  const notes: string[] = [];
  if (columns.unit === null) {
    notes.push(`The forecast names no unit: its figures are taken as ${lengthUnit(unit)}.`);
  }
  if (columns.unused.length > 0) {
    notes.push(`Not used: ${columns.unused.map((name) => `"${name.slice(0, 40)}"`).join(", ")}.`);
  }
  if (momentOf(rows[0]!.at)?.offsetMin === null) {
    notes.push("The forecast states no offset from UTC: its times are taken as the local clock.");
  }
  return notes;
}

function otherLevels({ number }: Line, levels: "stage" | "elevation"): Refusal {
  const came = levels === "stage" ? "elevation" : "stage";
  return new Refusal(
    "forecast/columns",
    `Line ${number}: expected a forecast by ${levels}, as chosen; its first line names ${came}.`,
    `Choose ${came} for this forecast, or correct the first line.`,
  );
}

function unknownColumns({ number, cells }: Line, headed: boolean): Refusal {
  return new Refusal(
    "forecast/columns",
    headed
      ? `Line ${number}: expected column names with time and stage, each once and all in one unit; came ${cells
          .map((cell) => `"${cell.slice(0, 20)}"`)
          .join(", ")}.`
      : `Line ${number}: expected time and stage, or time, stage, low and high; came ${cells.length} columns.`,
    "Put a first line that names the columns: time, stage_ft, low_ft, high_ft",
  );
}

import { type Given, type Outcome, outcomeOf, type Refusal, refusal } from "../failure.ts";
import { cellsOf, filledLines, separatorOf } from "../text-rows.ts";
import { lengthFrom, parseLength, parseStation, type UnitSystem } from "../units.ts";
import { addTexts } from "../words/failure.ts";
import { READINGS_REFUSALS } from "../words/refusals/readings.ts";
import { belowInstrument } from "./leveling.ts";
import { GROUND_RANGE_M, LONGEST_ROD_M, MOST_READINGS } from "./survey-schema.ts";

/** What is read at a stake: the rod standing on the ground, or the elevation of the ground itself. */
export type ReadAs = "rod" | "ground";

/** What a table of readings is read with. */
export interface ReadingInputs {
  /** What the figures are where no first line says so. */
  readonly readAs: ReadAs;
  /** Unit of figures that name none. */
  readonly system: UnitSystem;
  /** Length of the line the stations count along, metres. */
  readonly lengthM: number;
  /** Height of instrument, metres; null where benchmark or backsight is not typed. */
  readonly instrumentM: number | null;
}

/** Ground at a station, metres in the terrain's datum. */
export interface StationReading {
  readonly chainageM: number;
  /** From the line, metres, positive to the left of rising stations; left out on it. */
  readonly offsetM?: number;
  readonly groundM: number;
}

interface Row {
  /** Counted from 1, as an editor shows it. */
  readonly number: number;
  readonly cells: readonly string[];
}

interface Columns {
  readonly station: number;
  /** Null where all was read on the line. */
  readonly offset: number | null;
  readonly value: number;
  readonly readAs: ReadAs;
  readonly system: UnitSystem;
}

const LONGEST = 200_000;
const SAME_M = 0.02;
/** Ground read farther from the line says nothing of it, metres. Source: judgement. */
const FARTHEST_OFFSET_M = 100;
const NAMES: readonly (readonly ["station" | "offset" | ReadAs, RegExp])[] = [
  ["offset", /^(offset|off|os)$/],
  ["station", /^(sta|station)$/],
  ["rod", /^(rod|rod_reading|foresight|fs)$/],
  ["ground", /^(ground|elevation|ground_elevation|surveyed_ground|elev)$/],
];
const HEADING = /[a-z]{2,}/i;

/**
 * Reads a table of stations and rod readings, or of stations and ground elevations, typed, pasted or from a CSV file;
 * commas, semicolons, tabs or spaces between; a first line may name the columns and their unit (`station, rod_ft`;
 * `station, offset_ft, ground_ft` where some was read beside the line).
 * Failures name the line: `readings/empty`, `readings/columns`, `readings/station`, `readings/value`,
 * `readings/outside`, `readings/duplicate`, `readings/no-instrument`, `readings/rows`.
 */
export function parseReadings(text: string, inputs: ReadingInputs): Outcome<StationReading[]> {
  addTexts(READINGS_REFUSALS);
  return outcomeOf(() => read(text, inputs));
}

function read(text: string, inputs: ReadingInputs): StationReading[] {
  const rows = rowsOf(text);
  const [first] = rows;
  if (!first) throw refusal("readings/empty", { isHeaded: false });
  const isHeaded = HEADING.test(first.cells[0] ?? "");
  const columns = isHeaded ? namedColumns(first, inputs) : plainColumns(first, inputs);
  const found = rows.slice(isHeaded ? 1 : 0).flatMap((row) => readingOf(row, columns, inputs));
  refuseDoubles(found);
  if (found.length === 0) throw refusal("readings/empty", { isHeaded: true });
  if (columns.readAs === "rod" && inputs.instrumentM === null) {
    throw refusal("readings/no-instrument");
  }
  return found.map(({ chainageM, offsetM, groundM }) => ({
    ...{ chainageM, groundM },
    ...(offsetM !== undefined && { offsetM }),
  }));
}

function rowsOf(text: string): Row[] {
  const filled = filledLines(text.slice(0, LONGEST + 1));
  if (text.length > LONGEST || filled.length > MOST_READINGS) {
    throw refusal("readings/rows", { most: MOST_READINGS });
  }
  const separator = separatorOf(filled[0]?.content ?? "");
  return filled.map(({ content, number }) => ({
    number,
    cells: cellsOf(content, separator).map((cell) => cell.text),
  }));
}

function plainColumns({ cells, number }: Row, { readAs, system }: ReadingInputs): Columns {
  if (cells.length !== 2) {
    throw refusal("readings/columns", { line: number, how: "unnamed", came: cells.length });
  }
  return { station: 0, offset: null, value: 1, readAs, system };
}

/** Of the columns that a first line names: the station, and one of rod or ground. */
function namedColumns({ cells, number }: Row, { system }: ReadingInputs): Columns {
  const named = cells.map((cell) => {
    const plain = cell
      .toLowerCase()
      .trim()
      .replace(/[\s-]+/g, "_");
    const unit = /_\(?(ft|m)\)?$/.exec(plain);
    const name = unit ? plain.slice(0, unit.index) : plain;
    const column = NAMES.find(([, pattern]) => pattern.test(name))?.[0] ?? null;
    return { column, system: unit ? (unit[1] === "ft" ? "us" : "metric") : system } as const;
  });
  const placesOf = (wanted: "station" | "offset" | ReadAs) =>
    named.flatMap(({ column }, i) => (column === wanted ? [i] : []));
  const [stations, rods, grounds] = [placesOf("station"), placesOf("rod"), placesOf("ground")];
  const values = rods.length > 0 ? rods : grounds;
  if (stations.length !== 1 || values.length !== 1) {
    throw refusal("readings/columns", { line: number, how: "names", names: cells });
  }
  const [offset = null, ...moreOffsets] = placesOf("offset");
  if (moreOffsets.length > 0) {
    const came = moreOffsets.length + 1;
    throw refusal("readings/columns", { line: number, how: "offsets", came });
  }
  if (rods.length === 0 && cells.length > (offset === null ? 3 : 4)) {
    throw refusal("readings/columns", { line: number, how: "levee-table", came: cells.length });
  }
  const value = values[0]!;
  return {
    ...{ station: stations[0]!, offset, value, system: named[value]!.system },
    readAs: rods.length > 0 ? "rod" : "ground",
  };
}

/** A reading with the line it is in. */
type Numbered = StationReading & { readonly line: number };

function refuseDoubles(found: readonly Numbered[]): void {
  const inOrder = [...found].sort(
    (a, b) => a.chainageM - b.chainageM || (a.offsetM ?? 0) - (b.offsetM ?? 0),
  );
  for (const [i, next] of inOrder.slice(1).entries()) {
    const before = inOrder[i]!;
    if (next.chainageM - before.chainageM > SAME_M) continue;
    if (Math.abs((next.offsetM ?? 0) - (before.offsetM ?? 0)) > SAME_M) continue;
    const lines = [before.line, next.line];
    throw refusal("readings/duplicate", { line: Math.max(...lines), first: Math.min(...lines) });
  }
}

function readingOf(row: Row, columns: Columns, inputs: ReadingInputs): Numbered[] {
  const { number, cells } = row;
  const cell = cells[columns.value] ?? "";
  if (cells.length > 2 && cell === "" && (cells[columns.station] ?? "") !== "") return [];
  const chainageM = chainageOf(row, cells[columns.station] ?? "", inputs);
  const valueM = figureOf(cell, number, columns.system);
  const offsetM = offsetOf(row, columns);
  const place = { chainageM, ...(offsetM !== 0 && { offsetM }), line: number };
  if (columns.readAs === "ground") {
    const { least, most } = GROUND_RANGE_M;
    if (valueM >= least && valueM <= most) return [{ ...place, groundM: valueM }];
    throw outOfRange(number, cell, "ground");
  }
  if (!(valueM >= 0 && valueM <= LONGEST_ROD_M)) throw outOfRange(number, cell, "rod");
  const groundM = belowInstrument(inputs.instrumentM ?? 0, valueM);
  return [{ ...place, groundM }];
}

/** Offset to the left of rising stations: `12 L`, `12 R`, or as surveyors sign it, plus to the right. */
function offsetOf({ number, cells }: Row, { offset, system }: Columns): number {
  const cell = offset === null ? "" : (cells[offset] ?? "").trim();
  if (cell === "") return 0;
  const side = /^(.*?)\s*([lr])(?:t|eft|ight)?\.?$/i.exec(cell);
  const plain = (side?.[1] ?? cell).replace("\u2212", "-");
  const rightM = figureOf(plain, number, system);
  if (side && rightM < 0) throw outOfRange(number, cell, "sided-offset");
  if (Math.abs(rightM) > FARTHEST_OFFSET_M) throw outOfRange(number, cell, "near-offset");
  return side?.[2]?.toLowerCase() === "l" ? rightM : -rightM;
}

function chainageOf({ number }: Row, cell: string, inputs: ReadingInputs): number {
  const { system, lengthM } = inputs;
  const station = parseStation(cell, system);
  if (!station.ok) throw refusal("readings/station", { line: number, why: station.failure });
  if (station.value > lengthM + SAME_M + roundingM(cell, system)) {
    throw refusal("readings/outside", { line: number, lengthM, came: cell });
  }
  return Math.min(station.value, lengthM);
}

/** A station written without decimals may be half a unit beyond the end. */
function roundingM(cell: string, system: UnitSystem): number {
  return cell.includes(".") ? 0 : lengthFrom(0.5, system);
}

function figureOf(cell: string, line: number, system: UnitSystem): number {
  if (/^[-+]?\d+(\.\d+)?$/.test(cell)) return lengthFrom(Number(cell), system);
  const length = parseLength(cell, system);
  if (length.ok) return length.value;
  throw outOfRange(line, cell, "number");
}

function outOfRange(
  line: number,
  came: string,
  expected: Given<"readings/value">["expected"],
): Refusal {
  return refusal("readings/value", { line, expected, came });
}

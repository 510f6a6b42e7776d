import { type Refusal, refusal } from "../../../shared/failure.ts";
import type { TerrainFile } from "../../../shared/messages.ts";
import { readBytes } from "../read-bytes.ts";
import { type AsciiHeader, commaDecimals } from "./header.ts";
import { parseNumbers } from "./parse-numbers.ts";

/** Bytes of text looked at together. */
const CHUNK_BYTES = 4_194_304;
const NUMBERS_AT_ONCE = 65_536;

/**
 * Goes through all cells once, without keeping them, and notes where each row begins.
 * @returns byte offsets of the rows, and the end of the file as one more
 * @throws Refusal when there are too few or too many cells, or one is not a number
 */
export async function indexRows(file: TerrainFile, header: AsciiHeader): Promise<Float64Array> {
  const { columns, rows, dataAt } = header;
  const wanted = columns * rows;
  const size = file.blob.size;
  if (2 * wanted - 1 > size - dataAt) throw wrongCount(file.name, header, null);
  const rowAt = new Float64Array(rows + 1);
  const values = new Float64Array(NUMBERS_AT_ONCE);
  const starts = new Int32Array(NUMBERS_AT_ONCE);
  let found = 0;
  let at = dataAt;
  while (at < size) {
    const bytes = new Uint8Array(await readBytes(file, at, at + CHUNK_BYTES));
    const isLast = at + bytes.length >= size;
    let used = 0;
    for (let more = true; more; ) {
      const parsed = parseNumbers(bytes, used, isLast, values, starts);
      if (parsed.bad !== null)
        throw notANumber(file.name, parsed.bad, found + parsed.count, columns);
      if (found + parsed.count > wanted) throw wrongCount(file.name, header, found + parsed.count);
      noteRows(rowAt, columns, found, parsed.count, starts, at);
      found += parsed.count;
      used = parsed.used;
      more = parsed.count === NUMBERS_AT_ONCE;
    }
    if (used === 0) break;
    at += used;
  }
  if (found !== wanted) throw wrongCount(file.name, header, found);
  rowAt[rows] = size;
  return rowAt;
}

/** Cells of some rows, which must have been indexed. */
export async function readRows(
  file: TerrainFile,
  columns: number,
  rowAt: Float64Array,
  first: number,
  count: number,
): Promise<Float64Array> {
  const bytes = await readBytes(file, rowAt[first]!, rowAt[first + count]!);
  const values = new Float64Array(columns * count);
  const parsed = parseNumbers(new Uint8Array(bytes), 0, true, values);
  if (parsed.count < values.length) {
    throw refusal("raster/unreadable", { name: file.name, changed: true });
  }
  return values;
}

function noteRows(
  rowAt: Float64Array,
  columns: number,
  found: number,
  count: number,
  starts: Int32Array,
  at: number,
): void {
  const first = Math.ceil(found / columns) * columns;
  for (let cell = first; cell < found + count; cell += columns) {
    rowAt[cell / columns] = at + starts[cell - found]!;
  }
}

function wrongCount(name: string, { columns, rows }: AsciiHeader, found: number | null): Refusal {
  return refusal("raster/cell-count", { name, columns, rows, found });
}

function notANumber(name: string, word: string, cell: number, columns: number): Refusal {
  if (/^[-+]?\d*,\d+/.test(word)) return commaDecimals(name, word);
  return refusal("raster/not-a-number", {
    ...{ name, row: Math.floor(cell / columns) + 1, text: word.slice(0, 30) },
  });
}

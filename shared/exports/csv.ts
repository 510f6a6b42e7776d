/** One cell: text, a number already rounded as it is to be read, or nothing. */
export type Cell = string | number | null;

/** Writes rows as one text. */
export type WriteRows = (rows: readonly (readonly Cell[])[]) => string;

const LINE_END = "\r\n";
const FORMULA_START = /^[\s\p{Cc}]*[=+\-@\uff1d\uff0b\uff0d\uff20]/u;

/**
 * Rows as comma-separated text: CRLF after every row, quotes doubled, cells with commas, quotes or line breaks
 * quoted (RFC 4180). Text that a spreadsheet would run as a formula gets an apostrophe in front, which makes it
 * text there; numbers are never touched.
 */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => row.map(cellText).join(",") + LINE_END).join("");
}

/**
 * Rows as a spreadsheet takes them from the clipboard: cells apart by tabs, a line each, tabs and line breaks within a
 * cell as blanks. What a spreadsheet would run is made text as in {@link csvText}.
 */
export function tabText(rows: readonly (readonly Cell[])[]): string {
  const cell = (each: Cell) => harmless(each).replace(/[\p{Cc}\u2028\u2029]+/gu, " ");
  return rows.map((row) => row.map(cell).join("\t") + LINE_END).join("");
}

function cellText(cell: Cell): string {
  const safe = harmless(cell);
  return /[",\r\n]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
}

/** A cell's text, with an apostrophe in front where a spreadsheet would run it. */
function harmless(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? String(cell) : "";
  return FORMULA_START.test(cell) ? `'${cell}` : cell;
}

/** One cell: text, a number already rounded as it is to be read, or nothing. */
export type Cell = string | number | null;

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

function cellText(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? String(cell) : "";
  const safe = FORMULA_START.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
}

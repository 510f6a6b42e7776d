/** A line of a pasted table that has something on it. */
export interface TextLine {
  /** Counted from 1, as an editor shows it. */
  readonly number: number;
  readonly content: string;
}

/** A cell of a pasted table. */
export interface TextCell {
  readonly text: string;
  /** Column of its first character, counted from 1. */
  readonly column: number;
}

const NOTHING = /^[\s,;]*(#.*)?$/;

/** Lines with something on them, a byte order mark left out; `#` begins a note of its own. */
export function filledLines(text: string): TextLine[] {
  return text
    .replace(/^\ufeff/, "")
    .split(/\r\n|\r|\n/)
    .map((content, index) => ({ content, number: index + 1 }))
    .filter(({ content }) => !NOTHING.test(content));
}

/** What separates the cells of a line: tabs, semicolons, commas or spaces, the first of these that it has. */
export function separatorOf(line: string): RegExp {
  if (line.includes("\t")) return /\t/g;
  if (line.includes(";")) return /;/g;
  if (line.includes(",")) return /,/g;
  return /\s+/g;
}

/** The cells of a line, without the quotes and spaces round them. */
export function cellsOf(content: string, separator: RegExp): TextCell[] {
  const body = content.trimEnd();
  const cells: TextCell[] = [];
  let from = body.length - body.trimStart().length;
  for (const match of body.slice(from).matchAll(separator)) {
    const end = content.length - content.trimStart().length + match.index;
    cells.push(cell(body.slice(from, end), from));
    from = end + match[0].length;
  }
  cells.push(cell(body.slice(from), from));
  return cells;
}

function cell(raw: string, from: number): TextCell {
  const lead = raw.length - raw.trimStart().length;
  const plain = raw.trim();
  const isQuoted = /^(["']).*\1$/.test(plain) && plain.length > 1;
  return {
    text: isQuoted ? plain.slice(1, -1).trim() : plain,
    column: from + lead + (isQuoted ? 2 : 1),
  };
}

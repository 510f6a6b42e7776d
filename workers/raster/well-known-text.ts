/**
 * The part of well-known text that starts with a keyword, brackets balanced, e.g. `UNIT["metre",1]`.
 * @param keywords alternatives, tried in order
 * @returns null when none is there or its brackets do not close
 */
export function partOf(text: string, keywords: readonly string[]): string | null {
  for (const keyword of keywords) {
    const start = new RegExp(`(?<![A-Z0-9_])${keyword}\\s*\\[`, "i").exec(text);
    if (!start) continue;
    const end = closingBracket(text, start.index + start[0].length);
    if (end > 0) return text.slice(start.index, end);
  }
  return null;
}

function closingBracket(text: string, from: number): number {
  let depth = 1;
  let quoted = false;
  for (let at = from; at < text.length; at++) {
    const letter = text[at];
    if (letter === '"') quoted = !quoted;
    if (quoted) continue;
    if (letter === "[") depth++;
    if (letter === "]" && --depth === 0) return at + 1;
  }
  return -1;
}

/** The quoted name of a part, e.g. `metre`. */
export function nameOf(part: string): string {
  return /"([^"]*)"/.exec(part)?.[1] ?? "";
}

/** The last unit of a part, with its factor to metres or radians: that of the part itself in WKT 1. */
export function unitOf(part: string): { name: string; factor: number } | null {
  const units = [...part.matchAll(/(?:LENGTH)?UNIT\s*\[\s*"([^"]*)"\s*,\s*([-+.\deE]+)/gi)];
  const last = units.at(-1);
  return last ? { name: last[1]!, factor: Number(last[2]) } : null;
}

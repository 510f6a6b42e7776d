const MOST = 40;

/** What came, as it was written, in quotes; the end of a long one is cut off. */
export function quoted(text: string, most = MOST): string {
  return `"${text.trim().slice(0, most)}"`;
}

/** `"x" came`, or that nothing was typed. */
export function typedWords(text: string): string {
  return text.trim() === "" ? "nothing was typed" : `${quoted(text)} came`;
}

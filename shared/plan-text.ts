/** Longest name or title a plan holds, characters. */
export const MAX_NAME = 120;
/** Longest note a plan holds, characters. */
export const MAX_NOTE = 500;

const UNSEEN = /[\p{Cc}\p{Cs}\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/gu;

/**
 * Text without control characters, lone surrogates and marks that turn the reading direction, cut to `longest`.
 * Text that has none of them and fits comes back as it is.
 */
export function cleanText(text: string, longest = MAX_NAME): string {
  if (isCleanText(text, longest)) return text;
  const plain = text
    .slice(0, 4 * longest)
    .replace(UNSEEN, " ")
    .replace(/ +/g, " ")
    .trim();
  return plain.length <= longest ? plain : cutAt(plain, longest);
}

/** True for text that {@link cleanText} leaves as it is. */
export function isCleanText(text: string, longest: number): boolean {
  return text.length <= longest && text.search(UNSEEN) < 0;
}

/** Clean text, or null when nothing can be seen of it. */
export function cleanLabel(text: string, longest = MAX_NAME): string | null {
  const clean = cleanText(text, longest);
  return clean.trim() === "" ? null : clean;
}

/** A value of a file as far as a refusal names it: plain and short values as they came, of others the kind. */
export type Came =
  | (string | number | boolean | null)
  | (readonly number[] | { readonly listOf: number } | { readonly entries: number });

/** What is kept of a value that came in a file. */
export function cameOf(value: unknown): Came {
  if (value === undefined || value === null) return null;
  if (typeof value === "string") return cleanText(value, 40);
  if (typeof value === "number" || typeof value === "boolean") return value;
  if (!Array.isArray(value)) return { entries: Object.keys(value).length };
  const isShort = value.length <= 3 && value.every((item) => typeof item === "number");
  return isShort ? value : { listOf: value.length };
}

function cutAt(text: string, longest: number): string {
  const cut = text.slice(0, longest);
  const last = cut.charCodeAt(longest - 1);
  const halved = last >= 0xd800 && last <= 0xdbff;
  return (halved ? cut.slice(0, -1) : cut).trimEnd();
}

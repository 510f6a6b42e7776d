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

/** A value as it is named in a message: short, on one line. */
export function shown(value: unknown): string {
  if (value === undefined || value === null) return "nothing";
  if (typeof value === "string") return `"${cleanText(value, 40)}"`;
  if (typeof value === "number" || typeof value === "boolean") return String(value);
  if (!Array.isArray(value)) return "an object";
  if (value.length > 3 || !value.every((item) => typeof item === "number")) {
    return `a list of ${value.length}`;
  }
  return `[${value.join(", ")}]`;
}

function cutAt(text: string, longest: number): string {
  const cut = text.slice(0, longest);
  const last = cut.charCodeAt(longest - 1);
  const halved = last >= 0xd800 && last <= 0xdbff;
  return (halved ? cut.slice(0, -1) : cut).trimEnd();
}

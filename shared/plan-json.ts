import { Refusal } from "./failure.ts";

const MAX_DEPTH = 64;
const [QUOTE, BACKSLASH, OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = codes('"\\[]{}');

/** What kind of text is expected, and how much of it. */
export interface Expected {
  /** E.g. "a plan file". */
  readonly words: string;
  readonly maxCharacters: number;
}

/**
 * JSON text as a value: bounded in size and depth before it is parsed, and without `__proto__` entries.
 * @throws Refusal `plan/too-large`, `plan/not-json`, `plan/truncated`, `plan/too-deep`, `plan/hostile-key`
 */
export function parseBounded(text: string, { words, maxCharacters }: Expected): unknown {
  if (text.length > maxCharacters) throw tooLarge(words, text.length, maxCharacters);
  const plain = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  const kind = otherKind(plain);
  if (kind !== null) {
    throw new Refusal(
      "plan/not-json",
      `Expected ${words}, which is GeoJSON text; came ${kind}.`,
      kind.includes("image") ? "Open rasters as ground." : "Choose a .geojson file.",
    );
  }
  const left = openBrackets(plain, words);
  const value = parsed(plain, words, left);
  refuseHostileKeys(value, words);
  return value;
}

/** The refusal for a text or file over its cap. */
export function tooLarge(words: string, came: number, most: number): Refusal {
  return new Refusal(
    "plan/too-large",
    `Expected ${words} of at most ${millions(most)} million characters; came ${millions(came)} million.`,
    "Check that this is the right file; cut it down to the site if it is.",
  );
}

function millions(count: number): string {
  return (count / 1e6).toFixed(1);
}

function otherKind(text: string): string | null {
  if (text.trim() === "") return "an empty file";
  if (/^(II[*+]\0|MM\0[*+])/.test(text)) return "a TIFF image";
  if (text.startsWith("PK\u0003\u0004")) return "a zip archive";
  if (text.includes("\0")) return "binary data";
  if (/^\s*</.test(text)) return "XML or HTML (perhaps KML or a web page)";
  return null;
}

function openBrackets(text: string, words: string): number {
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === QUOTE) quoted = !quoted;
    else if (quoted) i += code === BACKSLASH ? 1 : 0;
    else if (code === OPEN_LIST || code === OPEN_OBJECT) depth++;
    else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth--;
    if (depth > MAX_DEPTH) throw tooDeep(words);
  }
  return depth;
}

function codes(letters: string): number[] {
  return [...letters].map((letter) => letter.charCodeAt(0));
}

function tooDeep(words: string): Refusal {
  return new Refusal(
    "plan/too-deep",
    `Expected ${words} nested at most ${MAX_DEPTH} deep; this one is nested deeper.`,
    "No plan or footprint needs that. Ask for the file again from its source.",
  );
}

function parsed(text: string, words: string, left: number): unknown {
  try {
    return JSON.parse(text);
  } catch (thrown) {
    if (left > 0) {
      throw new Refusal(
        "plan/truncated",
        `Expected ${words} that is complete; this one ends with ${left} brackets still open.`,
        "It was cut off while it was saved or copied. Fetch it again, or open an earlier copy.",
      );
    }
    const cause = thrown instanceof Error ? thrown.message.slice(0, 200) : String(thrown);
    throw new Refusal(
      "plan/not-json",
      `Expected ${words}, which is GeoJSON text; it cannot be read as JSON: ${cause}.`,
      "Choose a .geojson file, or correct this one where the message points.",
    );
  }
}

function refuseHostileKeys(value: unknown, words: string): void {
  if (typeof value !== "object" || value === null) return;
  if (Object.hasOwn(value, "__proto__")) {
    throw new Refusal(
      "plan/hostile-key",
      `Expected ${words} without an entry named __proto__; this one has one.`,
      "No valid file has it. Ask for the file again from its source.",
    );
  }
  for (const inner of Object.values(value)) refuseHostileKeys(inner, words);
}

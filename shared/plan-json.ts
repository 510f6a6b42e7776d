import { refusal } from "./failure.ts";

const MAX_DEPTH = 64;
const [QUOTE, BACKSLASH, OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = codes('"\\[]{}');

/** Files of which the text is looked at. */
export type TextFile = "plan" | "shapes" | "kml-gpx";

/** What a text can be that is no JSON. */
export type OtherKind = "empty" | "tiff" | "zip" | "binary" | "xml";

/** What kind of text is expected, and how much of it. */
export interface Expected {
  readonly file: TextFile;
  readonly maxCharacters: number;
}

/**
 * JSON text as a value: bounded in size and depth before it is parsed, and without `__proto__` entries.
 * @throws Refusal `plan/too-large`, `plan/not-json`, `plan/truncated`, `plan/too-deep`, `plan/hostile-key`
 */
export function parseBounded(text: string, { file, maxCharacters }: Expected): unknown {
  const came = text.length;
  if (came > maxCharacters) throw refusal("plan/too-large", { file, came, most: maxCharacters });
  const plain = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  const kind = otherKind(plain);
  if (kind !== null) throw refusal("plan/not-json", { file, kind });
  const left = openBrackets(plain, file);
  const value = parsed(plain, file, left);
  refuseHostileKeys(value, file);
  return value;
}

function otherKind(text: string): OtherKind | null {
  if (text.trim() === "") return "empty";
  if (/^(II[*+]\0|MM\0[*+])/.test(text)) return "tiff";
  if (text.startsWith("PK\u0003\u0004")) return "zip";
  if (text.includes("\0")) return "binary";
  if (/^\s*</.test(text)) return "xml";
  return null;
}

function openBrackets(text: string, file: TextFile): number {
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === QUOTE) quoted = !quoted;
    else if (quoted) i += code === BACKSLASH ? 1 : 0;
    else if (code === OPEN_LIST || code === OPEN_OBJECT) depth++;
    else if (code === CLOSE_LIST || code === CLOSE_OBJECT) depth--;
    if (depth > MAX_DEPTH) throw refusal("plan/too-deep", { file, deepest: MAX_DEPTH });
  }
  return depth;
}

function codes(letters: string): number[] {
  return [...letters].map((letter) => letter.charCodeAt(0));
}

function parsed(text: string, file: TextFile, left: number): unknown {
  try {
    return JSON.parse(text);
  } catch (thrown) {
    if (left > 0) throw refusal("plan/truncated", { file, open: left });
    const cause = thrown instanceof Error ? thrown.message.slice(0, 200) : String(thrown);
    throw refusal("plan/not-json", { file, cause });
  }
}

function refuseHostileKeys(value: unknown, file: TextFile): void {
  if (typeof value !== "object" || value === null) return;
  if (Object.hasOwn(value, "__proto__")) throw refusal("plan/hostile-key", { file });
  for (const inner of Object.values(value)) refuseHostileKeys(inner, file);
}

/** Numbers in [0, 1). */
export type Random = () => number;

function whole(random: Random, below: number): number {
  return Math.floor(random() * below);
}

export function oneOf<T>(random: Random, choices: readonly T[]): T {
  return choices[whole(random, choices.length)]!;
}

const TELLING_BYTES = [0, 1, 2, 0x7f, 0x80, 0xff];
const TELLING_WORDS = [0, 1, 3, 0x7fff, 0xffff, 0x10000, 0x7fffffff, 0x80000000, 0xffffffff];

type ByteChange = (bytes: Uint8Array<ArrayBuffer>, random: Random) => Uint8Array<ArrayBuffer>;

/** Where the directory and its values lie in most small files: changes there reach furthest. */
function place(bytes: Uint8Array, random: Random): number {
  const length = Math.max(1, bytes.length);
  const head = Math.min(length, 600);
  return random() < 0.35 ? whole(random, head) : whole(random, length);
}

const BYTE_CHANGES: readonly ByteChange[] = [
  (bytes, random) => {
    bytes[place(bytes, random)]! ^= 1 << whole(random, 8);
    return bytes;
  },
  (bytes, random) => {
    bytes[place(bytes, random)] = oneOf(random, TELLING_BYTES);
    return bytes;
  },
  (bytes, random) => {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const at = Math.min(place(bytes, random), bytes.length - 4);
    if (at >= 0) view.setUint32(at, oneOf(random, TELLING_WORDS), random() < 0.8);
    return bytes;
  },
  (bytes, random) => bytes.slice(0, whole(random, bytes.length)),
  (bytes, random) => {
    const from = place(bytes, random);
    return joined(bytes.subarray(0, from), bytes.subarray(from + 1 + whole(random, 16)));
  },
  (bytes, random) => {
    const from = place(bytes, random);
    const again = bytes.subarray(from, from + 1 + whole(random, 64));
    return joined(bytes.subarray(0, from), again, bytes.subarray(from));
  },
  (bytes, random) => {
    const from = place(bytes, random);
    for (let i = from; i < Math.min(bytes.length, from + 32); i++) bytes[i] = whole(random, 256);
    return bytes;
  },
];

/** Mostly one change, so that what comes out is often nearly sound. */
function changeCount(random: Random): number {
  return random() < 0.65 ? 1 : 2 + whole(random, 3);
}

/** A copy with one to four changes of bytes. */
export function changedBytes(sound: Uint8Array, random: Random): Uint8Array<ArrayBuffer> {
  let bytes = Uint8Array.from(sound);
  const count = changeCount(random);
  for (let i = 0; i < count && bytes.length > 0; i++)
    bytes = oneOf(random, BYTE_CHANGES)(bytes, random);
  return bytes;
}

function joined(...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  return new Uint8Array(Buffer.concat(parts));
}

const TELLING_TEXTS = [
  "",
  " ",
  "-",
  "NaN",
  "1e999",
  "-9999",
  "0x10",
  "\u0000",
  "\u{1f4a7}",
  "\r\n",
  ";",
  ",,",
  "<img src=x onerror=x>",
  "=1+1",
  "9".repeat(400),
];

type TextChange = (text: string, random: Random) => string;

const TEXT_CHANGES: readonly TextChange[] = [
  (text, random) => {
    const at = whole(random, text.length + 1);
    return text.slice(0, at) + oneOf(random, TELLING_TEXTS) + text.slice(at);
  },
  (text, random) => {
    const at = whole(random, text.length + 1);
    return text.slice(0, at) + text.slice(at + 1 + whole(random, 8));
  },
  (text, random) => text.slice(0, whole(random, text.length + 1)),
  (text, random) => {
    const lines = text.split("\n");
    const from = whole(random, lines.length);
    return [
      ...lines.slice(0, from),
      lines[whole(random, lines.length)]!,
      ...lines.slice(from),
    ].join("\n");
  },
  (text, random) => {
    const numbers = [...text.matchAll(/-?\d+(\.\d+)?/g)];
    if (numbers.length === 0) return text;
    const hit = oneOf(random, numbers);
    const value = oneOf(random, [
      "-1",
      "0",
      "1e308",
      "99999999",
      "NaN",
      "",
      "1e-9",
      "24:61",
      "2026-13-45",
    ]);
    return text.slice(0, hit.index) + value + text.slice(hit.index + hit[0].length);
  },
];

/** One to four changes of a text. */
export function changedText(sound: string, random: Random): string {
  let text = sound;
  const count = changeCount(random);
  for (let i = 0; i < count; i++) text = oneOf(random, TEXT_CHANGES)(text, random);
  return text;
}

const TELLING_VALUES: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1e308,
  -1e308,
  1e-300,
  181,
  "",
  "x",
  "1",
  [],
  {},
  [[]],
  [null],
  { length: 9 },
  "__proto__",
];

/** A JSON value with one to four of its parts replaced, left out or put in twice. */
export function changedJson(sound: unknown, random: Random): unknown {
  const copy = JSON.parse(JSON.stringify(sound)) as unknown;
  const count = changeCount(random);
  for (let i = 0; i < count; i++) changePart(copy, random);
  return copy;
}

function changePart(root: unknown, random: Random): void {
  const parents = containersIn(root);
  if (parents.length === 0) return;
  const parent = oneOf(random, parents);
  const keys = Object.keys(parent);
  if (keys.length === 0) return;
  const key = oneOf(random, keys);
  const container = parent as Record<string, unknown>;
  const dice = random();
  if (dice < 0.5) container[key] = oneOf(random, TELLING_VALUES);
  else if (dice < 0.7 && Array.isArray(parent)) parent.splice(Number(key), 1);
  else if (dice < 0.7) delete container[key];
  else if (dice < 0.85 && Array.isArray(parent)) parent.push(structuredClone(parent[Number(key)]));
  else if (typeof container[key] === "number")
    container[key] = (container[key] as number) * oneOf(random, [-1, 1e-6, 1.0001, 1000]);
  else container[oneOf(random, ["x", "type", "id", "role", ""])] = structuredClone(container[key]);
}

function containersIn(value: unknown, found: object[] = []): object[] {
  if (typeof value !== "object" || value === null) return found;
  found.push(value);
  for (const part of Object.values(value)) containersIn(part, found);
  return found;
}

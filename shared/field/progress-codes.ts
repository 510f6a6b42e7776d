import { failureOf, type Outcome, refusal } from "../failure.ts";
import type { ProgressMark } from "../plan.ts";
import { BUILD_STATES } from "../plan-schema.ts";
import { ByteReader, ByteWriter, fnv1a, fromBase45, toBase45 } from "./code-bytes.ts";
import { toCentimetre } from "./progress.ts";

/** First letters of every code: what it is, and the version of what follows. */
const KIND = "DSP1";
/** Most bytes of one code: fewer make larger squares, which a camera reads in rain. Source: judgement. */
const PART_BYTES = 180;
/** Most parts of one message. */
const MOST_PARTS = 99;
const MOST_MARKS = 5000;
const MOST_TEXTS = 15_000;
/** A text of a plan has at most so many characters, each at most 4 bytes. */
const MOST_TEXT_BYTES = 2000;

/** What is built on one line of the plan with a number, as one phone tells another. */
export interface CarriedProgress {
  readonly planNumber: string;
  /** Marks of that plan, of one line; photos stay on the phone that took them. */
  readonly marks: readonly Omit<ProgressMark, "lineId" | "photoId" | "planNumber">[];
}

/**
 * The marks made by a plan's number on one line as the texts of QR codes, shown one after another: each names its
 * place among them, so that they are read in any order.
 */
export function progressCodes({ planNumber, marks }: CarriedProgress): readonly string[] {
  const texts = [...new Set(marks.flatMap(({ by, clearedBy, note }) => [by, clearedBy, note]))];
  const startS = Math.min(...marks.map(({ atS }) => atS), Number.MAX_SAFE_INTEGER);
  const writer = new ByteWriter();
  writer.text(planNumber);
  writer.number(texts.length);
  for (const text of texts) writer.text(text);
  writer.number(marks.length);
  writer.number(marks.length > 0 ? startS : 0);
  for (const { fromM, toM, state, atS, by, clearedBy, note } of marks) {
    writer.number(Math.round(fromM * 100));
    writer.number(Math.round((toM - fromM) * 100));
    writer.number(BUILD_STATES.indexOf(state));
    writer.number(atS - startS);
    for (const text of [by, clearedBy, note]) writer.number(texts.indexOf(text));
  }
  return partsOf(writer.done());
}

function partsOf(bytes: Uint8Array): string[] {
  const set = hexOf(fnv1a(bytes));
  const count = Math.max(1, Math.ceil(bytes.length / PART_BYTES));
  return Array.from({ length: count }, (_, k) => {
    const part = bytes.subarray(k * PART_BYTES, (k + 1) * PART_BYTES);
    return `${KIND}:${set}:${k + 1}/${count}:${toBase45(part)}`;
  });
}

function hexOf(hash: number): string {
  return hash.toString(16).toUpperCase().padStart(8, "0");
}

/** The codes of a message read so far. */
export interface CodesRead {
  readonly set: string;
  readonly count: number;
  readonly parts: ReadonlyMap<number, Uint8Array>;
}

const CODE = /^DSP1:([0-9A-F]{8}):(\d{1,2})\/(\d{1,2}):([0-9A-Z $%*+\-./:]*)$/;

/**
 * Takes one more code. A code of another message begins anew; what is no such code leaves all as it was, and is
 * refused with `codes/other`.
 */
export function withCode(before: CodesRead | null, text: string): Outcome<CodesRead> {
  const match = CODE.exec(text);
  const bytes = match && fromBase45(match[4]!);
  const [place, count] = [Number(match?.[2]), Number(match?.[3])];
  if (!bytes || place < 1 || place > count || count > MOST_PARTS)
    return { ok: false, failure: failureOf("codes/other") };
  const set = match[1]!;
  const isSame = before !== null && before.set === set && before.count === count;
  const parts = new Map(isSame ? before.parts : []).set(place, bytes);
  return { ok: true, value: { set, count, parts } };
}

/**
 * What a whole message says; null while codes are missing.
 * @throws Refusal `codes/damaged` when they do not go together
 */
export function readCodes({ set, count, parts }: CodesRead): CarriedProgress | null {
  if (parts.size < count) return null;
  const bytes = Uint8Array.from(
    Array.from({ length: count }, (_, k) => [...(parts.get(k + 1) ?? [])]).flat(),
  );
  const read = hexOf(fnv1a(bytes)) === set ? messageOf(new ByteReader(bytes)) : null;
  if (read) return read;
  throw refusal("codes/damaged");
}

function messageOf(reader: ByteReader): CarriedProgress | null {
  const planNumber = reader.text(MOST_TEXT_BYTES);
  const texts = listOf(reader.number(), MOST_TEXTS, () => reader.text(MOST_TEXT_BYTES));
  const markCount = reader.number();
  const startS = reader.number();
  if (planNumber === null || texts === null || startS === null) return null;
  const marks = listOf(markCount, MOST_MARKS, () => markFrom(reader, texts, startS));
  return marks && reader.isDone() ? { planNumber, marks } : null;
}

function markFrom(reader: ByteReader, texts: readonly string[], startS: number) {
  const numbers = Array.from({ length: 7 }, () => reader.number());
  const [fromCm, lengthCm, state, afterS, ...named] = numbers as [number, number, number, number];
  const [by, clearedBy, note] = (named as number[]).map((index) => texts[index]);
  const built = BUILD_STATES[state];
  if (by === undefined || clearedBy === undefined || note === undefined || !built) return null;
  const fromM = toCentimetre(fromCm / 100);
  const toM = toCentimetre((fromCm + lengthCm) / 100);
  return { fromM, toM, state: built, atS: startS + afterS, by, clearedBy, note };
}

function listOf<T>(count: number | null, most: number, read: () => T | null): T[] | null {
  if (count === null || count > most) return null;
  const list: T[] = [];
  for (let k = 0; k < count; k++) {
    const item = read();
    if (item === null) return null;
    list.push(item);
  }
  return list;
}

import { refusal } from "../failure.ts";
import type { TextPlace } from "./types.ts";

/** A part of a message between strokes, and where it begins. */
export interface Part {
  readonly text: string;
  readonly place: TextPlace;
}

/** A message with its continuation lines, comments left out. */
export interface Message {
  readonly format: "A" | "B" | "E";
  /** It takes the place of values sent before. */
  readonly isRevision: boolean;
  readonly place: TextPlace;
  /** Between the strokes of the message, the words before the first in the first. */
  readonly parts: readonly Part[];
  /** For .B: the rows below its head, up to .END; parts that a comma separates are rows of their own. */
  readonly rows: readonly (readonly Part[])[];
}

const START = /^\s*\.([ABE])(R?)(?=\s|$)/i;
const CONTINUED = /^\s*\.([ABE])(R?)(\d{1,2})(?=\s|$)/i;
const END = /^\s*\.END\b/i;

/** True where a text has a line that begins a message. */
export function hasMessages(text: string): boolean {
  return /^[^\S\n]*\.[ABE]R?[^\S\n]+\S/im.test(text);
}

/**
 * The messages of a text. Lines outside them are not looked at.
 * @throws Refusal `forecast/cut-off` for a .B message without .END, `forecast/shef` for a continuation of nothing
 */
export function messagesIn(text: string): Message[] {
  const lines = text.replace(/^\ufeff/, "").split(/\r\n|\r|\n/);
  const messages: Message[] = [];
  let open: Open | null = null;
  for (const [index, raw] of lines.entries()) {
    const line = index + 1;
    const content = withoutComments(raw);
    const start = START.exec(content);
    if (start) {
      if (open) messages.push(closed(open, line));
      const { length } = start[0];
      const format = start[1]!.toUpperCase() as Message["format"];
      const place = { line, column: content.indexOf(".") + 1 };
      open = { format, isRevision: start[2] !== "", place, head: [], rows: [] };
      addTo(open.head, partsOf(content.slice(length), line, length));
      continue;
    }
    const more = CONTINUED.exec(content);
    if (more) {
      if (open?.format !== more[1]!.toUpperCase()) {
        const place = { line, column: 1 };
        throw refusal("forecast/shef", { place, how: "continues-nothing" });
      }
      const { length } = more[0];
      addTo(open.head, partsOf(content.slice(length), line, length));
    } else if (END.test(content)) {
      if (open) messages.push({ ...finished(open) });
      open = null;
    } else if (open?.format === "B" && content.trim() !== "") {
      open.rows.push(...rowsOf(content, line));
    } else if (open && open.format !== "B" && content.trim() !== "") {
      messages.push(closed(open, line));
      open = null;
    }
  }
  if (open) messages.push(closed(open, lines.length));
  return messages;
}

interface Open {
  readonly format: Message["format"];
  readonly isRevision: boolean;
  readonly place: TextPlace;
  readonly head: Part[];
  readonly rows: (readonly Part[])[];
}

function closed(open: Open, line: number): Message {
  if (open.format === "B") {
    const about = { how: "shef-b", beginsInLine: open.place.line } as const;
    throw refusal("forecast/cut-off", { place: { line }, ...about });
  }
  return finished(open);
}

function finished({ head, ...rest }: Open): Message {
  return { ...rest, parts: head };
}

/** Adds what continues a message: a stroke is between the two, whether it is written or not. */
function addTo(head: Part[], more: readonly Part[]): void {
  const [first, ...others] = more;
  const isOpen = head.at(-1)?.text === "" && head.length > 1;
  if (isOpen) head.pop();
  if (head.length === 0 || first!.text !== "") head.push(first!);
  head.push(...others);
}

/** Parts of a line between strokes; what stands in quotes is a remark that is left out. */
function partsOf(content: string, line: number, from: number): Part[] {
  let at = from;
  return content
    .replace(/"[^"]*("|$)/g, (remark) => " ".repeat(remark.length))
    .split("/")
    .map((raw) => {
      const lead = raw.length - raw.trimStart().length;
      const part = { text: raw.trim().toUpperCase(), place: { line, column: at + lead + 1 } };
      at += raw.length + 1;
      return part;
    });
}

function rowsOf(content: string, line: number): (readonly Part[])[] {
  let at = 0;
  return content.split(",").flatMap((raw) => {
    const parts = partsOf(raw, line, at);
    at += raw.length + 1;
    return parts.some(({ text }) => text !== "") ? [parts] : [];
  });
}

/** A line with what is between colons blanked, so that columns stay. Source: SHEF Code Manual, 4.1.5 (comments). */
function withoutComments(line: string): string {
  let isComment = false;
  let plain = "";
  for (const sign of line) {
    if (sign === ":") isComment = !isComment;
    plain += isComment || sign === ":" ? " " : sign;
  }
  return plain;
}

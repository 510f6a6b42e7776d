import { refusal } from "../failure.ts";
import type { Moment } from "../time/forecast-time.ts";
import type { UnitSystem } from "../units.ts";
import { fullCode, shefZone } from "./shef-codes.ts";
import type { Message, Part } from "./shef-text.ts";
import {
  type ShefTime,
  type Step,
  shefDate,
  shefMoment,
  stepIn,
  withOverride,
} from "./shef-time.ts";
import type { TextPlace } from "./types.ts";
import type { Zone } from "./zones.ts";

/** A value of a message, as it is written. */
export interface ShefValue {
  readonly station: string;
  /** Parameter code in full, seven letters. */
  readonly code: string;
  /** Null where the message says that the time is missing. */
  readonly moment: Moment | null;
  /** Zone code, as written or as left out. */
  readonly zone: string;
  readonly text: string;
  /** Data qualifier of the message (DQ); empty where it has none. */
  readonly qualifier: string;
  readonly unit: UnitSystem;
  readonly isRevision: boolean;
  readonly isYearInferred: boolean;
  readonly place: TextPlace;
}

/** What the words of a message have set so far. */
interface State {
  readonly time: ShefTime;
  readonly isTimeMissing: boolean;
  readonly unit: UnitSystem;
  readonly qualifier: string;
  readonly step: Step | null;
}

interface Head {
  readonly station: string;
  readonly zoneCode: string;
  readonly zone: Zone;
  readonly state: State;
  readonly isYearInferred: boolean;
  /** What follows station, date and zone. */
  readonly parts: readonly Part[];
}

const CODE = /^[A-CE-Z][A-Z][A-Z0-9]{0,5}$/;
const SET = /^D[A-Z](?:[A-Z]?[+-]?\d+|[A-Z])$/;

/**
 * The values of a message, of every element. Source: SHEF Code Manual (NWS, July 5, 2012), 4 and 5.
 * @throws Refusal `forecast/shef`, `forecast/time`, `forecast/zone-needed`, `forecast/zone-clock`
 */
export function valuesOf(message: Message, nowS: number): readonly ShefValue[] {
  const head = headOf(message, nowS);
  if (message.format === "A") return ofA(message, head);
  return message.format === "E" ? ofE(message, head) : ofB(message, head);
}

function headOf({ parts, place, format }: Message, nowS: number): Head {
  const [first, ...others] = parts;
  const words = first?.text.split(/\s+/) ?? [];
  const [station = "", dateWord = "", ...more] = words;
  const createdS = createdIn(parts, nowS);
  const date = shefDate(dateWord, createdS ?? nowS);
  if (!date || !/^[A-Z0-9]{2,8}$/.test(station)) {
    const at = { place: first?.place ?? place, came: first?.text ?? "" };
    throw refusal("forecast/shef", { ...at, how: "head", format });
  }
  const zoneCode = more[0] !== undefined && /^[A-Z]{1,2}$/.test(more[0]) ? more[0] : null;
  const zone = shefZone(zoneCode ?? "Z");
  if (zone === null || typeof zone === "string") throw noZone(zoneCode!, zone, first!.place);
  const hour = zoneCode === null || zoneCode === "Z" ? 12 : 24;
  const { isInferred, ...day } = date;
  const time = { ...day, hour, minute: 0, second: 0, relative: null };
  const rest = more.slice(zoneCode === null ? 0 : 1).join(" ");
  return {
    ...{ station, zone, zoneCode: zoneCode ?? "Z" },
    state: { time, isTimeMissing: false, unit: "us", qualifier: "", step: null },
    isYearInferred: isInferred && createdS === null,
    parts: [...(rest === "" ? [] : [{ text: rest, place: first!.place }]), ...others],
  };
}

/** When a message says that it was made (DC) with its year; null without. */
function createdIn(parts: readonly Part[], nowS: number): number | null {
  const word = parts.flatMap(({ text }) => /\bDC(\d{6,14})\b/.exec(text)?.[1] ?? [])[0];
  if (word === undefined || word.length < 10) return null;
  const hasCentury = word.length >= 12 && /^(19|20)/.test(word);
  const date = shefDate(word.slice(0, hasCentury ? 8 : 6), nowS);
  return date && Date.UTC(date.year, date.month - 1, date.day) / 1000;
}

/** The state with a word such as `DH06`, `DUS`, `DQG` or `DIH6` in it. @throws Refusal for one that is not known */
function withWord(state: State, word: string, place: TextPlace): State {
  const letter = word[1]!;
  if (letter === "C" || letter === "V") return state;
  if (letter === "U" && /^DU[ES]$/.test(word)) {
    return { ...state, unit: word === "DUS" ? "metric" : "us" };
  }
  if (letter === "Q" && word.length === 3) return { ...state, qualifier: word[2]! };
  if (letter === "I") {
    const step = stepIn(word.slice(2));
    if (step && step.count !== 0) return { ...state, step };
  }
  if (/^D[SNHDMYJT]M+$/.test(word)) return { ...state, isTimeMissing: true };
  const time = withOverride(state.time, word);
  if (time) return { ...state, time, isTimeMissing: false };
  throw refusal("forecast/shef", { place, how: "setting", came: word });
}

/** The words of a part that set something, and what is left of it. */
function split(part: Part): { readonly set: readonly string[]; readonly rest: readonly string[] } {
  const words = part.text === "" ? [] : part.text.split(/\s+/);
  const end = words.findIndex((word) => !SET.test(word));
  return end < 0 ? { set: words, rest: [] } : { set: words.slice(0, end), rest: words.slice(end) };
}

function settled(state: State, set: readonly string[], place: TextPlace): State {
  return set.reduce((now, word) => withWord(now, word, place), state);
}

function ofA(message: Message, head: Head): ShefValue[] {
  let { state } = head;
  return head.parts.flatMap((part) => {
    const { set, rest } = split(part);
    state = settled(state, set, part.place);
    const [code, ...value] = rest;
    if (code === undefined) return [];
    if (!CODE.test(code)) throw noCode(part);
    return [shefValue(message, head, state, fullCode(code), value.join(" "), part.place)];
  });
}

function ofE(message: Message, head: Head): ShefValue[] {
  let { state } = head;
  let code: string | null = null;
  let count = 0;
  const values: ShefValue[] = [];
  const last = head.parts.length - 1;
  for (const [index, part] of head.parts.entries()) {
    const { set, rest } = split(part);
    state = settled(state, set, part.place);
    if (state.step === null || code === null) {
      const [found] = rest;
      if (found !== undefined && !CODE.test(found)) throw noCode(part);
      if (found !== undefined) code = fullCode(found);
      continue;
    }
    if (rest.length === 0 && (set.length > 0 || index === last)) continue;
    for (const text of rest.length === 0 ? [""] : rest) {
      values.push(shefValue(message, head, state, code, text, part.place, count));
      count += 1;
    }
  }
  if (values.length > 0) return values;
  const lacks = code === null ? "element" : state.step === null ? "interval" : "values";
  throw refusal("forecast/cut-off", { place: message.place, how: "shef-e", lacks });
}

interface BColumn {
  readonly code: string;
  readonly state: State;
}

function ofB(message: Message, head: Head): ShefValue[] {
  let { state } = head;
  const columns: BColumn[] = head.parts.flatMap((part) => {
    const { set, rest } = split(part);
    state = settled(state, set, part.place);
    return rest.map((code) => {
      if (!CODE.test(code)) throw noCode(part);
      return { code: fullCode(code), state };
    });
  });
  return message.rows.flatMap((row) => rowOfB(message, head, columns, row));
}

function rowOfB(
  message: Message,
  head: Head,
  columns: readonly BColumn[],
  row: readonly Part[],
): ShefValue[] {
  const [first, ...others] = row;
  const [station = "", ...words] = first!.text.split(/\s+/);
  const parts = [{ text: words.join(" "), place: first!.place }, ...others];
  const set: string[] = [];
  const values: ShefValue[] = [];
  let at = 0;
  for (const [index, part] of parts.entries()) {
    const { set: more, rest } = split(part);
    set.push(...more);
    const isEmpty = rest.length === 0;
    if (isEmpty && (more.length > 0 || index === parts.length - 1) && parts.length > 1) continue;
    const column = columns[at];
    if (!column) {
      const more = { place: part.place, came: part.text, count: columns.length };
      throw refusal("forecast/columns", { ...more, how: "shef-row" });
    }
    at += 1;
    const { relative } = column.state.time;
    const own = settled(column.state, set, part.place);
    const kept = own.time.relative ?? relative;
    const state = { ...own, time: { ...own.time, relative: kept } };
    values.push(
      shefValue(message, { ...head, station }, state, column.code, rest.join(" "), part.place),
    );
  }
  return values;
}

function shefValue(
  { isRevision }: Message,
  { station, zone, zoneCode, isYearInferred }: Head,
  { time, isTimeMissing, unit, qualifier, step }: State,
  code: string,
  text: string,
  place: TextPlace,
  count = 0,
): ShefValue {
  const moment = isTimeMissing ? null : shefMoment(time, zone, place, step, count);
  return {
    ...{ station, code, moment, zone: zoneCode, text, qualifier, unit },
    ...{ isRevision, isYearInferred, place },
  };
}

function noZone(came: string, former: string | null, place: TextPlace) {
  const of =
    former === null ? ({ how: "shef" } as const) : { how: "shef-former" as const, of: former };
  return refusal("forecast/zone-needed", { place, came, ...of });
}

function noCode({ text, place }: Part) {
  return refusal("forecast/shef", { place, how: "element", came: text });
}

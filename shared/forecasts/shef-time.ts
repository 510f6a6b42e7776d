import { HOUR_S } from "../constants.ts";
import { refusal } from "../failure.ts";
import type { Moment } from "../time/forecast-time.ts";
import type { TextPlace } from "./types.ts";
import { momentIn, momentsAt, type Zone } from "./zones.ts";

/** Date and hour of a message as its words have set them so far; a date override changes a part of it. */
export interface ShefTime {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  /** Steps from there (DR), null where none. */
  readonly relative: Step | null;
}

/** So many seconds, minutes, hours, days, months, ends of months or years. */
export interface Step {
  readonly unit: "S" | "N" | "H" | "D" | "M" | "E" | "Y";
  readonly count: number;
}

const DATE = /^(?:(\d{2})?(\d{2}))?(\d{2})(\d{2})$/;

/**
 * The date of a message: month and day, with a year of two or four figures or none, which is then that nearest to
 * `nowS`. Null for another word. Source: SHEF Code Manual, 4.1.3.
 */
export function shefDate(
  word: string,
  nowS: number,
): (Pick<ShefTime, "year" | "month" | "day"> & { readonly isInferred: boolean }) | null {
  const match = DATE.exec(word);
  if (!match) return null;
  const [century, years, month, day] = match.slice(1) as [string?, string?, string?, string?];
  const date = { month: Number(month), day: Number(day) };
  if (century !== undefined) return { ...date, year: Number(century + years), isInferred: false };
  const now = new Date(1000 * nowS).getUTCFullYear();
  if (years !== undefined) {
    const near = Math.floor(now / 100) * 100 + Number(years);
    const year = [near - 100, near, near + 100].find((each) => Math.abs(each - now) <= 50)!;
    return { ...date, year, isInferred: false };
  }
  const distance = (year: number) =>
    Math.abs(Date.UTC(year, date.month - 1, date.day) / 1000 - nowS);
  const year = [now - 1, now, now + 1].reduce((a, b) => (distance(b) < distance(a) ? b : a));
  return { ...date, year, isInferred: true };
}

/** A step such as `DIH6`, `DIN15`, `DRH-12` says after its two letters; null for another word. */
export function stepIn(word: string): Step | null {
  const match = /^([SNHDMEY])([+-]?\d{1,3})$/.exec(word);
  return match && { unit: match[1] as Step["unit"], count: Number(match[2]) };
}

const ORDER = ["year", "month", "day", "hour", "minute", "second"] as const;
const FIRST: Readonly<Record<string, number>> = { Y: 0, M: 1, D: 2, H: 3, N: 4, S: 5 };

/**
 * The time with an override such as `DH0630`, `DD280020`, `DM090806`, `DT202604061200` or `DRH-12` in it: parts that
 * it does not have stay. Null for a word that is none. Source: SHEF Code Manual, 4.2.
 */
export function withOverride(time: ShefTime, word: string): ShefTime | null {
  const [letter, rest] = [word[1]!, word.slice(2)];
  if (letter === "R") {
    const relative = stepIn(rest);
    return relative && { ...time, relative };
  }
  if (!/^(\d{2})+$/.test(rest) && letter !== "J") return null;
  const pairs = (rest.match(/\d{2}/g) ?? []).map(Number);
  if (letter === "T") {
    const [century, years, ...others] = pairs;
    return withParts(time, 0, [100 * century! + (years ?? 0), ...others]);
  }
  if (letter === "J") return withDayOfYear(time, rest);
  const from = FIRST[letter];
  if (from === undefined || pairs.length > ORDER.length - from) return null;
  const [first, ...others] = pairs;
  const head = from === 0 ? 100 * Math.floor(time.year / 100) + first! : first!;
  return withParts(time, from, [head, ...others]);
}

function withParts(time: ShefTime, from: number, values: readonly number[]): ShefTime {
  const set = Object.fromEntries(values.map((value, k) => [ORDER[from + k]!, value]));
  const isHour = from <= 3 && values.length > 3 - from;
  const minutes = isHour && values.length === 4 - from ? { minute: 0, second: 0 } : {};
  return { ...time, ...minutes, ...set, relative: null };
}

function withDayOfYear(time: ShefTime, rest: string): ShefTime | null {
  const match = /^(\d{2}|\d{4})?(\d{3})$/.exec(rest);
  if (!match) return null;
  const years = match[1];
  const century = 100 * Math.floor(time.year / 100);
  const year = years === undefined ? time.year : Number(years) + (years.length === 2 ? century : 0);
  const date = new Date(Date.UTC(year, 0, Number(match[2])));
  const [month, day] = [date.getUTCMonth() + 1, date.getUTCDate()];
  return { ...time, year, month, day, relative: null };
}

/**
 * The moment that a time is, in a zone, and `steps` steps on. Hours and minutes are elapsed ones; days and longer go
 * by the calendar there. Hour 24 is the end of the day.
 * @throws Refusal `forecast/time`, `forecast/zone-clock`
 */
export function shefMoment(
  time: ShefTime,
  zone: Zone,
  place: TextPlace,
  step: Step | null = null,
  steps = 0,
): Moment {
  const { relative } = time;
  const moved = [relative && { step: relative, times: 1 }, step && { step, times: steps }];
  const moves = moved.filter((each) => each !== null);
  const calendar = moves.filter(({ step: { unit } }) => "DMEY".includes(unit));
  const elapsed = moves.filter(({ step: { unit } }) => !"DMEY".includes(unit));
  const wallS = calendar.reduce(
    (at, { step: { unit, count }, times }) => onCalendar(at, unit, count * times),
    wallOf(time, place),
  );
  const moments = momentsAt(wallS, zone);
  if (moments.length !== 1) {
    const comes = moments.length > 1 ? "twice" : "never";
    throw refusal("forecast/zone-clock", { place, came: null, comes });
  }
  const { atS } = moments[0]!;
  const elapsedS = elapsed.reduce(
    (sum, { step: { unit, count }, times }) => sum + times * count * SECONDS[unit]!,
    0,
  );
  return momentIn({ atS: atS + elapsedS }, zone);
}

const SECONDS: Readonly<Record<string, number>> = { S: 1, N: 60, H: HOUR_S };

function wallOf({ year, month, day, hour, minute, second }: ShefTime, place: TextPlace): number {
  const date = new Date(Date.UTC(year, month - 1, day));
  const isDate = date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  const isClock = hour < 24 ? minute < 60 && second < 60 : hour === 24 && minute + second === 0;
  if (isDate && isClock) return date.getTime() / 1000 + HOUR_S * hour + 60 * minute + second;
  throw refusal("forecast/time", { place, how: "shef", year, month, day, hour, minute });
}

function onCalendar(wallS: number, unit: Step["unit"], count: number): number {
  const at = new Date(1000 * wallS);
  const [year, month, day] = [at.getUTCFullYear(), at.getUTCMonth(), at.getUTCDate()];
  const clockS = wallS - Date.UTC(year, month, day) / 1000;
  const ofDay = (...date: [number, number, number]) => Date.UTC(...date) / 1000 + clockS;
  if (unit === "D") return ofDay(year, month, day + count);
  const months = month + (unit === "Y" ? 12 * count : count);
  const lastDay = new Date(Date.UTC(year, months + 1, 0)).getUTCDate();
  return ofDay(year, months, unit === "E" ? lastDay : Math.min(day, lastDay));
}

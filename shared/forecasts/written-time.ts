import { ZONE_WORDS } from "./zones.ts";

/** A date and an hour as a person or a page writes them. */
export interface WrittenTime {
  /** Null where no year is written. */
  readonly year: number | null;
  readonly month: number;
  readonly day: number;
  /** Null where no hour is written. */
  readonly clock: {
    readonly hour: number;
    readonly minute: number;
    readonly second: number;
  } | null;
  /** As written; null where none is. */
  readonly zone: string | null;
}

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const MONTH = String.raw`(?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\.?`;
const WEEKDAY = String.raw`(?:(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\.?,?\s+)?`;
const YEAR = String.raw`(?:19|20)\d{2}`;
const DATE = [
  String.raw`(?<iso>${YEAR}[-/]\d{1,2}[-/]\d{1,2})`,
  String.raw`(?<us>\d{1,2}[/-]\d{1,2}[/-]${YEAR}|\d{1,2}/\d{1,2}/\d{2}|\d{1,2}/\d{1,2})`,
  String.raw`(?<dots>\d{1,2}\.\d{1,2}\.${YEAR})`,
  String.raw`(?<monthFirst>${MONTH}\s+\d{1,2}(?:st|nd|rd|th)?(?:,?\s+${YEAR})?)`,
  String.raw`(?<dayFirst>\d{1,2}[\s-]${MONTH}(?:[\s,-]+${YEAR})?)`,
].join("|");
const HALF = String.raw`[ap]\.?m\.?(?![a-z])`;
const ZONE = String.raw`[+-]\d{1,2}:?\d{2}(?![\d.])|(?:UTC|GMT)[+-]\d{1,2}(?::?\d{2})?|${ZONE_WORDS.join("|")}|[a-z]{2,5}`;
const CLOCK = String.raw`(?<clock>\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:\s*${HALF})?|\d{1,4}\s*${HALF}|\d{4}(?=\s*(?:${ZONE_WORDS.join("|")})\b)|noon)`;
const ZONED = String.raw`(?:\s*\(?(?<zone>${ZONE})\)?)?`;
const DATE_FIRST = new RegExp(`^${WEEKDAY}(?:${DATE})(?:(?:t|[,\\s]+)${CLOCK}${ZONED})?$`, "i");
const CLOCK_FIRST = new RegExp(`^${CLOCK}${ZONED}[,\\s]+${WEEKDAY}(?:${DATE})$`, "i");

const LONGEST = 60;
/** Words in capitals beside an hour that are no zone. */
const NO_ZONE = /^(M+|NA|NAN|NULL|NONE|FT|FEET|METERS?)$/;

/**
 * What `04/06/2026 07:00 CDT`, `Apr 06 2026 7:00 PM`, `2026-04-06T07:00-05:00` or `7 AM CDT Mon 04/06/2026` says; null
 * for a text that has not the shape of a time. Numbers with strokes are month, day, year; with dots day, month,
 * year. Whether there is such a day is not looked at.
 */
export function writtenTime(text: string): WrittenTime | null {
  const plain = text.replace(/["']/g, "").replace(/\s+/g, " ").trim();
  if (plain.length > LONGEST || !/\d/.test(plain)) return null;
  const match = DATE_FIRST.exec(plain) ?? CLOCK_FIRST.exec(plain);
  if (!match?.groups) return null;
  const { clock, zone } = match.groups;
  if (zone && !isZoneLike(zone)) return null;
  return { ...dateOf(match.groups), clock: clock ? clockOf(clock) : null, zone: zone ?? null };
}

const KNOWN = new Set(ZONE_WORDS);

function isZoneLike(word: string): boolean {
  if (/^[+-]|^(UTC|GMT)/i.test(word) || KNOWN.has(word.toUpperCase())) return true;
  return /^[A-Z]{3,5}$/.test(word) && !NO_ZONE.test(word);
}

type Groups = Readonly<Record<string, string | undefined>>;

function dateOf({
  iso,
  us,
  dots,
  monthFirst,
  dayFirst,
}: Groups): Omit<WrittenTime, "clock" | "zone"> {
  const numbers = (part: string) => (part.match(/\d+/g) ?? []).map(Number);
  if (iso) {
    const [year, month, day] = numbers(iso) as [number, number, number];
    return { year, month, day };
  }
  if (us) {
    const [month, day, year] = numbers(us) as [number, number, number | undefined];
    return { year: year === undefined ? null : year < 100 ? 2000 + year : year, month, day };
  }
  if (dots) {
    const [day, month, year] = numbers(dots) as [number, number, number];
    return { year, month, day };
  }
  const named = (monthFirst ?? dayFirst)!;
  const month = MONTHS.indexOf(/[a-z]{3}/i.exec(named)![0].toLowerCase()) + 1;
  const [day, year] = numbers(named) as [number, number | undefined];
  return { year: year ?? null, month, day };
}

function clockOf(text: string): NonNullable<WrittenTime["clock"]> {
  if (/^noon$/i.test(text)) return { hour: 12, minute: 0, second: 0 };
  const half = /[ap](?=\.?m)/i.exec(text)?.[0].toLowerCase();
  const digits = text.replace(/\s*[ap]\.?m\.?$/i, "");
  const [hour, minute = 0, second = 0] = digits.includes(":")
    ? digits.split(":").map(Number)
    : digits.length > 2
      ? [Number(digits.slice(0, -2)), Number(digits.slice(-2))]
      : [Number(digits)];
  if (!half) return { hour: hour!, minute, second };
  const isHalf = hour! >= 1 && hour! <= 12;
  return { hour: isHalf ? (hour! % 12) + (half === "p" ? 12 : 0) : Number.NaN, minute, second };
}

/** Seconds since 1970 that such a clock shows, read as if it were UTC; null for a day or an hour that there is not. */
export function wallSeconds(
  year: number,
  month: number,
  day: number,
  { hour, minute, second }: NonNullable<WrittenTime["clock"]>,
): number | null {
  const utc = new Date(Date.UTC(year, month - 1, day, hour, minute, Math.floor(second)));
  const exists = utc.getUTCMonth() === month - 1 && utc.getUTCDate() === day;
  const isClock = hour >= 0 && hour <= 23 && minute <= 59 && second < 60;
  return exists && isClock && year >= 1900 ? utc.getTime() / 1000 : null;
}

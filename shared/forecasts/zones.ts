import { HOUR_S } from "../constants.ts";
import type { Moment } from "../time/forecast-time.ts";

/** Where a clock is: so many minutes ahead of UTC, or a place whose clock is set forward and back (IANA name). */
export type Zone =
  | { readonly kind: "offset"; readonly offsetMin: number }
  | { readonly kind: "place"; readonly name: string };

/** What a zone as written means: a zone, or several that it may be. */
export type WrittenZone =
  | { readonly kind: "zone"; readonly zone: Zone; readonly isStandard?: true }
  | { readonly kind: "ambiguous"; readonly may: readonly string[] };

/**
 * US abbreviations, hours ahead of UTC. Source: 15 U.S.C. 260a, 263 (standard time zones and their names), 49 CFR 71;
 * Newfoundland by its own law.
 */
const STANDARD: Readonly<Record<string, number>> = {
  ...{ NST: -3.5, AST: -4, EST: -5, CST: -6, MST: -7, PST: -8, AKST: -9, HST: -10 },
  ...{ HAST: -10, CHST: 10, UTC: 0, GMT: 0, Z: 0, ZULU: 0 },
};
const DAYLIGHT: Readonly<Record<string, number>> = {
  ...{ NDT: -2.5, ADT: -3, EDT: -4, CDT: -5, MDT: -6, PDT: -7, AKDT: -8, HDT: -9, HADT: -9 },
};
/** Abbreviations without standard or daylight: the clock of a place. */
const LOCAL: Readonly<Record<string, string>> = {
  ...{ ET: "America/New_York", CT: "America/Chicago", MT: "America/Denver" },
  ...{ PT: "America/Los_Angeles", AKT: "America/Anchorage", HT: "Pacific/Honolulu" },
  ...{ EASTERN: "America/New_York", CENTRAL: "America/Chicago", MOUNTAIN: "America/Denver" },
  ...{ PACIFIC: "America/Los_Angeles", ALASKA: "America/Anchorage", HAWAII: "Pacific/Honolulu" },
};
const AMBIGUOUS: Readonly<Record<string, readonly string[]>> = {
  BST: ["Bering standard time, UTC-11:00", "British summer time, UTC+01:00"],
  SST: ["Samoa, UTC-11:00", "Singapore, UTC+08:00"],
  IST: ["India, UTC+05:30", "Israel, UTC+02:00", "Ireland, UTC+01:00"],
  AMT: ["Amazon, UTC-04:00", "Armenia, UTC+04:00"],
  GST: ["Guam, UTC+10:00", "Gulf, UTC+04:00"],
  YST: ["Yukon standard time, UTC-09:00", "Yukon time today, UTC-07:00"],
  LST: ["local standard time"],
  LDT: ["local daylight time"],
  LT: ["local time"],
  LOCAL: ["local time"],
};

/** Every abbreviation that is known, ambiguous ones too, for patterns. */
export const ZONE_WORDS: readonly string[] = [STANDARD, DAYLIGHT, LOCAL, AMBIGUOUS].flatMap(
  (names) => Object.keys(names),
);

/** What `CDT`, `CT`, `UTC` or `-05:00` means; null for a word that is no zone known here. */
export function writtenZone(text: string): WrittenZone | null {
  const word = text.trim().toUpperCase().replace(/\./g, "");
  const offsetMin = offsetOf(word.replace(/^(UTC|GMT)(?=[+-])/, ""));
  if (offsetMin !== null) return fixed(offsetMin);
  if (Object.hasOwn(STANDARD, word)) {
    const hours = STANDARD[word]!;
    return hours === 0 ? fixed(0) : { ...fixed(60 * hours), isStandard: true };
  }
  if (Object.hasOwn(DAYLIGHT, word)) return fixed(60 * DAYLIGHT[word]!);
  if (Object.hasOwn(LOCAL, word)) {
    return { kind: "zone", zone: { kind: "place", name: LOCAL[word]! } };
  }
  if (Object.hasOwn(AMBIGUOUS, word)) return { kind: "ambiguous", may: AMBIGUOUS[word]! };
  return null;
}

function fixed(offsetMin: number): WrittenZone & { readonly kind: "zone" } {
  return { kind: "zone", zone: { kind: "offset", offsetMin } };
}

const FURTHEST_MIN = 14 * 60;

function offsetOf(word: string): number | null {
  const match = /^([+-])(\d{1,2})(?::?([0-5]\d))?$/.exec(word);
  if (!match) return null;
  const minutes = 60 * Number(match[2]) + Number(match[3] ?? 0);
  if (minutes > FURTHEST_MIN) return null;
  return match[1] === "-" && minutes > 0 ? -minutes : minutes;
}

/** A zone that a person names: `America/Chicago`, `CDT`, `-05:00`. Null where there is none of that name. */
export function zoneNamed(text: string): Zone | null {
  const written = writtenZone(text);
  if (written) return written.kind === "zone" ? written.zone : null;
  const name = text.trim();
  if (!/^[a-z]+(?:[/_+-][a-z0-9_+-]+)+$/i.test(name)) return null;
  try {
    const { timeZone } = new Intl.DateTimeFormat("en-US", { timeZone: name }).resolvedOptions();
    return { kind: "place", name: timeZone };
  } catch {
    return null;
  }
}

/**
 * The moments at which a clock there shows so many seconds since 1970 read as if it were UTC: one, none in the hour
 * that is left out in spring, two in the hour that comes twice in fall.
 */
export function momentsAt(wallS: number, zone: Zone): Moment[] {
  if (zone.kind === "offset")
    return [{ atS: wallS - 60 * zone.offsetMin, offsetMin: zone.offsetMin }];
  const around = [wallS - DAY_AND_A_HALF_S, wallS + DAY_AND_A_HALF_S];
  const offsets = new Set(around.map((atS) => offsetMinAt(atS, zone.name)));
  return [...offsets]
    .map((offsetMin) => ({ atS: wallS - 60 * offsetMin, offsetMin }))
    .filter(({ atS, offsetMin }) => offsetMinAt(atS, zone.name) === offsetMin)
    .sort((a, b) => a.atS - b.atS);
}

const DAY_AND_A_HALF_S = 36 * HOUR_S;

/** A moment on the clock of a zone. */
export function momentIn({ atS }: Pick<Moment, "atS">, zone: Zone): Moment {
  return { atS, offsetMin: zone.kind === "offset" ? zone.offsetMin : offsetMinAt(atS, zone.name) };
}

/** True where daylight time is in force on the US mainland at that moment. */
export function isDaylightTime(atS: number): boolean {
  return offsetMinAt(atS, "America/Chicago") === -300;
}

const clocks = new Map<string, Intl.DateTimeFormat>();

function offsetMinAt(atS: number, timeZone: string): number {
  let clock = clocks.get(timeZone);
  if (!clock) {
    const two = "2-digit";
    clock = new Intl.DateTimeFormat("en-US", {
      ...{ timeZone, hourCycle: "h23", era: "short", year: "numeric", month: two, day: two },
      ...{ hour: two, minute: two, second: two },
    });
    clocks.set(timeZone, clock);
  }
  const parts = clock.formatToParts(new Date(1000 * atS));
  const part = (type: Intl.DateTimeFormatPartTypes) =>
    Number(parts.find((each) => each.type === type)!.value);
  const [year, month, day] = [part("year"), part("month"), part("day")];
  const thereMs = Date.UTC(year, month - 1, day, part("hour"), part("minute"), part("second"));
  return Math.round((thereMs / 1000 - Math.floor(atS)) / 60);
}

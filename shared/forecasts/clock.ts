import { Refusal } from "../failure.ts";
import type { Moment } from "../time/forecast-time.ts";
import type { ForecastNote, ReadingWith, TextPlace } from "./types.ts";
import { type WrittenTime, wallSeconds } from "./written-time.ts";
import { isDaylightTime, momentIn, momentsAt, writtenZone, type Zone } from "./zones.ts";

/** What makes moments of written times, and remembers which zones it met. */
export interface ForecastClock {
  /** @throws Refusal `forecast/time`, `forecast/zone-needed`, `forecast/zone-clock` */
  readonly momentOf: (written: WrittenTime, raw: string, place: TextPlace) => Moment;
  readonly zones: () => readonly { readonly written: string; readonly offsetMin: number }[];
  readonly notes: () => readonly ForecastNote[];
}

const GIVE_ZONE =
  "Say which clock these times are on, by a place (America/Chicago) or an offset (-05:00), or write CDT or CST after each time.";

/** @param named zone that the text names for all its times; null = none */
export function forecastClock({ zone: given }: ReadingWith, named: string | null): ForecastClock {
  const met = new Map<string, { readonly written: string; readonly offsetMin: number }>();
  const notes = new Map<string, ForecastNote>();
  const momentOf: ForecastClock["momentOf"] = (written, raw, place) => {
    const word = written.zone ?? named;
    const zone = zoneOf(word, given, raw, place);
    const wallS = wallOf(written, raw, place);
    const moment = oneMoment(momentsAt(wallS, zone), raw, place);
    if (word === null && given) notes.set("given", { kind: "zone-given", name: zoneName(given) });
    if (word !== null) {
      const { offsetMin } = moment;
      met.set(`${word} ${offsetMin}`, { written: word, offsetMin: offsetMin! });
      if (isLateStandard(word, moment)) {
        notes.set(word, { kind: "standard-in-summer", written: word });
      }
    }
    if (!given || word === null) return moment;
    notes.set("shown", { kind: "shown-in", name: zoneName(given) });
    return momentIn(moment, given);
  };
  return { momentOf, zones: () => [...met.values()], notes: () => [...notes.values()] };
}

/** `America/Chicago`, `UTC-05:00`. */
export function zoneName(zone: Zone): string {
  if (zone.kind === "place") return zone.name;
  const ahead = Math.abs(zone.offsetMin);
  const two = (n: number) => String(n).padStart(2, "0");
  return `UTC${zone.offsetMin < 0 ? "-" : "+"}${two(Math.floor(ahead / 60))}:${two(ahead % 60)}`;
}

function isLateStandard(word: string, { atS }: Moment): boolean {
  const written = writtenZone(word);
  const isStandard = written?.kind === "zone" && written.isStandard === true;
  return isStandard && !/^(HST|AST|CHST)$/i.test(word) && isDaylightTime(atS);
}

function zoneOf(word: string | null, given: Zone | null, raw: string, place: TextPlace): Zone {
  if (word === null) {
    if (given) return given;
    throw needsZone(place, `"${short(raw)}" says neither`);
  }
  const written = writtenZone(word);
  if (written?.kind === "zone") return written.zone;
  if (given) return given;
  if (!written) throw needsZone(place, `"${short(word)}" is not a known time zone`);
  throw needsZone(place, `"${short(word)}" may be ${written.may.join(", or ")}`);
}

function needsZone(place: TextPlace, came: string): Refusal {
  return new Refusal(
    "forecast/zone-needed",
    `${placeWords(place)}: expected a time with its zone, such as CDT, or its offset from UTC, such as -05:00; ${came}.`,
    GIVE_ZONE,
  );
}

function wallOf({ year, month, day, clock }: WrittenTime, raw: string, place: TextPlace): number {
  if (clock && year !== null) {
    const wallS = wallSeconds(year, month, day, clock);
    if (wallS !== null) return wallS;
  }
  const isDayFirst = year !== null && month > 12 && day <= 12;
  const [wrong, remedy] = !clock
    ? ["has no hour", "Write the hour after the date: 04/06/2026 07:00 CDT."]
    : year === null
      ? ["has no year", "Write the year: 04/06/2026 07:00 CDT."]
      : isDayFirst
        ? ["has no such month", "Write month, day and year, or the year first: 2026-04-13."]
        : ["is not a real date and time", "Correct the day or the hour."];
  throw new Refusal(
    "forecast/time",
    `${placeWords(place)}: expected a time such as 04/06/2026 07:00 CDT or 2026-04-06 07:00 -05:00; "${short(raw)}" ${wrong}.`,
    remedy,
  );
}

function oneMoment(moments: readonly Moment[], raw: string, place: TextPlace): Moment {
  if (moments.length === 1) return moments[0]!;
  const twice = moments.length > 1;
  throw new Refusal(
    "forecast/zone-clock",
    `${placeWords(place)}: expected an hour that the clock shows once; "${short(raw)}" comes ${twice ? "twice that day, before and after clocks are set back" : "never, because clocks are set forward over it"}.`,
    twice ? "Write CDT or CST, or an offset from UTC, after the time." : "Correct the hour.",
  );
}

/** `Line 4, column 18`. */
export function placeWords(place: TextPlace): string {
  return `L${placeAfterL(place)}`;
}

/** `line 4, column 18`, within a sentence. */
export function placeWithin(place: TextPlace): string {
  return `l${placeAfterL(place)}`;
}

function placeAfterL({ line, column }: TextPlace): string {
  return `ine ${line}, column ${column}`;
}

function short(text: string): string {
  return text.trim().slice(0, 40);
}

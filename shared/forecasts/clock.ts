import { refusal } from "../failure.ts";
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
    throw refusal("forecast/zone-needed", { place, how: "none", came: raw });
  }
  const written = writtenZone(word);
  if (written?.kind === "zone") return written.zone;
  if (given) return given;
  const came = { place, came: word };
  if (!written) throw refusal("forecast/zone-needed", { ...came, how: "unknown" });
  throw refusal("forecast/zone-needed", { ...came, how: "several", may: written.may });
}

function wallOf({ year, month, day, clock }: WrittenTime, raw: string, place: TextPlace): number {
  if (clock && year !== null) {
    const wallS = wallSeconds(year, month, day, clock);
    if (wallS !== null) return wallS;
  }
  const isDayFirst = year !== null && month > 12 && day <= 12;
  const how = !clock ? "no-hour" : year === null ? "no-year" : isDayFirst ? "day-first" : "unreal";
  throw refusal("forecast/time", { place, how, came: raw });
}

function oneMoment(moments: readonly Moment[], raw: string, place: TextPlace): Moment {
  if (moments.length === 1) return moments[0]!;
  const comes = moments.length > 1 ? "twice" : "never";
  throw refusal("forecast/zone-clock", { place, came: raw, comes });
}

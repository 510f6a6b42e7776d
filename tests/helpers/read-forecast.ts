import type { Outcome } from "../../shared/failure.ts";
import { readForecast } from "../../shared/forecasts/read-forecast.ts";
import type { ReadingWith, UnderstoodForecast } from "../../shared/forecasts/types.ts";
import { zoneNamed } from "../../shared/forecasts/zones.ts";
import { momentText } from "../../shared/time/forecast-time.ts";
import { failureText, failureWords } from "../../shared/words/failure.ts";
import { parseXml } from "./read-shapes.ts";

type Choices = Partial<Omit<ReadingWith, "zone">> & { readonly zone?: string };

/** A forecast's text read on April 5, 2026, by stage and in feet where nothing else is said. */
export function readText(
  text: string,
  { zone, ...how }: Choices = {},
): Outcome<UnderstoodForecast> {
  const usual: ReadingWith = {
    ...{ zone: zone === undefined ? null : zoneNamed(zone), units: null, system: "us" },
    ...{ levels: null, usualLevels: "stage", series: null, nowS: Date.UTC(2026, 3, 5) / 1000 },
  };
  return readForecast(text, { ...usual, ...how }, parseXml);
}

/** What was understood. @throws Error with the refusal where it was refused */
export function understood(text: string, how: Choices = {}): UnderstoodForecast {
  const read = readText(text, how);
  if (!read.ok) throw new Error(failureText(read.failure, "us"));
  return read.value;
}

/** The code of the refusal and what it says, in lower case. */
export function refusal(text: string, how: Choices = {}): { code: string; words: string } {
  const read = readText(text, how);
  if (read.ok) throw new Error(`taken: ${read.value.rows.length} rows`);
  return { code: read.failure.code, words: failureWords(read.failure, "us").message.toLowerCase() };
}

/** Rows as `2026-04-06T07:00-05:00 31.20`, levels in the unit of the text. */
export function rowWords({ rows, unit }: UnderstoodForecast): string[] {
  const perUnitM = unit === "us" ? 0.3048 : 1;
  return rows.map(
    ({ moment, levelM }) => `${momentText(moment)} ${(levelM / perUnitM).toFixed(2)}`,
  );
}

import { type Outcome, outcomeOf, refusal } from "../failure.ts";
import { addTexts } from "../words/failure.ts";
import { FORECAST_READING_REFUSALS } from "../words/refusals/forecast-reading.ts";
import { isRdb, readRdb } from "./read-rdb.ts";
import { readShef } from "./read-shef.ts";
import { readTable } from "./read-table.ts";
import { readWaterMl } from "./read-waterml.ts";
import { hasMessages } from "./shef-text.ts";
import type { ForecastFormat, ReadingWith, UnderstoodForecast } from "./types.ts";
import { checkedForecast, type Unchecked } from "./understood.ts";
import type { ParseXml } from "./xml-tree.ts";

/** Most characters of a forecast; XML says the same in more. */
export const MOST_CHARACTERS = 4_000_000;
const MOST_TABLE_CHARACTERS = 1_000_000;
/** Lines beyond this are no table of at most 2,000 rows. */
const MOST_LINES = 20_000;

/**
 * Reads a forecast as people get it: a table of an agency's page, SHEF messages, a USGS tab-delimited file (RDB) or
 * WaterML 2.0, whichever the text is. Refusals are those of the four readers; `forecast/rows` for too much of it.
 * @param parseXml makes a document of XML text
 */
export function readForecast(
  text: string,
  how: ReadingWith,
  parseXml: ParseXml,
): Outcome<UnderstoodForecast> {
  addTexts(FORECAST_READING_REFUSALS);
  return outcomeOf(() => {
    const format = formatOf(text);
    refuseTooMuch(text, format);
    return checkedForecast(readAs(format, text, how, parseXml));
  });
}

function readAs(
  format: ForecastFormat,
  text: string,
  how: ReadingWith,
  parseXml: ParseXml,
): Unchecked {
  if (format === "waterml") return readWaterMl(text, parseXml, how);
  if (format === "rdb") return readRdb(text, how);
  return format === "shef" ? readShef(text, how) : readTable(text, how);
}

/** What a text looks like; a table where it looks like nothing else. */
function formatOf(text: string): ForecastFormat {
  if (/^\ufeff?\s*</.test(text)) return "waterml";
  if (hasMessages(text)) return "shef";
  return isRdb(text) ? "rdb" : "table";
}

/**
 * True for the beginning of a file that is a forecast. A table, which other text resembles, is one only where the name
 * ends in .txt or has no ending.
 */
export function looksLikeForecast(start: string, name: string): boolean {
  if (start.includes("\0")) return false;
  if (/^\ufeff?\s*</.test(start)) return /MeasurementTimeseries|waterml/i.test(start);
  if (hasMessages(start) || isRdb(start)) return true;
  return /(^[^.]+|\.txt)$/i.test(name) && /\d[:/]\d\d[^\n]*\d/.test(start.slice(0, 2000));
}

function refuseTooMuch(text: string, format: ForecastFormat): void {
  const most = format === "waterml" ? MOST_CHARACTERS : MOST_TABLE_CHARACTERS;
  const lines = text.length > most ? 0 : text.split("\n", MOST_LINES + 1).length;
  if (text.length <= most && lines <= MOST_LINES) return;
  const long = lines > MOST_LINES ? { overLines: MOST_LINES } : { bytes: text.length, name: null };
  throw refusal("forecast/rows", long);
}

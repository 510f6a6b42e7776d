import { readFile } from "node:fs/promises";
import { refusal } from "../../shared/failure.ts";
import { MOST_CHARACTERS, readForecast } from "../../shared/forecasts/read-forecast.ts";
import type { UnderstoodForecast } from "../../shared/forecasts/types.ts";
import type { ParseXml } from "../../shared/forecasts/xml-tree.ts";
import { type Zone, zoneNamed } from "../../shared/forecasts/zones.ts";
import { textOfBytes } from "../../shared/text-of-bytes.ts";
import { momentText, offsetText } from "../../shared/time/forecast-time.ts";
import { lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { forecastNoteWords, leftOutWords } from "../../shared/words/forecast.ts";
import { note } from "../../shared/words/terminal.ts";
import { sizeOf } from "./files.ts";
import { toJson } from "./json.ts";
import { Misuse, type Terminal, type Verb } from "./verb.ts";
import { readWords } from "./words.ts";

const HELP = `drystead forecast FILE [--zone ZONE] [--units ft|m] [--levels stage|elevation] [--series NAME]

What a forecast says, as JSON on standard output, before a plan takes it.

  FILE       a table as an agency's page gives it, SHEF messages (.A, .B, .E), a USGS tab-delimited file (RDB)
             or WaterML 2.0; which of them is found out from its text
  --zone     the clock of times that state no zone: America/Chicago, CDT or -05:00; where they state one, they
             are shown on this clock. Without it they keep their own, and a time without any is refused
  --units    unit of levels that name none (ft when left out, with a note)
  --levels   what the levels are where the file does not say (stage when left out)
  --series   one gauge, or one series, where the file has several

"rows" rise in time, "levelM" is in meters, "at" has its offset; "leftOut" says what was not taken, by line and
column, and "notes" what was assumed. "zones" are the zones as written, with their offsets.
`;

/** `forecast`: what a text of a forecast is understood as. */
export const forecast: Verb = {
  name: "forecast",
  summary: "what a forecast says: a table, SHEF, USGS RDB or WaterML 2.0",
  help: HELP,
  run: runForecast,
};

const UNITS: ReadonlyMap<string, UnitSystem> = new Map([
  ["ft", "us"],
  ["m", "metric"],
]);

async function runForecast({ words, resolve, say }: Terminal): Promise<string> {
  const one = "one" as const;
  const { plain, options } = readWords(words, {
    ...{ "--zone": one, "--units": one, "--levels": one, "--series": one },
  });
  const [path, ...more] = plain;
  if (path === undefined) throw new Misuse("forecast needs a file.");
  if (more.length > 0) throw new Misuse(`forecast takes one file; ${more[0]} is one too many.`);
  const option = (name: string) => options.get(name)?.[0] ?? null;
  const units = unitsFrom(option("--units"));
  const levels = levelsFrom(option("--levels"));
  const zone = zoneFrom(option("--zone"));
  const text = await textOf(resolve(path));
  const { DOMParser } = await import("@xmldom/xmldom");
  const parse: ParseXml = (xml) =>
    new DOMParser({ onError: stopAtError }).parseFromString(xml, "text/xml");
  const read = readForecast(
    text,
    {
      ...{ zone, units, system: "us", levels, usualLevels: "stage", series: option("--series") },
      nowS: Date.now() / 1000,
    },
    parse,
  );
  if (!read.ok) throw refusal("forecast/in-file", { name: path, why: read.failure });
  for (const each of read.value.notes) say(note(forecastNoteWords(each)));
  return toJson(reported(read.value));
}

function stopAtError(level: string, message: string): void {
  if (level !== "warning") throw new Error(message);
}

function unitsFrom(word: string | null): UnitSystem | null {
  if (word === null) return null;
  const units = UNITS.get(word);
  if (units) return units;
  throw new Misuse(`--units is ft or m; came ${word}.`);
}

function levelsFrom(word: string | null): "stage" | "elevation" | null {
  if (word === null || word === "stage" || word === "elevation") return word;
  throw new Misuse(`--levels is stage or elevation; came ${word}.`);
}

function zoneFrom(word: string | null): Zone | null {
  if (word === null) return null;
  const zone = zoneNamed(word);
  if (zone) return zone;
  throw new Misuse(
    `--zone is a place such as America/Chicago, a zone such as CDT, or an offset such as -05:00; came ${word}.`,
  );
}

async function textOf(path: string): Promise<string> {
  const bytes = await sizeOf(path, "forecast");
  if (bytes > 4 * MOST_CHARACTERS) throw refusal("forecast/rows", { bytes, name: path });
  return textOfBytes(await readFile(path));
}

function reported(read: UnderstoodForecast) {
  const { levels, unit, rows, from, series, zones, leftOut, notes } = read;
  const hasBand = rows.some(({ lowM }) => lowM !== null);
  return {
    levels,
    unit: lengthUnit(unit),
    rows: rows.map(({ moment, levelM, lowM, highM }) => ({
      ...{ at: withSeconds(momentText(moment)), levelM },
      ...(hasBand && { lowM, highM }),
    })),
    ...{ from, series },
    zones: zones.map(({ written, offsetMin }) => ({
      ...{ written, offset: offsetText(offsetMin) },
    })),
    leftOut: leftOut.map((each) => ({
      ...each.place,
      ...{ why: each.why, came: each.came.slice(0, 40), words: leftOutWords(each) },
    })),
    notes: notes.map(forecastNoteWords),
  };
}

/** RFC 3339 has seconds. */
function withSeconds(at: string): string {
  return at.replace(/^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2})(?=[+-])/, "$1:00");
}

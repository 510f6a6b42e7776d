import type { ForecastPlace, Levels } from "../../forecasts/types.ts";
import { lengthUnit } from "../../units.ts";
import { plural } from "../plural.ts";
import { quoted } from "../quoted.ts";
import { placeWords } from "../text-place.ts";
import type { Units } from "../units.ts";
import type { RefusalText, RefusalTexts } from "./text.ts";

interface Placed {
  readonly place: ForecastPlace;
}

const WHOLE_FILE = "Get the file again, whole.";
function firstLine(unit: string): string {
  return `Put a first line that names the columns: time, stage_${unit}, low_${unit}, high_${unit}.`;
}

/** What stands in the place of a zone. */
type NoZone = Placed &
  (
    | { readonly how: "none" | "unknown" | "shef"; readonly came: string }
    | { readonly how: "several"; readonly came: string; readonly may: readonly string[] }
    | { readonly how: "shef-former"; readonly came: string; readonly of: string }
  );

const ANY_ZONE = [
  "a time with its zone, such as CDT, or its offset from UTC, such as -05:00",
  "Say which clock these times are on, by a place (America/Chicago) or an offset (-05:00), or write CDT or CST after each time.",
] as const;
const SHEF_ZONE = [
  "a zone code of SHEF, such as C, CD or Z",
  "Write the zone code after the date, Z for UTC.",
] as const;

function noZoneText(given: NoZone): RefusalText {
  const came = quoted(given.came);
  const isShef = given.how === "shef" || given.how === "shef-former";
  const [expected, remedy] = isShef ? SHEF_ZONE : ANY_ZONE;
  return [`${placeWords(given.place)}: expected ${expected}; ${notZone(given, came)}.`, remedy];
}

function notZone(given: NoZone, came: string): string {
  switch (given.how) {
    case "none":
      return `${came} says neither`;
    case "unknown":
      return `${came} is not a known time zone`;
    case "several":
      return `${came} may be ${given.may.join(", or ")}`;
    case "shef":
      return `came ${came}`;
    case "shef-former":
      return `${came} is the local clock of ${given.of} time, which is no longer kept`;
  }
}

type WrongColumns =
  | (Placed & {
      readonly how: "count" | "rdb-count";
      readonly count: number;
      readonly came: number;
      readonly asInLine: number;
    })
  | (Placed & {
      readonly how: "names" | "rdb-names";
      readonly names: readonly string[];
    })
  | (Placed & { readonly how: "unnamed"; readonly came: number })
  | (Placed & { readonly how: "shef-row"; readonly count: number; readonly came: string })
  | (Placed & { readonly how: "levels"; readonly chosen: Levels; readonly named: Levels });

function columnsText(given: WrongColumns, { system }: Units): RefusalText {
  const at = `${placeWords(given.place)}: expected`;
  switch (given.how) {
    case "count":
    case "rdb-count":
      return [
        `${at} ${plural(given.count, "column")} as in line ${given.asInLine}; came ${given.came}.`,
        given.how === "count"
          ? "Give every row the same columns, without notes between them."
          : WHOLE_FILE,
      ];
    case "names":
      return [
        `${at} column names with time and stage, each once and all in one unit; came ${given.names.map((name) => quoted(name, 20)).join(", ")}.`,
        firstLine(lengthUnit(system)),
      ];
    case "rdb-names":
      return [
        `${at} a column datetime; came ${given.names
          .slice(0, MOST_NAMED)
          .map((name) => quoted(name, 30))
          .join(", ")}.`,
        "Get instantaneous values, which have date and hour.",
      ];
    case "unnamed":
      return [
        `${at} time and stage, or time, stage, low and high; came ${plural(given.came, "column")}.`,
        firstLine(lengthUnit(system)),
      ];
    case "shef-row":
      return [
        `${at} ${plural(given.count, "value")} as in the head of the .B message; ${quoted(given.came)} is one more.`,
        "Correct the line, or copy the message again.",
      ];
    case "levels":
      return [
        `${at} a forecast by ${given.chosen}, as chosen; it names ${given.named}.`,
        `Choose ${given.named} for this forecast, or correct it there.`,
      ];
  }
}

type CutOff =
  | (Placed & {
      readonly how: "rdb";
      readonly count: number;
      readonly came: number;
      readonly asInLine: number;
    })
  | (Placed & { readonly how: "shef-b"; readonly beginsInLine: number })
  | (Placed & { readonly how: "shef-e"; readonly lacks: "element" | "interval" | "values" });

const SHEF_LACKS = { element: "an element", interval: "an interval", values: "values" };

function cutOffText(given: CutOff): RefusalText {
  const at = `${placeWords(given.place)}: expected`;
  switch (given.how) {
    case "rdb":
      return [
        `${at} ${plural(given.count, "column")} as in line ${given.asInLine}; came ${given.came}, and the file may be cut off.`,
        WHOLE_FILE,
      ];
    case "shef-b":
      return [
        `${at} .END, which ends the .B message of line ${given.beginsInLine}; the message ends without it and may be cut off.`,
        "Copy the message again, whole, with its last line .END.",
      ];
    case "shef-e":
      return [
        `${at} a .E message with an element, an interval (DI) and values; it ends without ${SHEF_LACKS[given.lacks]} and may be cut off.`,
        "Copy the message again, whole, with its lines .E1, .E2 and so on.",
      ];
  }
}

type NoShef = Placed &
  (
    | { readonly how: "head"; readonly format: string; readonly came: string }
    | { readonly how: "setting" | "element"; readonly came: string }
    | { readonly how: "continues-nothing" }
  );

function shefText(given: NoShef): RefusalText {
  const at = `${placeWords(given.place)}: expected`;
  const correct = "Correct it, or copy the message again.";
  switch (given.how) {
    case "head":
      return [
        `${at} a .${given.format} message with a gauge and a date such as .${given.format} DTWM5 0406; came ${quoted(given.came)}.`,
        "Copy the message again, whole.",
      ];
    case "setting":
      return [
        `${at} a date, a unit, a qualifier or an interval after D; came ${quoted(given.came)}.`,
        correct,
      ];
    case "element":
      return [`${at} an element such as HG or HGIFF; ${quoted(given.came)} came.`, correct];
    case "continues-nothing":
      return [
        `${at} the message that this line continues above it; there is none, and its beginning may be cut off.`,
        "Copy the message again, from its first line.",
      ];
  }
}

type NoWaterMl =
  | { readonly how: "other" | "waterml-1"; readonly root: string }
  | { readonly how: "lengths"; readonly values: number; readonly times: number }
  | (Placed & { readonly how: "no-time" })
  | (Placed & { readonly how: "spacing"; readonly came: string });

function waterMlText(given: NoWaterMl): RefusalText {
  switch (given.how) {
    case "other":
    case "waterml-1": {
      const isFirst = given.how === "waterml-1";
      return [
        `Expected WaterML 2.0 with a MeasurementTimeseries; the file begins with <${given.root.slice(0, 40)}>${isFirst ? ", which is WaterML 1" : ""}.`,
        isFirst
          ? "Get it as WaterML 2.0, or as a USGS tab-delimited file."
          : "Get the forecast as WaterML 2.0, SHEF or a table.",
      ];
    }
    case "lengths":
      return [
        `Expected as many values as times; came ${plural(given.values, "value")} for ${plural(given.times, "time")}, and the file may be cut off.`,
        WHOLE_FILE,
      ];
    case "no-time":
      return [
        `${placeWords(given.place)}: expected a time at this point, or baseTime and spacing for all; there is none.`,
        WHOLE_FILE,
      ];
    case "spacing":
      return [
        `${placeWords(given.place)}: expected a spacing of days, hours or minutes such as PT6H; came ${quoted(given.came)}.`,
        "Get the file with a time at each point.",
      ];
  }
}

const MOST_NAMED = 12;

function named(names: readonly string[]): string {
  const first = names.slice(0, MOST_NAMED).map((name) => `"${name}"`);
  return first.join(", ");
}

/** Of a text of a forecast, before its rows are looked at together. */
export const FORECAST_READING_REFUSALS = {
  "forecast/zone-needed": noZoneText,
  "forecast/columns": columnsText,
  "forecast/cut-off": cutOffText,
  "forecast/shef": shefText,
  "forecast/waterml": waterMlText,
  "forecast/zone-clock": ({
    place,
    came,
    comes,
  }: Placed & { came: string | null; comes: "twice" | "never" }) => [
    `${placeWords(place)}: expected an hour that the clock shows once; ${came === null ? "this one" : quoted(came)} comes ${comes === "twice" ? "twice that day, before and after clocks are set back" : "never, because clocks are set forward over it"}.`,
    came === null
      ? "Write the standard or daylight zone, CS or CD for C."
      : comes === "twice"
        ? "Write CDT or CST, or an offset from UTC, after the time."
        : "Correct the hour.",
  ],
  "forecast/xml": ({ is }: { is: "page" | "entities" | "broken" }) => {
    const one = "Expected WaterML 2.0, SHEF, a USGS tab-delimited file or a table; the text is";
    if (is === "page") {
      return [`${one} a web page.`, "Copy the table out of the page, and paste that."];
    }
    return is === "entities"
      ? [`${one} XML with entities of its own, which are not read.`, "Get it as WaterML 2.0."]
      : [
          "Expected WaterML 2.0, which is XML; the text is not well-formed XML, and may be cut off.",
          WHOLE_FILE,
        ];
  },
  "forecast/unit": ({ place, unit }: Placed & { unit: string }) => [
    `${placeWords(place)}: expected levels in m, cm, mm, ft, [ft_i] or [ft_us]; the unit is ${quoted(unit)}.`,
    "Say whether they are feet or meters.",
  ],
  "forecast/which": ({ of, names }: { of: "series" | "gauges"; names: readonly string[] }) => [
    `Expected one series of water levels, or which one of several to use; there are ${names.length} ${of}: ${named(names)}${names.length > MOST_NAMED ? ` and ${names.length - MOST_NAMED} more` : ""}.`,
    "Say which one this plan is for.",
  ],
  "forecast/no-level": ({ others }: { others: readonly string[] }) => [
    `Expected a series of water levels, stage or elevation; ${others.length > 0 ? `came ${named(others)}` : "there is none"}.`,
    "Get the forecast of the stage; a flow alone says no level.",
  ],
  "forecast/empty": () => [
    "Expected rows of time and stage; nothing came.",
    "Paste the forecast, one row for each time: 04/06/2026 07:00 CDT, 31.2.",
  ],
} satisfies RefusalTexts;

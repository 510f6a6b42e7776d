import { HOUR_S } from "../../constants.ts";
import type { Failure } from "../../failure.ts";
import type { ForecastPlace, Levels } from "../../forecasts/types.ts";
import { quoted } from "../quoted.ts";
import { placeWithin, placeWords } from "../text-place.ts";
import type { Units } from "../units.ts";
import type { RefusalText, RefusalTexts } from "./text.ts";

interface Placed {
  readonly place: ForecastPlace;
}

/** What came in the place of a time, by where it stands, or what is wrong with the time that came. */
type NoTime = Placed &
  (
    | { readonly how: "row" | "table" | "rdb" | "waterml"; readonly came: string }
    | { readonly how: "no-hour" | "no-year" | "day-first" | "unreal"; readonly came: string }
    | {
        readonly how: "shef";
        readonly year: number;
        readonly month: number;
        readonly day: number;
        readonly hour: number;
        readonly minute: number;
      }
  );

const TIME_EXPECTED = {
  row: "a time such as 2026-04-03 14:00 -05:00 or 2026-04-03T14:00-05:00",
  table: "a time such as 04/06/2026 07:00 CDT, 2026-04-03 14:00 -05:00 or 2026-04-03T14:00-05:00",
  rdb: "date, hour and zone such as 2026-04-06 07:00 CDT",
  waterml: "a time such as 2026-04-06T07:00:00-05:00",
};
const TIME_REMEDY = {
  row: "Write year, month and day, the hour, and the offset from UTC.",
  table: "Write year, month and day, the hour, and the zone or offset from UTC.",
  rdb: "Get the file again, or take the row out.",
  waterml: "Get the file again, whole.",
};
const TIME_WRONG = {
  "no-hour": ["has no hour", "Write the hour after the date: 04/06/2026 07:00 CDT."],
  "no-year": ["has no year", "Write the year: 04/06/2026 07:00 CDT."],
  "day-first": ["has no such month", "Write month, day and year, or the year first: 2026-04-13."],
  unreal: ["is not a real date and time", "Correct the day or the hour."],
} as const;

function noTimeText(given: NoTime): RefusalText {
  const at = `${placeWords(given.place)}: expected`;
  switch (given.how) {
    case "shef": {
      const { year, month, day, hour, minute } = given;
      return [
        `${at} a real date and hour; came ${year}-${month}-${day}, hour ${hour}, minute ${minute}.`,
        "Correct the date or the hour (DH), or copy the message again.",
      ];
    }
    case "no-hour":
    case "no-year":
    case "day-first":
    case "unreal": {
      const [wrong, remedy] = TIME_WRONG[given.how];
      return [
        `${at} a time such as 04/06/2026 07:00 CDT or 2026-04-06 07:00 -05:00; ${quoted(given.came)} ${wrong}.`,
        remedy,
      ];
    }
    default: {
      const { how, came } = given;
      const sheet = how === "table" ? ofSpreadsheet(came) : "";
      return [
        `${at} ${TIME_EXPECTED[how]}; came ${quoted(came)}${sheet}.`,
        sheet === ""
          ? TIME_REMEDY[how]
          : "Format that column as date and time in the spreadsheet, and copy it again.",
      ];
    }
  }
}

function ofSpreadsheet(came: string): string {
  if (came.startsWith("=")) return ", a formula";
  return /^\d{5}(\.\d+)?$/.test(came) ? ", a spreadsheet's own number for a date" : "";
}

type NoLevel = Placed &
  (
    | { readonly how: "table" | "thousands" | "shef" | "rdb" | "waterml"; readonly came: string }
    | {
        readonly how: "outside";
        readonly levels: Levels;
        readonly leastM: number;
        readonly mostM: number;
        readonly cameM: number;
        /** Too high for a stage, and within reason for an elevation: agencies send those as stages too. */
        readonly mayBeElevation: boolean;
      }
  );

const LEVEL_REMEDY = {
  shef: "Correct the figure, or copy the message again.",
  rdb: "Get the file again, or take the row out if its time is not needed.",
  waterml: "Get the file again, whole.",
};

function noLevelText(given: NoLevel, units: Units): RefusalText {
  const at = `${placeWords(given.place)}: expected`;
  if (given.how === "outside") {
    const { levels, leastM, mostM, cameM, mayBeElevation } = given;
    return [
      `${at} ${levels === "stage" ? "a stage" : "an elevation"} from ${units.length(leastM)} to ${units.length(mostM)}; came ${units.length(cameM)}.`,
      `${mayBeElevation ? "If these are elevations, choose Elevation instead of Stage at the gauge. Otherwise check" : "Check"} the figure and its unit. A mark for a missing value is not a level.`,
    ];
  }
  const { how, came } = given;
  if (how === "thousands") {
    return [
      `${at} a level without a comma for thousands; ${quoted(came)} may be one, or a decimal.`,
      `Write it without a comma: ${came.replace(",", "")}, or ${came.replace(",", ".")}.`,
    ];
  }
  if (how !== "table") {
    const example = how === "waterml" ? "9.51" : "31.2";
    const orMissing = how === "shef" ? ", or M where it is missing" : "";
    return [
      `${at} a level such as ${example}${orMissing}; ${quoted(came)} came.`,
      LEVEL_REMEDY[how],
    ];
  }
  const isFormula = came.startsWith("=");
  const what =
    came === "" ? "the place is empty" : `${quoted(came)} ${isFormula ? "is a formula" : "came"}`;
  return [
    `${at} a level such as 31.2; ${what}.`,
    isFormula
      ? "Copy the values of the spreadsheet, not its formulas."
      : "Put in the missing figure, or take the row out if its time is not needed.",
  ];
}

/** Too few or too many rows, lines, or bytes of a file or a text without a name. */
type RowCount =
  | { readonly rows: number; readonly least: number; readonly most: number }
  | { readonly overLines: number }
  | { readonly bytes: number; readonly name: string | null };

function rowCountText(given: RowCount): RefusalText {
  if ("rows" in given) {
    return [
      `Expected ${given.least} to ${given.most} rows of time and stage; came ${given.rows}.`,
      "Give the forecast from now to after its crest, one row for each time.",
    ];
  }
  const came =
    "overLines" in given
      ? `this text is more than ${given.overLines} lines`
      : `${given.name ?? "this text"} is ${Math.max(1, Math.round(given.bytes / 1e6))} MB`;
  return [
    `Expected a forecast of at most 2,000 rows; ${came} long.`,
    "Give the forecast alone, without the whole record of the gauge.",
  ];
}

type Twice = Placed & { readonly before: ForecastPlace };

interface Gap extends Twice {
  readonly gapS: number;
  readonly usualS: number;
  /** Times of the two rows, as they came. */
  readonly from: string;
  readonly to: string;
}

interface Band extends Placed {
  readonly lowM: number | null;
  readonly levelM: number;
  readonly highM: number | null;
}

/** Of rows of a forecast, wherever they come from, and of taking one. */
export const FORECAST_REFUSALS = {
  "forecast/time": noTimeText,
  "forecast/level": noLevelText,
  "forecast/rows": rowCountText,
  "forecast/zone": ({ place, in: form }: Placed & { in: "row" | "table" }) =>
    form === "row"
      ? [
          `${placeWords(place)}: expected every time with an offset from UTC, or none; this one and the row before it differ.`,
          "Write the offset on every row, such as -05:00.",
        ]
      : [
          `${placeWords(place)}: expected every time with a zone or an offset from UTC, or none; this one and those before it differ.`,
          "Write the zone on every row, such as CDT or -05:00.",
        ],
  "forecast/duplicate": ({ place, before }: Twice) => [
    `${placeWords(place)}: expected each time once; it has the same time as ${placeWithin(before)}.`,
    "Keep the newer of the two rows.",
  ],
  "forecast/disorder": ({ place, before }: Twice) => [
    `${placeWords(place)}: expected rows that go forward in time; it is earlier than ${placeWithin(before)}.`,
    "Put the rows in order, or take out the older forecast among them.",
  ],
  "forecast/band": ({ place, lowM, levelM, highM }: Band, { length }) => [
    `${placeWords(place)}: expected low, likely and high in rising order; came ${lowM === null ? "none" : length(lowM)}, ${length(levelM)} and ${highM === null ? "none" : length(highM)}.`,
    "Check which column is which: time, likely, low, high, or name them in a first line.",
  ],
  "forecast/gap": ({ place, before, gapS, usualS, from, to }: Gap) => [
    `${placeWords(place)}: ${hours(gapS)} hours after ${placeWithin(before)}, where ${usualS < gapS ? `rows are usually ${hours(usualS)} hours apart` : "a day is the most between two rows"}. Nothing is made up for a gap.`,
    `Put in the missing rows between "${from}" and "${to}".`,
  ],
  "forecast/in-file": ({ name, why }: { name: string; why: Failure }, _units, say) => {
    const [message, remedy] = say(why);
    return [`${name}: ${message}`, remedy];
  },
  "forecast/draft": ({ name }: { name: string }) => [
    `${name}: expected no forecast half typed in Crew and time; there is one.`,
    "Take it or close it there, then open the file again.",
  ],
  "forecast/read": ({ name }: { name: string }) => [
    `${name} is read as a forecast. It does not count yet.`,
    "Look at what was understood in Crew and time, and take it there.",
  ],
  "forecast/no-gauge-zero": () => [
    "Expected a gauge zero for a forecast by stage; the water is given as an elevation, and no gauge zero is typed.",
    "Choose Stage at a gauge in Gauge and forecast and type the gauge zero; or choose Elevation here if the figures are elevations.",
  ],
} satisfies RefusalTexts;

function hours(seconds: number): number {
  return Number((seconds / HOUR_S).toFixed(1));
}

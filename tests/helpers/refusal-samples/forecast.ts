import { failureOf } from "../../../shared/failure.ts";
import type { FORECAST_REFUSALS } from "../../../shared/words/refusals/forecast.ts";
import type { FORECAST_READING_REFUSALS } from "../../../shared/words/refusals/forecast-reading.ts";
import type { SamplesOf } from "./samples.ts";

const place = { line: 4, column: 18 };
const row = { row: 2 };
const written = { place, came: "04/31 07:00" };
const asInLine = 3;
const counts = { count: 4, came: 5, asInLine };
const range = { leastM: -100, mostM: 200, cameM: 265.5 };
const names = ["CEDW4 HGIFF", "CEDW4 HTIFF"];

export const FORECAST_SAMPLES: SamplesOf<
  typeof FORECAST_REFUSALS & typeof FORECAST_READING_REFUSALS
> = {
  "forecast/time": [
    { place: row, how: "row", came: "tomorrow" },
    { place, how: "table", came: "46118.2917" },
    { place, how: "table", came: "=NOW()" },
    { place, how: "table", came: "soon" },
    { place, how: "rdb", came: "soon" },
    { place, how: "waterml", came: "soon" },
    ...(["no-hour", "no-year", "day-first", "unreal"] as const).map((how) => ({ ...written, how })),
    { place, how: "shef", year: 2026, month: 4, day: 31, hour: 6, minute: 0 },
  ],
  "forecast/level": [
    { place, how: "outside", levels: "stage", ...range, mayBeElevation: true },
    { place: row, how: "outside", levels: "elevation", ...range, mayBeElevation: false },
    { place, how: "thousands", came: "1,012" },
    { place, how: "table", came: "" },
    { place, how: "table", came: "=B1" },
    { place, how: "table", came: "high" },
    { place, how: "shef", came: "high" },
    { place, how: "rdb", came: "high" },
    { place, how: "waterml", came: "high" },
  ],
  "forecast/rows": [
    { rows: 1, least: 2, most: 2000 },
    { overLines: 20_000 },
    { bytes: 2e7, name: null },
    { bytes: 2e7, name: "River.txt" },
  ],
  "forecast/zone": [
    { place, in: "row" },
    { place, in: "table" },
  ],
  "forecast/duplicate": [{ place, before: { line: 3, column: 1 } }],
  "forecast/disorder": [{ place: row, before: { row: 1 } }],
  "forecast/band": [
    { place, lowM: null, levelM: 9, highM: 8 },
    { place, lowM: 9.5, levelM: 9, highM: null },
  ],
  "forecast/gap": [
    { place, before: { line: 3, column: 1 }, gapS: 90_000, usualS: 21_600, from: "a", to: "b" },
    { place, before: { line: 3, column: 1 }, gapS: 90_000, usualS: 90_000, from: "a", to: "b" },
  ],
  "forecast/in-file": [{ name: "River.txt", why: failureOf("forecast/empty") }],
  "forecast/draft": [{ name: "River.txt" }],
  "forecast/read": [{ name: "River.txt" }],
  "forecast/no-gauge-zero": "no figures",
  "forecast/zone-needed": [
    { ...written, how: "none" },
    { place, how: "unknown", came: "QST" },
    { place, how: "several", came: "BST", may: ["British Summer Time", "Bering"] },
    { place, how: "shef", came: "QQ" },
    { place, how: "shef-former", came: "B", of: "Bering" },
  ],
  "forecast/columns": [
    { place, how: "count", ...counts },
    { place, how: "rdb-count", ...counts },
    { place, how: "names", names },
    { place, how: "rdb-names", names },
    { place, how: "unnamed", came: 1 },
    { place, how: "unnamed", came: 7 },
    { place, how: "shef-row", count: 2, came: "31.2" },
    { place: { line: 1 }, how: "levels", chosen: "stage", named: "elevation" },
    { place: { series: "CEDW4 HTIFF" }, how: "levels", chosen: "stage", named: "elevation" },
  ],
  "forecast/cut-off": [
    { place, how: "rdb", ...counts },
    { place: { line: 9 }, how: "shef-b", beginsInLine: 2 },
    ...(["element", "interval", "values"] as const).map((lacks) => ({
      ...{ place, how: "shef-e" as const, lacks },
    })),
  ],
  "forecast/shef": [
    { place, how: "head", format: "A", came: "" },
    { place, how: "setting", came: "DZ" },
    { place, how: "element", came: "12" },
    { place, how: "continues-nothing" },
  ],
  "forecast/waterml": [
    { how: "other", root: "html" },
    { how: "waterml-1", root: "timeSeriesResponse" },
    { how: "lengths", values: 1, times: 4 },
    { how: "lengths", values: 3, times: 4 },
    { place, how: "no-time" },
    { place, how: "spacing", came: "6 hours" },
  ],
  "forecast/zone-clock": [
    { place, came: "11/01/2026 01:30", comes: "twice" },
    { place, came: "03/08/2026 02:30", comes: "never" },
    { place, came: null, comes: "twice" },
  ],
  "forecast/xml": [{ is: "page" }, { is: "entities" }, { is: "broken" }],
  "forecast/unit": [
    { place, unit: "furlong" },
    { place: { series: "" }, unit: "furlong" },
  ],
  "forecast/which": [
    { of: "gauges", names },
    { of: "series", names: Array.from({ length: 15 }, (_, k) => `GAGE${k}`) },
  ],
  "forecast/no-level": [{ others: names }, { others: [] }],
  "forecast/empty": "no figures",
};

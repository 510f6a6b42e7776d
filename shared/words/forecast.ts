import { timeOf } from "../defaults.ts";
import type { ForecastChange } from "../forecasts/history.ts";
import type {
  ForecastFormat,
  ForecastNote,
  LeftOut,
  UnderstoodForecast,
} from "../forecasts/types.ts";
import type { Plan } from "../plan.ts";
import { formatCount, formatHours, formatLength, lengthUnit, type UnitSystem } from "../units.ts";
import { momentWords, zoneWords } from "./clock.ts";
import { plural } from "./plural.ts";
import { placeWords } from "./text-place.ts";
import { namedLevel } from "./time.ts";

const FORMATS: Readonly<Record<ForecastFormat, string>> = {
  shef: "SHEF",
  rdb: "USGS tab-delimited file (RDB)",
  waterml: "WaterML 2.0",
  table: "Table",
};
const MOST_LISTED = 6;

/** `SHEF, CEDW4 HGIFF: 12 rows of stage in ft; C is UTC-05:00.` */
export function understoodWords(understood: UnderstoodForecast): string {
  const { from, series, rows, levels, unit } = understood;
  const named = [FORMATS[from], ...(series ? [series] : [])].join(", ");
  const zones = zonesWords(understood);
  const count = `${plural(rows.length, "row")} of ${levels} in ${lengthUnit(unit)}`;
  return `${named}: ${count}${zones === "" ? "" : `; ${zones}`}.`;
}

/** `CDT is UTC-05:00`, each zone with its offset as it was understood; empty where times have offsets of their own. */
function zonesWords({ zones }: UnderstoodForecast): string {
  return zones
    .filter(({ written }) => !/^[+-]/.test(written))
    .map(({ written, offsetMin }) => `${written} is ${zoneWords({ atS: 0, offsetMin })}`)
    .join(", ");
}

/** What was assumed, converted or not used, in one sentence. */
export function forecastNoteWords(note: ForecastNote): string {
  switch (note.kind) {
    case "unit-assumed":
      return `The forecast names no unit: its figures are taken as ${lengthUnit(note.unit)}.`;
    case "unit-given":
      return `Its figures are taken as ${lengthUnit(note.unit)}, as chosen${note.written === "" ? "" : `; the file says "${note.written}"`}.`;
    case "columns-not-used":
      return `Not used: ${quoted(note.names)}.`;
    case "lines-not-used":
      return `Not used: ${note.lines.length === 1 ? "line" : "lines"} ${note.lines.slice(0, MOST_LISTED).join(", ")}${more(note.lines)}.`;
    case "zone-given":
      return `The forecast states no zone: its times are taken as ${note.name}, as chosen.`;
    case "shown-in":
      return `Times are shown as ${note.name}.`;
    case "standard-in-summer":
      return `${note.written} is standard time, on a date when daylight time is in force: taken as written. Check that it is not an hour off.`;
    case "year-inferred":
      return `No year is written: taken as ${note.year}, the nearest.`;
    case "doubtful":
      return `${plural(note.rows, "value")} marked "${note.code}" (estimated, questioned or not checked), used all the same.`;
    case "observed":
      return "These values are not marked as a forecast: they are observed levels, unless the source says otherwise.";
    case "series":
      return `Taken: ${note.taken}. Not used: ${quoted(note.others)}.`;
    case "clock-change":
      return "Clocks change during this forecast: each time has its own offset.";
    case "too-few":
      return `${plural(note.rows, "row")}: a plan needs at least two.`;
    case "gap":
      return `Rows are too far apart before line ${note.line}: a plan does not take it with that gap.`;
  }
}

/** By a forecast that counts nothing, because its levels are at no known elevation. */
export const NO_GAUGE_ZERO =
  "The forecast is by stage and no gauge zero is given: its elevations are not known, and nothing of it counts. Choose Stage at a gauge in Gauge and forecast, and type the gauge zero.";

const SAME_M = 0.005;
const SAME_H = 0.05;

/** `Forecast crest stage 32.4 ft, Thu 07:00, where the earlier forecast had 31.0 ft: 1.4 ft higher, 12.0 h sooner.` */
export function forecastChangeWords(
  plan: Plan,
  { before, now, riseM, laterH }: ForecastChange,
  system: UnitSystem,
): string {
  const at = ({ moment }: ForecastChange["now"]) => momentWords(moment, true, system);
  const level = (m: number) => namedLevel(plan, m, system);
  const height =
    Math.abs(riseM) < SAME_M
      ? "as high"
      : `${formatLength(Math.abs(riseM), system, 2)} ${riseM > 0 ? "higher" : "lower"}`;
  const hour =
    Math.abs(laterH) < SAME_H
      ? "at the same hour"
      : `${formatHours(Math.abs(laterH))} ${laterH > 0 ? "later" : "sooner"}`;
  return `Forecast crest ${level(now.elevationM)}, ${at(now)}; the earlier forecast had ${level(before.elevationM)}, ${at(before)}: ${height}, ${hour}.`;
}

/** What a forecast newer than the plan's work asks for. All lengths in metres. */
export interface ChangedWork {
  /** Likely crest over the water the line is sized for; negative = below it. */
  readonly overPlanM: number;
  /** Bags of the line as it is sized, and sized for the likely crest; null where they are not known. */
  readonly bags: number | null;
  readonly bagsAtCrest: number | null;
  /** Length marked as built to its height or more, and all that is to be built. */
  readonly toHeightM: number;
  readonly toBuildM: number;
}

/** What to do otherwise with what is built, one sentence each. */
export function changedWorkWords(work: ChangedWork, system: UnitSystem): string[] {
  const { overPlanM, bags, bagsAtCrest, toHeightM, toBuildM } = work;
  const by = formatLength(Math.abs(overPlanM), system, 2);
  const built = `${formatLength(toHeightM, system, 0)} (${Math.round((100 * toHeightM) / Math.max(1, toBuildM))} %)`;
  if (Math.abs(overPlanM) < SAME_M) return ["The line is sized for this crest."];
  const more = bags === null || bagsAtCrest === null ? null : bagsAtCrest - bags;
  const count =
    more === null
      ? []
      : [
          `Sized for this crest it takes ${formatCount(bagsAtCrest!)} bags, ${formatCount(Math.abs(more))} ${more < 0 ? "fewer" : "more"} than now.`,
        ];
  if (overPlanM < 0) {
    return [
      `The line is sized for ${by} more than this crest.`,
      ...count,
      ...(toHeightM > 0 ? [`${built} is built to height: leave it as it is.`] : []),
    ];
  }
  const raise =
    toHeightM > 0
      ? [
          `${built} is built to the former height: widen its base first, then raise it by ${by}. Lay the rest to the new height from the start.`,
        ]
      : [];
  return [`This crest is ${by} over the water the line is sized for.`, ...count, ...raise];
}

/** `2 earlier forecasts are kept: ...`; null where there are none. */
export function pastForecastsWords(plan: Plan, system: UnitSystem): string | null {
  const { pastForecasts = [] } = timeOf(plan);
  if (pastForecasts.length === 0) return null;
  const named = pastForecasts.map(({ note, replacedAtS }) => {
    const until = momentWords({ atS: replacedAtS, offsetMin: 0 }, true, system);
    return `${note === "" ? "no name" : note}, replaced ${until} UTC`;
  });
  return `${plural(pastForecasts.length, "earlier forecast")} kept in the plan: ${named.join("; ")}.`;
}

const WHY: Readonly<Record<LeftOut["why"], string>> = {
  missing: "value missing",
  rejected: "marked bad, rejected or withheld",
  censored: "beyond what the gauge measures",
  "no-time": "time missing",
  replaced: "replaced by a revised value",
};

/** `Line 5, column 12: value missing.` */
export function leftOutWords({ place, why }: LeftOut): string {
  return `${placeWords(place)}: ${WHY[why]}.`;
}

function quoted(names: readonly string[]): string {
  const listedNames = names.slice(0, MOST_LISTED).map((name) => `"${name.slice(0, 40)}"`);
  return listedNames.join(", ") + more(names);
}

function more(all: readonly unknown[]): string {
  return all.length > MOST_LISTED ? ` and ${all.length - MOST_LISTED} more` : "";
}

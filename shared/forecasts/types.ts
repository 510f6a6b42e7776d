import type { Moment } from "../time/forecast-time.ts";
import type { UnitSystem } from "../units.ts";
import type { Zone } from "./zones.ts";

export type Levels = "stage" | "elevation";

/** What a text of a forecast is written in. */
export type ForecastFormat = "shef" | "rdb" | "waterml" | "table";

/** A place in a text, both counted from 1, as an editor shows them. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** Where something of a forecast stands: in a text, in a row of a plan counted from 1, in a series by its name. */
export type ForecastPlace =
  | TextPlace
  | { readonly line: number }
  | { readonly row: number }
  | { readonly series: string };

/** A row that was read. */
export interface ReadRow {
  readonly moment: Moment;
  /** Metres. */
  readonly levelM: number;
  readonly lowM: number | null;
  readonly highM: number | null;
  /** Where its level is, and where its time is when that is elsewhere. */
  readonly place: TextPlace;
  readonly timePlace?: TextPlace;
}

/** A row that was not taken. */
export interface LeftOut {
  readonly place: TextPlace;
  readonly why: "missing" | "rejected" | "censored" | "no-time" | "replaced";
  /** As it is written; empty where nothing is. */
  readonly came: string;
}

/** What was assumed, converted or not used. */
export type ForecastNote =
  | { readonly kind: "unit-assumed"; readonly unit: UnitSystem }
  | { readonly kind: "unit-given"; readonly unit: UnitSystem; readonly written: string }
  | { readonly kind: "columns-not-used"; readonly names: readonly string[] }
  | { readonly kind: "lines-not-used"; readonly lines: readonly number[] }
  | { readonly kind: "zone-given"; readonly name: string }
  | { readonly kind: "shown-in"; readonly name: string }
  | { readonly kind: "standard-in-summer"; readonly written: string }
  | { readonly kind: "year-inferred"; readonly year: number }
  | { readonly kind: "doubtful"; readonly code: string; readonly rows: number }
  | { readonly kind: "observed" }
  | { readonly kind: "series"; readonly taken: string; readonly others: readonly string[] }
  | { readonly kind: "clock-change" }
  | { readonly kind: "too-few"; readonly rows: number }
  | { readonly kind: "gap"; readonly line: number };

/** A text as it was understood. */
export interface UnderstoodForecast {
  readonly from: ForecastFormat;
  readonly levels: Levels;
  readonly unit: UnitSystem;
  /** Gauge or series, as the text names it; null where it names none. */
  readonly series: string | null;
  /** Rising in time, each with its offset. */
  readonly rows: readonly ReadRow[];
  /** Zones as they are written, with their offsets. */
  readonly zones: readonly { readonly written: string; readonly offsetMin: number }[];
  readonly leftOut: readonly LeftOut[];
  readonly notes: readonly ForecastNote[];
}

/** What a text of a forecast is read with. */
export interface ReadingWith {
  /** Clock of times that state no zone; given, all times are shown on it. Null = not said. */
  readonly zone: Zone | null;
  /** Unit that the person says figures without one are in; null = not said. */
  readonly units: UnitSystem | null;
  /** Unit they are taken to be in where nobody says. */
  readonly system: UnitSystem;
  /** What the person says the levels are; null = as the text says. */
  readonly levels: Levels | null;
  /** What they are where neither says. */
  readonly usualLevels: Levels;
  /** The one of several series that the person chose, by name; null = none chosen. */
  readonly series: string | null;
  /** Now, seconds since 1970: years that are not written are those nearest to it. */
  readonly nowS: number;
}

import { DOCUMENT_REFUSALS } from "./refusals/document.ts";
import type { EXPORT_REFUSALS } from "./refusals/exports.ts";
import type { FIELD_REFUSALS } from "./refusals/field.ts";
import { FORECAST_REFUSALS } from "./refusals/forecast.ts";
import type { FORECAST_READING_REFUSALS } from "./refusals/forecast-reading.ts";
import { GROUND_REFUSALS } from "./refusals/ground.ts";
import type { IMPORT_READING_REFUSALS } from "./refusals/import-reading.ts";
import { IMPORT_REFUSALS } from "./refusals/imports.ts";
import type { LATE_REFUSALS } from "./refusals/late.ts";
import { LINE_REFUSALS } from "./refusals/line.ts";
import { PLAN_REFUSALS } from "./refusals/plan.ts";
import { PLAN_NOTES } from "./refusals/plan-notes.ts";
import { PROGRAM_REFUSALS } from "./refusals/program.ts";
import type { READINGS_REFUSALS } from "./refusals/readings.ts";
import type { TERMINAL_REFUSALS } from "./refusals/terminal.ts";
import { TYPED_REFUSALS } from "./refusals/typed.ts";

/** The text of each reason that can reach the page at any time; parts that are loaded later bring their own. */
export const REFUSALS = {
  ...FORECAST_REFUSALS,
  ...LINE_REFUSALS,
  ...TYPED_REFUSALS,
  ...PLAN_REFUSALS,
  ...PLAN_NOTES,
  ...IMPORT_REFUSALS,
  ...PROGRAM_REFUSALS,
  ...GROUND_REFUSALS,
  ...DOCUMENT_REFUSALS,
};

export type Refusals = typeof REFUSALS &
  typeof EXPORT_REFUSALS &
  typeof FIELD_REFUSALS &
  typeof FORECAST_READING_REFUSALS &
  typeof LATE_REFUSALS &
  typeof READINGS_REFUSALS &
  typeof IMPORT_READING_REFUSALS &
  typeof TERMINAL_REFUSALS;

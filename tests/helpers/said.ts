import type { Failure } from "../../shared/failure.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { addTexts, failureWords } from "../../shared/words/failure.ts";
import { EXPORT_REFUSALS } from "../../shared/words/refusals/exports.ts";
import { FIELD_REFUSALS } from "../../shared/words/refusals/field.ts";
import { FORECAST_READING_REFUSALS } from "../../shared/words/refusals/forecast-reading.ts";
import { IMPORT_READING_REFUSALS } from "../../shared/words/refusals/import-reading.ts";
import { LATE_REFUSALS } from "../../shared/words/refusals/late.ts";
import { READINGS_REFUSALS } from "../../shared/words/refusals/readings.ts";
import { TERMINAL_REFUSALS } from "../../shared/words/refusals/terminal.ts";

addTexts({
  ...EXPORT_REFUSALS,
  ...FIELD_REFUSALS,
  ...FORECAST_READING_REFUSALS,
  ...LATE_REFUSALS,
  ...READINGS_REFUSALS,
  ...IMPORT_READING_REFUSALS,
  ...TERMINAL_REFUSALS,
});

/** A failure with the words a person reads. */
export function said(failure: Failure, system: UnitSystem = "us") {
  return { ...failure, ...failureWords(failure, system) };
}

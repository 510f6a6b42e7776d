import { describe, expect, it } from "vitest";
import type { Failure, FailureCode } from "../../shared/failure.ts";
import { BRITISH, FOREIGN, NEVER } from "../helpers/never-said.ts";
import {
  DOCUMENT_SAMPLES,
  EXPORT_SAMPLES,
  FIELD_SAMPLES,
} from "../helpers/refusal-samples/document.ts";
import { FORECAST_SAMPLES } from "../helpers/refusal-samples/forecast.ts";
import { GROUND_SAMPLES } from "../helpers/refusal-samples/ground.ts";
import { IMPORT_SAMPLES } from "../helpers/refusal-samples/imports.ts";
import { LINE_SAMPLES } from "../helpers/refusal-samples/line.ts";
import { PLAN_SAMPLES } from "../helpers/refusal-samples/plan.ts";
import { PROGRAM_SAMPLES } from "../helpers/refusal-samples/program.ts";
import { ADDRESS_SAMPLES, RASTER_SAMPLES, VRT_SAMPLES } from "../helpers/refusal-samples/raster.ts";
import { READINGS_SAMPLES } from "../helpers/refusal-samples/readings.ts";
import { SEARCH_SAMPLES } from "../helpers/refusal-samples/search.ts";
import { TERMINAL_SAMPLES } from "../helpers/refusal-samples/terminal.ts";
import { TYPED_SAMPLES } from "../helpers/refusal-samples/typed.ts";
import { said } from "../helpers/said.ts";

const SAMPLES: { readonly [C in FailureCode]: "no figures" | readonly object[] } = {
  ...FORECAST_SAMPLES,
  ...LINE_SAMPLES,
  ...READINGS_SAMPLES,
  ...SEARCH_SAMPLES,
  ...RASTER_SAMPLES,
  ...VRT_SAMPLES,
  ...ADDRESS_SAMPLES,
  ...TERMINAL_SAMPLES,
  ...TYPED_SAMPLES,
  ...PLAN_SAMPLES,
  ...IMPORT_SAMPLES,
  ...PROGRAM_SAMPLES,
  ...GROUND_SAMPLES,
  ...DOCUMENT_SAMPLES,
  ...EXPORT_SAMPLES,
  ...FIELD_SAMPLES,
};

/** One of a thing said as several. */
const ONE_AS_SEVERAL =
  /\b(?:1 (?:\w+ )?(?:columns|values|files|features|outlines|shapes|brackets|lines)|The 1 footprints)\b/;
/** Columns of a table named in the other unit, or a distance in words. */
const OTHER_NAMES = { us: /\w_m\b|two meters/, metric: /\w_ft\b|\b\d+\+\d\d(?![\d.])/ };
/** The length of a line in whole hundreds of meters, or in tenths of a mile. */
const ROUGH_LENGTH = /\b0\.\d (?:mi|km) long\b/;

/** Says by examples what may be typed, in either unit; or quotes a height as its raster has it. */
const SHOWS_BOTH = new Set(["length/unreadable", "ground/mark-unknown"]);

const CASES = Object.entries(SAMPLES).flatMap(([code, samples]) =>
  (samples === "no figures" ? [{}] : samples).map((given) => ({ code, given }) as Failure),
);

describe("every refusal", () => {
  it.each(["us", "metric"] as const)("says what it means in %s units alone", (system) => {
    for (const failure of CASES) {
      const { message, remedy } = said(failure, system);
      const text = `${message} ${remedy}`.trim();
      if (!SHOWS_BOTH.has(failure.code)) expect(text, failure.code).not.toMatch(FOREIGN[system]);
      expect(text, failure.code).not.toMatch(OTHER_NAMES[system]);
      expect(text, failure.code).not.toMatch(ROUGH_LENGTH);
      expect(text, failure.code).not.toMatch(ONE_AS_SEVERAL);
      expect(text, failure.code).not.toMatch(NEVER);
      expect(text, failure.code).not.toMatch(BRITISH);
      expect(text, failure.code).not.toMatch(
        /undefined|NaN|\[object|\{\d\}| {2}|\.\.(?!\.)(?<!\.\.\.)/,
      );
      expect(remedy, failure.code).toMatch(/^$|[.?!]$/);
      expect(message, failure.code).toMatch(/^["A-Z\d].*[.?:!")]$/s);
    }
  });
});

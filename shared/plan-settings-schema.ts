import * as v from "valibot";
import type {
  Bag,
  GroundSettings,
  HoldingSettings,
  Practice,
  Section,
  Sheet,
  TerrainRef,
  TimeSettings,
  Water,
} from "./plan.ts";
import { fields, oneOf, quantity, setting, settingsIn, text, yesOrNo } from "./plan-makers.ts";
import { MAX_NAME, MAX_NOTE } from "./plan-text.ts";
import { readRasterAddress } from "./raster-address.ts";
import { FORECAST, PAST_FORECASTS, START_AT } from "./time/forecast-schema.ts";
import {
  dayTurnedWords,
  errorSharesWords,
  LAP_TOO_LONG,
  noListWords,
  rangeTurnedWords,
  rasterAddressWords,
  taskRatesWords,
  tooManyWords,
  wholeNumberWords,
} from "./words/refusals/plan-values.ts";

type Schema<T> = v.GenericSchema<unknown, T>;

export const WATER = fields("water", {
  given: v.optional(yesOrNo("whether the water's level is given (water.given)")),
  ...settingsIn("water"),
  by: oneOf("what rules the water level (water.by)", ["stage", "elevation"]),
  datumOffsetM: v.nullable(setting("water.datumOffsetM")),
  gaugeDatum: v.optional(text("the datum of the gauge (water.gaugeDatum)", 0, MAX_NAME)),
  datumNote: text("the datum note (water.datumNote)", 0, MAX_NOTE),
}) as Schema<Water>;

export const TERRAIN = fields("an elevation data file", {
  name: text("its name", 1, 255),
  bytes: quantity("its size", 0, Number.MAX_SAFE_INTEGER, "bytes"),
  address: v.optional(
    v.custom<string>(
      (value) => typeof value === "string" && value.length <= 2000 && readRasterAddress(value).ok,
      ({ input }) => rasterAddressWords(input),
    ),
  ),
}) as Schema<TerrainRef>;

/** Most answers kept about heights that stand apart. */
const MAX_MARKS = 100;

const MARK = fields("what a height marks (ground.marks)", {
  file: TERRAIN,
  value: quantity("the height", -1e6, 1e6),
  is: oneOf("what a height marks (is)", ["hole", "ground"]),
});

const GROUND_FIELDS = fields("ground", {
  ...settingsIn("ground"),
  rmseM: v.nullable(setting("ground.rmseM")),
  verticalUnit: v.nullable(
    oneOf("the vertical unit (ground.verticalUnit)", ["metre", "foot", "us-survey-foot"]),
  ),
  datumNote: text("the datum note (ground.datumNote)", 0, MAX_NOTE),
  marks: v.optional(
    v.pipe(
      v.array(MARK, ({ input }) => noListWords("what heights mark (ground.marks)", input)),
      v.check(
        (marks) => marks.length <= MAX_MARKS,
        ({ input }) => tooManyWords(MAX_MARKS, "entries in ground.marks", input.length),
      ),
    ),
  ),
});

export const GROUND = v.pipe(
  GROUND_FIELDS,
  v.check(
    ({ biasShare, correlatedShare }) => biasShare + correlatedShare <= 1 + 1e-9,
    ({ input }) => errorSharesWords(input.biasShare, input.correlatedShare),
  ),
) as Schema<GroundSettings>;

const BAG = fields("section.bag", {
  ...settingsIn("section.bag"),
}) as Schema<Bag>;

const SHEET = v.pipe(
  fields("section.sheet", {
    ...settingsIn("section.sheet"),
  }),
  v.check((sheet) => sheet.lapM < sheet.rollLengthM, LAP_TOO_LONG),
) as Schema<Sheet>;

export const SECTION = fields("section", {
  ...settingsIn("section"),
  bag: BAG,
  sheet: SHEET,
}) as Schema<Section>;

export const PRACTICE = v.pipe(
  fields("practice", {
    ...settingsIn("practice"),
    people: v.nullable(setting("practice.people")),
  }),
  v.check(
    (practice) => practice.taskRateLow <= practice.taskRateHigh,
    ({ input }) => taskRatesWords(input.taskRateLow, input.taskRateHigh),
  ),
) as Schema<Practice>;

const SOILS = [
  ...(["unknown", "fine-silt", "fine-sand", "medium-sand", "coarse-sand"] as const),
  ...(["fine-gravel", "coarse-gravel", "soft-clay", "medium-clay", "hard-clay"] as const),
] as const;

/** Pairs of settings of which the first may not be above the second. */
const HOLDING_PAIRS = [
  ["frictionLow", "frictionHigh", "friction"],
  ["fillLowMPerS", "fillHighMPerS", "conductivity of the fill"],
  ["sheetCutLow", "sheetCutHigh", "share that poly sheeting takes off"],
  ["underLowMPerS", "underHighMPerS", "conductivity of the soil"],
  ["trenchLowM", "trenchHighM", "depth of the trench"],
  ["runoffLow", "runoffHigh", "runoff coefficient"],
] as const;

const falling = (holding: HoldingSettings) =>
  HOLDING_PAIRS.find(([low, high]) => holding[low] > holding[high]);

export const HOLDING = v.optional(
  v.pipe(
    fields("holding", {
      ...settingsIn("holding"),
      uplift: oneOf("the uplift (holding.uplift)", ["none", "triangular", "full"]),
      sheetLaid: yesOrNo("whether poly sheeting is laid (holding.sheetLaid)"),
      soil: oneOf("the soil (holding.soil)", SOILS),
    }),
    v.check(
      (holding) => falling(holding) === undefined,
      (issue) => {
        const [low, high, words] = falling(issue.input)!;
        return rangeTurnedWords(words, low, high);
      },
    ),
  ),
) as Schema<HoldingSettings | undefined>;

export const TIME = v.optional(
  v.pipe(
    fields("time", {
      ...settingsIn("time"),
      forecast: FORECAST,
      pastForecasts: PAST_FORECASTS,
      startAt: START_AT,
      crews: v.pipe(
        setting("time.crews"),
        v.check(
          (crews) => Number.isInteger(crews),
          ({ input }) => wholeNumberWords("the number of crews (time.crews)", input),
        ),
      ),
      shifts: v.nullable(setting("time.shifts")),
      lit: yesOrNo("whether work is lit at night (time.lit)"),
      dayFromH: v.nullable(setting("time.dayFromH")),
      dayToH: v.nullable(setting("time.dayToH")),
    }),
    v.check(
      (time) => (time.dayFromH ?? 0) < (time.dayToH ?? 24),
      ({ input: { dayFromH, dayToH } }) => dayTurnedWords(dayFromH ?? 0, dayToH ?? 24),
    ),
  ),
) as Schema<TimeSettings | undefined>;

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
import { fields, oneOf, quantity, setting, text, yesOrNo } from "./plan-makers.ts";
import { MAX_NOTE, shown } from "./plan-text.ts";
import { FORECAST, START_AT } from "./time/forecast-schema.ts";

type Schema<T> = v.GenericSchema<unknown, T>;

export const WATER = fields("water", {
  by: oneOf("what rules the water level (water.by)", ["stage", "elevation"]),
  stageM: setting("the stage", "water.stageM", "m"),
  gaugeZeroM: setting("the gauge zero", "water.gaugeZeroM", "m"),
  datumOffsetM: v.nullable(setting("the datum offset", "water.datumOffsetM", "m")),
  datumNote: text("the datum note (water.datumNote)", 0, MAX_NOTE),
  elevationM: setting("the water elevation", "water.elevationM", "m"),
  fallPerM: setting("the fall of the water", "water.fallPerM", "m per m"),
  freeboardM: setting("the freeboard", "water.freeboardM", "m"),
}) as Schema<Water>;

export const TERRAIN = fields("a terrain file", {
  name: text("its name", 1, 255),
  bytes: quantity("its size", 0, Number.MAX_SAFE_INTEGER, "bytes"),
}) as Schema<TerrainRef>;

/** Most answers kept about heights that stand apart. */
const MAX_MARKS = 100;

const MARK = fields("what a height marks (ground.marks)", {
  file: TERRAIN,
  value: quantity("the height", -1e6, 1e6),
  is: oneOf("what a height marks (is)", ["hole", "ground"]),
});

export const GROUND = fields("ground", {
  rmseM: v.nullable(setting("the accuracy of the ground", "ground.rmseM", "m")),
  verticalUnit: v.nullable(
    oneOf("the vertical unit (ground.verticalUnit)", ["metre", "foot", "us-survey-foot"]),
  ),
  datumNote: text("the datum note (ground.datumNote)", 0, MAX_NOTE),
  marks: v.optional(
    v.pipe(
      v.array(
        MARK,
        (issue) =>
          `Expected what heights mark (ground.marks) as a list; came ${shown(issue.input)}.`,
      ),
      v.check(
        (marks) => marks.length <= MAX_MARKS,
        (issue) =>
          `Expected at most ${MAX_MARKS} entries in ground.marks; came ${issue.input.length}.`,
      ),
    ),
  ),
}) as Schema<GroundSettings>;

const BAG = fields("section.bag", {
  placedVolumeM3: setting("the volume of a placed bag", "section.bag.placedVolumeM3", "m3"),
  filledMassKg: setting("the mass of a filled bag", "section.bag.filledMassKg", "kg"),
  placedWidthM: setting("the width of a placed bag", "section.bag.placedWidthM", "m"),
  courseM: setting("the thickness of a course", "section.bag.courseM", "m"),
}) as Schema<Bag>;

const SHEET = v.pipe(
  fields("section.sheet", {
    toeExtensionM: setting("the sheet beyond the toe", "section.sheet.toeExtensionM", "m"),
    tailM: setting("the tail of the sheet", "section.sheet.tailM", "m"),
    rollWidthM: setting("the width of a roll", "section.sheet.rollWidthM", "m"),
    rollLengthM: setting("the length of a roll", "section.sheet.rollLengthM", "m"),
    lapM: setting("the lap of the sheet", "section.sheet.lapM", "m"),
  }),
  v.check(
    (sheet) => sheet.lapM < sheet.rollLengthM,
    (issue) =>
      `Expected the lap of the sheet (section.sheet.lapM) shorter than a roll of ${issue.input.rollLengthM} m; came ${issue.input.lapM} m.`,
  ),
) as Schema<Sheet>;

export const SECTION = fields("section", {
  baseRatio: setting("base width over height", "section.baseRatio"),
  leastBaseRatio: setting("the least base ratio", "section.leastBaseRatio"),
  crownM: setting("the crown", "section.crownM", "m"),
  bag: BAG,
  sheet: SHEET,
}) as Schema<Section>;

const RATE = "bags per person-hour";

export const PRACTICE = v.pipe(
  fields("practice", {
    limitM: setting("the greatest safe height", "practice.limitM", "m"),
    setbackM: setting("the setback", "practice.setbackM", "m"),
    stationIntervalM: setting("the station interval", "practice.stationIntervalM", "m"),
    spareShare: setting("the share of spare bags", "practice.spareShare"),
    wasteShare: setting("the share of sand lost", "practice.wasteShare"),
    sheetAnchorM3PerM: setting(
      "the sand that holds the sheet",
      "practice.sheetAnchorM3PerM",
      "m3 per m",
    ),
    sandDryKgPerM3: setting("the density of dry sand", "practice.sandDryKgPerM3", "kg per m3"),
    sandWetKgPerM3: setting("the density of wet sand", "practice.sandWetKgPerM3", "kg per m3"),
    crossFallShare: setting("the allowed cross-fall", "practice.crossFallShare"),
    taskRateLow: setting("the low rate of a task", "practice.taskRateLow", RATE),
    taskRateHigh: setting("the high rate of a task", "practice.taskRateHigh", RATE),
    jobRate: setting("the rate of the whole job", "practice.jobRate", RATE),
    people: v.nullable(setting("the number of people", "practice.people")),
    truckM3: setting("the load of a truck", "practice.truckM3", "m3"),
    raiseM: setting("the later raise", "practice.raiseM", "m"),
  }),
  v.check(
    (practice) => practice.taskRateLow <= practice.taskRateHigh,
    (issue) =>
      `Expected the low rate of a task (practice.taskRateLow) not above the high rate of ${issue.input.taskRateHigh}; came ${issue.input.taskRateLow}.`,
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
  ["sheetCutLow", "sheetCutHigh", "share that the sheet takes off"],
  ["underLowMPerS", "underHighMPerS", "conductivity of the ground"],
  ["trenchLowM", "trenchHighM", "depth of the trench"],
  ["runoffLow", "runoffHigh", "runoff coefficient"],
] as const;

const falling = (holding: HoldingSettings) =>
  HOLDING_PAIRS.find(([low, high]) => holding[low] > holding[high]);

export const HOLDING = v.optional(
  v.pipe(
    fields("holding", {
      frictionLow: setting("the low friction", "holding.frictionLow"),
      frictionHigh: setting("the high friction", "holding.frictionHigh"),
      leveeKgPerM3: setting("the density of the levee", "holding.leveeKgPerM3", "kg per m3"),
      uplift: oneOf("the uplift (holding.uplift)", ["none", "triangular", "full"]),
      slidingFactor: setting("the factor against sliding", "holding.slidingFactor"),
      overturningFactor: setting("the factor against overturning", "holding.overturningFactor"),
      fillLowMPerS: setting("the low conductivity of the fill", "holding.fillLowMPerS", "m/s"),
      fillHighMPerS: setting("the high conductivity of the fill", "holding.fillHighMPerS", "m/s"),
      sheetLaid: yesOrNo("whether the sheet is laid (holding.sheetLaid)"),
      sheetCutLow: setting("the low cut by the sheet", "holding.sheetCutLow"),
      sheetCutHigh: setting("the high cut by the sheet", "holding.sheetCutHigh"),
      soil: oneOf("the soil (holding.soil)", SOILS),
      underDepthM: setting("the depth of pervious ground", "holding.underDepthM", "m"),
      underLowMPerS: setting("the low conductivity of the ground", "holding.underLowMPerS", "m/s"),
      underHighMPerS: setting(
        "the high conductivity of the ground",
        "holding.underHighMPerS",
        "m/s",
      ),
      trenchLowM: setting("the least depth of the trench", "holding.trenchLowM", "m"),
      trenchHighM: setting("the greatest depth of the trench", "holding.trenchHighM", "m"),
      rainMPerS: setting("the rain", "holding.rainMPerS", "m/s"),
      runoffLow: setting("the low runoff coefficient", "holding.runoffLow"),
      runoffHigh: setting("the high runoff coefficient", "holding.runoffHigh"),
      pumpMargin: setting("the margin of the pumps", "holding.pumpMargin"),
      pumpSpares: setting("the spare pumps", "holding.pumpSpares"),
    }),
    v.check(
      (holding) => falling(holding) === undefined,
      (issue) => {
        const [low, high, words] = falling(issue.input)!;
        const most = `its high end (holding.${high}), which is ${issue.input[high]}`;
        return `Expected the low end of the ${words} (holding.${low}) not above ${most}; came ${issue.input[low]}.`;
      },
    ),
  ),
) as Schema<HoldingSettings | undefined>;

export const TIME = v.optional(
  v.pipe(
    fields("time", {
      forecast: FORECAST,
      startAt: START_AT,
      marginM: setting("the margin over the water", "time.marginM", "m"),
      setUpH: setting("the hours of setting up", "time.setUpH", "h"),
      fillShare: setting("the share of people who fill", "time.fillShare"),
      crews: v.pipe(
        setting("the number of crews", "time.crews"),
        v.check(
          (crews) => Number.isInteger(crews),
          (issue) =>
            `Expected the number of crews (time.crews) as a whole number; came ${issue.input}.`,
        ),
      ),
      shifts: v.nullable(setting("the number of shifts", "time.shifts")),
      shiftH: setting("the length of a shift", "time.shiftH", "h"),
      lit: yesOrNo("whether work is lit at night (time.lit)"),
      dayFromH: v.nullable(setting("the start of a day's work", "time.dayFromH", "h")),
      dayToH: v.nullable(setting("the end of a day's work", "time.dayToH", "h")),
      liftM: setting("the height of a lift", "time.liftM", "m"),
    }),
    v.check(
      (time) => (time.dayFromH ?? 0) < (time.dayToH ?? 24),
      (issue) =>
        `Expected the start of a day's work (time.dayFromH) before its end at ${issue.input.dayToH ?? 24} h; came ${issue.input.dayFromH} h.`,
    ),
  ),
) as Schema<TimeSettings | undefined>;

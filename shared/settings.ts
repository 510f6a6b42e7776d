import { DEFAULT_PRACTICE, DEFAULT_SECTION, DEFAULT_WATER } from "./defaults.ts";
import { typicalAccuracy } from "./ground-accuracy.ts";
import { HOLDING_SETTINGS } from "./holding/holding-settings.ts";
import { type Setting, setting } from "./setting.ts";
import { TIME_SETTINGS } from "./time/time-settings.ts";

export type { Setting, SettingKind } from "./setting.ts";

/** Path of an adjustable number within the plan, e.g. `section.bag.courseM`. */
export type SettingPath = keyof typeof SETTINGS;

/** Every adjustable number of the plan. The ranges only keep out slips and nonsense; checks judge the rest. */
export const SETTINGS = {
  "water.stageM": setting("length", DEFAULT_WATER.stageM, [-100, 200], "NWS-D, USGS-D"),
  "water.gaugeZeroM": setting("elevation", DEFAULT_WATER.gaugeZeroM, [-500, 9000], "NWS-D, USGS-D"),
  "water.datumOffsetM": setting("length", 0, [-1000, 1000], "NWS-D"),
  "water.elevationM": setting("elevation", DEFAULT_WATER.elevationM, [-500, 9000], "NWS-D"),
  "water.fallPerM": setting("slope", DEFAULT_WATER.fallPerM, [0, 0.1], "USGS-F, OWRB"),
  "water.freeboardM": setting("length", DEFAULT_WATER.freeboardM, [0, 3], "NDSU-11, IS-280"),
  "ground.rmseM": setting("length", typicalAccuracy(1).rmseM, [0, 10], typicalAccuracy(1).source),
  "section.baseRatio": setting("ratio", DEFAULT_SECTION.baseRatio, [0.5, 10], "NDSU-11, FFO-96"),
  "section.leastBaseRatio": setting("ratio", DEFAULT_SECTION.leastBaseRatio, [0.5, 10], "NDSU-NR"),
  "section.crownM": setting(
    "length",
    DEFAULT_SECTION.crownM,
    [0, 5],
    "derived from NDSU-11's sand table",
  ),
  "section.bag.placedVolumeM3": setting(
    "bag-volume",
    DEFAULT_SECTION.bag.placedVolumeM3,
    [0.001, 2],
    "derived from NDSU-11",
  ),
  "section.bag.filledMassKg": setting(
    "mass",
    DEFAULT_SECTION.bag.filledMassKg,
    [1, 4000],
    "NDSU-11",
  ),
  "section.bag.placedWidthM": setting(
    "small-length",
    DEFAULT_SECTION.bag.placedWidthM,
    [0.05, 2],
    "NDSU-11, NWD-04",
  ),
  "section.bag.courseM": setting(
    "small-length",
    DEFAULT_SECTION.bag.courseM,
    [0.02, 1.5],
    "DWR-03",
  ),
  "section.sheet.toeExtensionM": setting(
    "length",
    DEFAULT_SECTION.sheet.toeExtensionM,
    [0, 10],
    "NDSU-11",
  ),
  "section.sheet.tailM": setting(
    "length",
    DEFAULT_SECTION.sheet.tailM,
    [0, 10],
    "common practice, no source",
  ),
  "section.sheet.rollWidthM": setting(
    "length",
    DEFAULT_SECTION.sheet.rollWidthM,
    [0.5, 50],
    "MVS, MO-2217, DWR-03",
  ),
  "section.sheet.rollLengthM": setting(
    "length",
    DEFAULT_SECTION.sheet.rollLengthM,
    [1, 1000],
    "MVS, MO-2217, DWR-03",
  ),
  "section.sheet.lapM": setting("length", DEFAULT_SECTION.sheet.lapM, [0, 10], "NDSU-11"),
  "practice.limitM": setting(
    "length",
    DEFAULT_PRACTICE.limitM,
    [0.1, 10],
    "common practice, no source",
  ),
  "practice.setbackM": setting(
    "length",
    DEFAULT_PRACTICE.setbackM,
    [0, 100],
    "NDSU-11, BDPF, SDUN, MB",
  ),
  "practice.stationIntervalM": setting(
    "length",
    DEFAULT_PRACTICE.stationIntervalM,
    [0.5, 1000],
    "common practice, no source",
  ),
  "practice.spareShare": setting("share", DEFAULT_PRACTICE.spareShare, [0, 1], "from memory"),
  "practice.wasteShare": setting(
    "share",
    DEFAULT_PRACTICE.wasteShare,
    [0, 1],
    "common practice, no source",
  ),
  "practice.sheetAnchorM3PerM": setting(
    "volume-per-length",
    DEFAULT_PRACTICE.sheetAnchorM3PerM,
    [0, 2],
    "NDSU-11",
  ),
  "practice.sandDryKgPerM3": setting(
    "density",
    DEFAULT_PRACTICE.sandDryKgPerM3,
    [800, 2500],
    "TM-TRK",
  ),
  "practice.sandWetKgPerM3": setting(
    "density",
    DEFAULT_PRACTICE.sandWetKgPerM3,
    [800, 3000],
    "TM-TRK",
  ),
  "practice.crossFallShare": setting(
    "share",
    DEFAULT_PRACTICE.crossFallShare,
    [0, 10],
    "judgement",
  ),
  "practice.taskRateLow": setting("rate", DEFAULT_PRACTICE.taskRateLow, [0.1, 1000], "THW-E"),
  "practice.taskRateHigh": setting("rate", DEFAULT_PRACTICE.taskRateHigh, [0.1, 1000], "THW-E"),
  "practice.jobRate": setting("rate", DEFAULT_PRACTICE.jobRate, [0.1, 1000], "derived from ERDC"),
  "practice.people": setting("count", 60, [1, 100000], "assumed, no source"),
  "practice.truckM3": setting("load-volume", DEFAULT_PRACTICE.truckM3, [0.1, 100], "TM-TRK"),
  "practice.raiseM": setting(
    "length",
    DEFAULT_PRACTICE.raiseM,
    [0, 10],
    "common practice, no source",
  ),
  ...HOLDING_SETTINGS,
  ...TIME_SETTINGS,
} as const satisfies Record<string, Setting>;

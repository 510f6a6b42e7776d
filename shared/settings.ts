import {
  CUBIC_FOOT_M3,
  CUBIC_YARD_M3,
  FOOT_M,
  INCH_M,
  PCF_KG_PER_M3,
  POUND_KG,
} from "./constants.ts";
import { typicalAccuracy } from "./ground-accuracy.ts";
import { HOLDING_SETTINGS } from "./holding/holding-settings.ts";
import { type Setting, setting } from "./setting.ts";
import { TIME_SETTINGS } from "./time/time-settings.ts";

export type { Setting, SettingKind } from "./setting.ts";

/** Path of an adjustable number within the plan, e.g. `section.bag.courseM`. */
export type SettingPath = keyof typeof SETTINGS;

/** Every adjustable number of the plan. The ranges only keep out slips and nonsense; checks judge the rest. */
export const SETTINGS = {
  "water.stageM": setting("the stage", "length", 0, [-100, 200], "NWS-D, USGS-D"),
  "water.gaugeZeroM": setting("the gauge zero", "elevation", 0, [-500, 9000], "NWS-D, USGS-D"),
  "water.datumOffsetM": setting("the datum offset", "length", 0, [-1000, 1000], "NWS-D"),
  "water.elevationM": setting("the water elevation", "elevation", 0, [-500, 9000], "NWS-D"),
  "water.fallPerM": setting("the fall of the water", "slope", 0, [0, 0.1], "USGS-F, OWRB"),
  "water.freeboardM": setting("the freeboard", "length", 1 * FOOT_M, [0, 3], "NDSU-11, IS-280"),
  "ground.rmseM": setting(
    "the accuracy of the elevation data",
    "length",
    typicalAccuracy(1).rmseM,
    [0, 10],
    typicalAccuracy(1).source,
  ),
  "ground.correctionM": setting(
    "the correction of the elevation data",
    "length",
    0,
    [-10, 10],
    "no source: from readings of the ground in the field",
  ),
  "ground.biasShare": setting(
    "the share of the elevation error that is the same everywhere",
    "share",
    0.3,
    [0, 1],
    "judgement, no published source",
  ),
  "ground.correlatedShare": setting(
    "the share of the elevation error that is alike within its range",
    "share",
    0.5,
    [0, 1],
    "judgement, no published source",
  ),
  "ground.rangeM": setting(
    "the range within which elevation errors are alike",
    "length",
    300 * FOOT_M,
    [1, 10_000],
    "judgement, no published source",
  ),
  "section.baseRatio": setting("base width over height", "ratio", 3, [0.5, 10], "NDSU-11, FFO-96"),
  "section.leastBaseRatio": setting("the least base ratio", "ratio", 2, [0.5, 10], "NDSU-NR"),
  "section.crownM": setting(
    "the crown",
    "length",
    0.75 * FOOT_M,
    [0, 5],
    "derived from NDSU-11's sand table",
  ),
  "section.bag.placedVolumeM3": setting(
    "the volume of a placed bag",
    "bag-volume",
    0.325 * CUBIC_FOOT_M3,
    [0.001, 2],
    "derived from NDSU-11",
  ),
  "section.bag.filledMassKg": setting(
    "the mass of a filled bag",
    "mass",
    36 * POUND_KG,
    [1, 4000],
    "NDSU-11",
  ),
  "section.bag.placedWidthM": setting(
    "the width of a placed bag",
    "small-length",
    14 * INCH_M,
    [0.05, 2],
    "NDSU-11, NWD-04",
  ),
  "section.bag.courseM": setting(
    "the thickness of a course",
    "small-length",
    4 * INCH_M,
    [0.02, 1.5],
    "DWR-03",
  ),
  "section.sheet.toeExtensionM": setting(
    "the poly sheeting beyond the toe",
    "length",
    1 * FOOT_M,
    [0, 10],
    "NDSU-11",
  ),
  "section.sheet.tailM": setting(
    "the tail of the poly sheeting",
    "length",
    1 * FOOT_M,
    [0, 10],
    "common practice, no source",
  ),
  "section.sheet.rollWidthM": setting(
    "the width of a roll",
    "length",
    20 * FOOT_M,
    [0.5, 50],
    "MVS, MO-2217, DWR-03",
  ),
  "section.sheet.rollLengthM": setting(
    "the length of a roll",
    "length",
    100 * FOOT_M,
    [1, 1000],
    "MVS, MO-2217, DWR-03",
  ),
  "section.sheet.lapM": setting(
    "the lap of the poly sheeting",
    "length",
    3 * FOOT_M,
    [0, 10],
    "NDSU-11",
  ),
  "practice.limitM": setting(
    "the height limit",
    "length",
    4 * FOOT_M,
    [0.1, 10],
    "common practice, no source",
  ),
  "practice.setbackM": setting(
    "the setback",
    "length",
    8 * FOOT_M,
    [0, 100],
    "NDSU-11, BDPF, SDUN, MB",
  ),
  "practice.stationIntervalM": setting(
    "the station interval",
    "length",
    25 * FOOT_M,
    [0.5, 1000],
    "common practice, no source",
  ),
  "practice.spareShare": setting("the share of spare bags", "share", 0.05, [0, 1], "from memory"),
  "practice.wasteShare": setting(
    "the share of sand lost",
    "share",
    0.1,
    [0, 1],
    "common practice, no source",
  ),
  "practice.sheetAnchorM3PerM": setting(
    "the sand for the bags on the poly sheeting",
    "volume-per-length",
    (2 * CUBIC_YARD_M3) / (100 * FOOT_M),
    [0, 2],
    "NDSU-11",
  ),
  "practice.sandDryKgPerM3": setting(
    "the density of dry sand",
    "density",
    95 * PCF_KG_PER_M3,
    [800, 2500],
    "TM-TRK",
  ),
  "practice.sandWetKgPerM3": setting(
    "the density of wet sand",
    "density",
    120 * PCF_KG_PER_M3,
    [800, 3000],
    "TM-TRK",
  ),
  "practice.crossFallShare": setting("the allowed cross slope", "share", 0.5, [0, 10], "judgement"),
  "practice.taskRateLow": setting("the low rate of a task", "rate", 40, [0.1, 1000], "THW-E"),
  "practice.taskRateHigh": setting("the high rate of a task", "rate", 60, [0.1, 1000], "THW-E"),
  "practice.jobRate": setting(
    "the rate of the whole job",
    "rate",
    19,
    [0.1, 1000],
    "derived from ERDC",
  ),
  "practice.people": setting(
    "the number of people",
    "count",
    60,
    [1, 100000],
    "assumed, no source",
  ),
  "practice.truckM3": setting(
    "the load of a truck",
    "load-volume",
    10 * CUBIC_YARD_M3,
    [0.1, 100],
    "common practice, no source",
  ),
  "practice.raiseM": setting(
    "the later raise",
    "length",
    1 * FOOT_M,
    [0, 10],
    "common practice, no source",
  ),
  ...HOLDING_SETTINGS,
  ...TIME_SETTINGS,
} as const satisfies Record<string, Setting>;

/** Names of the numbers in one group of a plan's settings, e.g. `courseM` in `section.bag`. */
type NameIn<Group extends string> = {
  [Path in SettingPath]: Path extends `${Group}.${infer Name}`
    ? Name extends `${string}.${string}`
      ? never
      : Name
    : never;
}[SettingPath];

/** Something for each number of one group, by its name. */
export type InGroup<Group extends string, Of> = { -readonly [Name in NameIn<Group>]: Of };

/** Makes something of each number of one group, by its name. */
export function inGroup<Group extends string, Of>(
  group: Group,
  make: (path: SettingPath) => Of,
): InGroup<Group, Of> {
  const paths = (Object.keys(SETTINGS) as SettingPath[]).filter(
    (path) => path.slice(0, path.lastIndexOf(".")) === group,
  );
  const made = paths.map((path) => [path.slice(group.length + 1), make(path)]);
  return Object.fromEntries(made) as InGroup<Group, Of>;
}

/** The default of each number of one group, SI. */
export function defaultsOf<Group extends string>(group: Group): InGroup<Group, number> {
  return inGroup(group, (path) => SETTINGS[path].defaultSI);
}

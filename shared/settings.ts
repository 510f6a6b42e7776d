import { DEFAULT_GROUND, DEFAULT_PRACTICE, DEFAULT_SECTION, DEFAULT_WATER } from "./defaults.ts";

/** What a setting measures; decides its units on screen. */
export type SettingKind =
  | "length"
  | "small-length"
  | "elevation"
  | "ratio"
  | "share"
  | "slope"
  | "bag-volume"
  | "load-volume"
  | "volume-per-length"
  | "mass"
  | "density"
  | "rate"
  | "count";

/** Default, range and source of one adjustable number, SI. Range ends are allowed values. */
export interface Setting {
  readonly kind: SettingKind;
  readonly defaultSI: number;
  readonly lowSI: number;
  readonly highSI: number;
  /** Keys of the sources, or "common practice, no source", "judgement", "from memory". */
  readonly source: string;
  /** Where sources disagree, or what else the number means. */
  readonly note: string;
}

/** Path of an adjustable number within the plan, e.g. `section.bag.courseM`. */
export type SettingPath = keyof typeof SETTINGS;

function setting(
  kind: SettingKind,
  defaultSI: number,
  range: readonly [number, number],
  source: string,
  note = "",
): Setting {
  return { kind, defaultSI, lowSI: range[0], highSI: range[1], source, note };
}

/** Every adjustable number of the plan. The ranges only keep out slips and nonsense; checks judge the rest. */
export const SETTINGS = {
  "water.stageM": setting(
    "length",
    DEFAULT_WATER.stageM,
    [-100, 200],
    "NWS-D, USGS-D",
    "Forecast stage at the gauge; the water surface is gauge zero plus stage.",
  ),
  "water.gaugeZeroM": setting(
    "elevation",
    DEFAULT_WATER.gaugeZeroM,
    [-500, 9000],
    "NWS-D, USGS-D",
    "A surveyed datum is better than an elevation read from a map (USGS-D).",
  ),
  "water.datumOffsetM": setting(
    "length",
    0,
    [-1000, 1000],
    "NWS-D",
    "Added to the gauge's elevation to reach the terrain's datum. NGVD 29 and NAVD 88 differ by place: use the geodetic agency's converter, never a constant.",
  ),
  "water.elevationM": setting(
    "elevation",
    DEFAULT_WATER.elevationM,
    [-500, 9000],
    "NWS-D",
    "Water-surface elevation in the terrain's datum.",
  ),
  "water.fallPerM": setting(
    "slope",
    DEFAULT_WATER.fallPerM,
    [0, 0.1],
    "USGS-F, OWRB",
    "Water between gauge and site is sloped. No fall is assumed until you give one and draw its direction.",
  ),
  "water.freeboardM": setting(
    "length",
    DEFAULT_WATER.freeboardM,
    [0, 3],
    "NDSU-11, IS-280",
    "Sources disagree: 1 ft (NDSU-11, IS-280), 2 ft (MB, EMI-L4), 3 ft for permanent urban levees (EM1913-78).",
  ),
  "ground.rmseM": setting(
    "length",
    DEFAULT_GROUND.rmseM,
    [0, 10],
    "3DEP lidar quality level 2, from memory",
    "10 cm root mean square error; 95 % of points within 19.6 cm. Use what the survey's report says.",
  ),
  "section.baseRatio": setting(
    "ratio",
    DEFAULT_SECTION.baseRatio,
    [0.5, 10],
    "NDSU-11, FFO-96",
    "Sources disagree: base 3 times the height (NDSU-11, FFO-96), 2.5 to 3 (IL-RET), 2 as a minimum (NDSU-NR), height plus 2 ft (MB, SDUN).",
  ),
  "section.leastBaseRatio": setting(
    "ratio",
    DEFAULT_SECTION.leastBaseRatio,
    [0.5, 10],
    "NDSU-NR",
    "Twice as wide as high is published as a minimum.",
  ),
  "section.crownM": setting(
    "length",
    DEFAULT_SECTION.crownM,
    [0, 5],
    "derived from NDSU-11's sand table",
    "0.75 ft reproduces the sand table within 1 cu yd per 100 ft. MB and SDUN ask for 2 ft, CWCB-D2 for 3 ft at closures.",
  ),
  "section.bag.placedVolumeM3": setting(
    "bag-volume",
    DEFAULT_SECTION.bag.placedVolumeM3,
    [0.001, 2],
    "derived from NDSU-11",
    "36 lb at 110 lb/cu ft. Sources disagree: 0.28 cu ft (EMI-L4), 0.21 (THW-S), 0.35 to 0.44 (AT). This number moves the bag count most.",
  ),
  "section.bag.filledMassKg": setting(
    "mass",
    DEFAULT_SECTION.bag.filledMassKg,
    [1, 4000],
    "NDSU-11",
    "Sources disagree: 35 to 40 lb (NDSU-11), about 40 lb half full (EFT-94), 11 to 14 kg (THW-S), up to 20 kg (DERB).",
  ),
  "section.bag.placedWidthM": setting(
    "small-length",
    DEFAULT_SECTION.bag.placedWidthM,
    [0.05, 2],
    "NDSU-11, NWD-04",
    "Bags are 14 in wide and 24 to 26 in long.",
  ),
  "section.bag.courseM": setting(
    "small-length",
    DEFAULT_SECTION.bag.courseM,
    [0.02, 1.5],
    "DWR-03",
    "One bag gives 3 to 4 in of height; 8 cm for the smaller bag of THW-S.",
  ),
  "section.sheet.toeExtensionM": setting(
    "length",
    DEFAULT_SECTION.sheet.toeExtensionM,
    [0, 10],
    "NDSU-11",
    "Sources disagree: 1 ft beyond the toe (NDSU-11), at least 2 ft (MVS).",
  ),
  "section.sheet.tailM": setting(
    "length",
    DEFAULT_SECTION.sheet.tailM,
    [0, 10],
    "common practice, no source",
    "What hangs over the landside of the crown.",
  ),
  "section.sheet.rollWidthM": setting(
    "length",
    DEFAULT_SECTION.sheet.rollWidthM,
    [0.5, 50],
    "MVS, MO-2217, DWR-03",
    "20 ft rolls; 8 to 10 ft in NDSU-97, SDUN and MB.",
  ),
  "section.sheet.rollLengthM": setting(
    "length",
    DEFAULT_SECTION.sheet.rollLengthM,
    [1, 1000],
    "MVS, MO-2217, DWR-03",
    "100 ft, also 200 ft.",
  ),
  "section.sheet.lapM": setting(
    "length",
    DEFAULT_SECTION.sheet.lapM,
    [0, 10],
    "NDSU-11",
    "Upstream sheet over downstream sheet. Sources disagree: 3 ft (NDSU-11), 2 to 3 ft (MVS, MO-2217).",
  ),
  "practice.limitM": setting(
    "length",
    DEFAULT_PRACTICE.limitM,
    [0.1, 10],
    "common practice, no source",
    "MO-2217: 3 ft preferred, 5 ft practical limit. Checked on the greatest height, at the lowest ground under the base.",
  ),
  "practice.setbackM": setting(
    "length",
    DEFAULT_PRACTICE.setbackM,
    [0, 100],
    "NDSU-11, BDPF, SDUN, MB",
    "Clear room to work, watch and pump; never against a basement wall.",
  ),
  "practice.stationIntervalM": setting(
    "length",
    DEFAULT_PRACTICE.stationIntervalM,
    [0.5, 1000],
    "common practice, no source",
    "Where stakes stand. Quantities do not depend on it.",
  ),
  "practice.spareShare": setting(
    "share",
    DEFAULT_PRACTICE.spareShare,
    [0, 1],
    "from memory",
    "5 to 10 % for breakage and topping up.",
  ),
  "practice.wasteShare": setting(
    "share",
    DEFAULT_PRACTICE.wasteShare,
    [0, 1],
    "common practice, no source",
    "Sand spilt, left in the pile and washed away.",
  ),
  "practice.sheetAnchorM3PerM": setting(
    "volume-per-length",
    DEFAULT_PRACTICE.sheetAnchorM3PerM,
    [0, 2],
    "NDSU-11",
    "2 cu yd per 100 ft for the bags that hold the sheet.",
  ),
  "practice.sandDryKgPerM3": setting(
    "density",
    DEFAULT_PRACTICE.sandDryKgPerM3,
    [800, 2500],
    "TM-TRK",
    "Sand and gravel, dry and loose: 95 lb/cu ft.",
  ),
  "practice.sandWetKgPerM3": setting(
    "density",
    DEFAULT_PRACTICE.sandWetKgPerM3,
    [800, 3000],
    "TM-TRK",
    "Sand and gravel, wet: 120 lb/cu ft.",
  ),
  "practice.crossFallShare": setting(
    "share",
    DEFAULT_PRACTICE.crossFallShare,
    [0, 10],
    "judgement",
    "Fall of the ground from toe to toe as a share of the height.",
  ),
  "practice.taskRateLow": setting(
    "rate",
    DEFAULT_PRACTICE.taskRateLow,
    [0.1, 1000],
    "THW-E",
    "Bags per person-hour, filling or placing. Plan 40 to 60; AT has 25 to 50 by hand.",
  ),
  "practice.taskRateHigh": setting(
    "rate",
    DEFAULT_PRACTICE.taskRateHigh,
    [0.1, 1000],
    "THW-E",
    "Bags per person-hour, filling or placing. 80 only with practised crews.",
  ),
  "practice.jobRate": setting(
    "rate",
    DEFAULT_PRACTICE.jobRate,
    [0.1, 1000],
    "derived from ERDC",
    "Whole job: 205.1 person-hours for 85 ft at 3 ft, at 45 bags per ft.",
  ),
  "practice.people": setting(
    "count",
    DEFAULT_PRACTICE.people,
    [1, 100000],
    "assumed, no source",
    "People at work at the same time.",
  ),
  "practice.truckM3": setting(
    "load-volume",
    DEFAULT_PRACTICE.truckM3,
    [0.1, 100],
    "TM-TRK",
    "3.0 cu yd wet or 3.5 dry for a 5-ton dump truck, by its weight limit.",
  ),
  "practice.raiseM": setting(
    "length",
    DEFAULT_PRACTICE.raiseM,
    [0, 10],
    "common practice, no source",
    "Another 1 to 2 ft above the forecast may be asked for; never past the limit.",
  ),
} as const satisfies Record<string, Setting>;

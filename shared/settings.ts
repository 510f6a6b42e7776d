import {
  DEFAULT_GROUND,
  DEFAULT_HOLDING,
  DEFAULT_PRACTICE,
  DEFAULT_SECTION,
  DEFAULT_TIME,
  DEFAULT_WATER,
} from "./defaults.ts";

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
  | "count"
  | "conductivity"
  | "rain"
  | "hours"
  | "clock";

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
  "holding.frictionLow": setting(
    "ratio",
    DEFAULT_HOLDING.frictionLow,
    [0.05, 2],
    "from memory, weak; NAV702",
    "Bags on wet grass 0.3 to 0.4; anything on sheet 0.2 to 0.3. NAV702 has 0.30 to 0.35 for concrete on silt and soft clay. Measured values exist (KRAHN) but were not found.",
  ),
  "holding.frictionHigh": setting(
    "ratio",
    DEFAULT_HOLDING.frictionHigh,
    [0.05, 2],
    "from memory, weak; NAV702",
    "Bag on bag about 0.5. NAV702 has 0.45 to 0.55 for concrete on clean fine to medium sand.",
  ),
  "holding.leveeKgPerM3": setting(
    "density",
    DEFAULT_HOLDING.leveeKgPerM3,
    [500, 3000],
    "derived from NDSU-11",
    "110 lb/cu ft, moist. TM-TRK: dry and loose 95, wet 120 lb/cu ft.",
  ),
  "holding.slidingFactor": setting(
    "ratio",
    DEFAULT_HOLDING.slidingFactor,
    [1, 5],
    "FEMA P-259, from memory",
    "1.5 for floodwalls. Local codes and licensed engineers decide.",
  ),
  "holding.overturningFactor": setting(
    "ratio",
    DEFAULT_HOLDING.overturningFactor,
    [1, 5],
    "FEMA P-259, from memory",
    "1.5 for floodwalls. Local codes and licensed engineers decide.",
  ),
  "holding.fillLowMPerS": setting(
    "conductivity",
    DEFAULT_HOLDING.fillLowMPerS,
    [1e-8, 1],
    "from memory",
    "No measured seepage through bags was found. Joints between bags rule, not the sand.",
  ),
  "holding.fillHighMPerS": setting(
    "conductivity",
    DEFAULT_HOLDING.fillHighMPerS,
    [1e-8, 1],
    "from memory",
    "Filling sand 0.01 to 0.1 cm/s; river sands reach 0.2 cm/s (TP-K).",
  ),
  "holding.sheetCutLow": setting(
    "share",
    DEFAULT_HOLDING.sheetCutLow,
    [0, 1],
    "common practice, no source",
    "A sheet takes 60 to 70 % off what passes through, nothing off what passes under.",
  ),
  "holding.sheetCutHigh": setting(
    "share",
    DEFAULT_HOLDING.sheetCutHigh,
    [0, 1],
    "common practice, no source",
    "A sheet takes 60 to 70 % off what passes through, nothing off what passes under.",
  ),
  "holding.underDepthM": setting(
    "length",
    DEFAULT_HOLDING.underDepthM,
    [0, 100],
    "judgement",
    "Pervious ground down to clay or rock. At 0 the seepage under the levee is not counted.",
  ),
  "holding.underLowMPerS": setting(
    "conductivity",
    DEFAULT_HOLDING.underLowMPerS,
    [1e-8, 1],
    "TP-K",
    "Very fine uniform sand 0.0001 to 0.0064 cm/s, river sand 0.02 to 0.2, loess loam 0.0001, clay below 0.0000001 cm/s.",
  ),
  "holding.underHighMPerS": setting(
    "conductivity",
    DEFAULT_HOLDING.underHighMPerS,
    [1e-8, 1],
    "TP-K",
    "Very fine uniform sand 0.0001 to 0.0064 cm/s, river sand 0.02 to 0.2, outwash to 2 cm/s.",
  ),
  "holding.trenchLowM": setting(
    "small-length",
    DEFAULT_HOLDING.trenchLowM,
    [0.02, 3],
    "NDSU-11",
    "Bond trench 4 to 6 in deep; taken as the depth to which the landside toe is set in.",
  ),
  "holding.trenchHighM": setting(
    "small-length",
    DEFAULT_HOLDING.trenchHighM,
    [0.02, 3],
    "NDSU-11",
    "Bond trench 4 to 6 in deep; one bag deep in MB.",
  ),
  "holding.rainMPerS": setting(
    "rain",
    DEFAULT_HOLDING.rainMPerS,
    [0, 300 / 3.6e6],
    "assumed, no source",
    "1 in/h stands in for the local design storm: ask for yours.",
  ),
  "holding.runoffLow": setting(
    "ratio",
    DEFAULT_HOLDING.runoffLow,
    [0, 1],
    "from memory",
    "Grass on wet ground about 0.3 to 0.5.",
  ),
  "holding.runoffHigh": setting(
    "ratio",
    DEFAULT_HOLDING.runoffHigh,
    [0, 1],
    "from memory",
    "Roofs and paving 0.95; soaked ground comes near it.",
  ),
  "holding.pumpMargin": setting(
    "ratio",
    DEFAULT_HOLDING.pumpMargin,
    [1, 5],
    "from memory",
    "Pumps for 1.5 times the demand computed.",
  ),
  "holding.pumpSpares": setting(
    "count",
    DEFAULT_HOLDING.pumpSpares,
    [0, 20],
    "from memory",
    "One spare, with power of its own. LSU: several small pumps beat one large.",
  ),
  "time.marginM": setting(
    "length",
    DEFAULT_TIME.marginM,
    [0, 3],
    "judgement",
    "How far the crest stays above the water while it is built. Where the finished crest has less freeboard, the finished crest is asked for.",
  ),
  "time.setUpH": setting(
    "hours",
    DEFAULT_TIME.setUpH,
    [0, 240],
    "assumed, no source",
    "Calling people, clearing and stripping the line, first sand and bags on site.",
  ),
  "time.fillShare": setting(
    "share",
    DEFAULT_TIME.fillShare,
    [0.05, 0.95],
    "judgement",
    "Filling and placing go at the same rate (THW-E), so half fill and half lay.",
  ),
  "time.crews": setting(
    "count",
    DEFAULT_TIME.crews,
    [1, 50],
    "assumed, no source",
    "Crews that lay side by side. Together they are no faster than all people in one.",
  ),
  "time.shifts": setting(
    "count",
    DEFAULT_TIME.shifts,
    [1, 24],
    "assumed, no source",
    "Shifts in 24 hours, each with the people stated.",
  ),
  "time.shiftH": setting("hours", DEFAULT_TIME.shiftH, [0.5, 24], "assumed, no source"),
  "time.dayFromH": setting("clock", DEFAULT_TIME.dayFromH, [0, 24], "assumed, no source"),
  "time.dayToH": setting("clock", DEFAULT_TIME.dayToH, [0, 24], "assumed, no source"),
  "time.liftM": setting(
    "length",
    DEFAULT_TIME.liftM,
    [0.1, 10],
    "judgement",
    "The lowest ground first, and the whole line lift by lift. A lift as high as the levee builds one stretch after the other.",
  ),
} as const satisfies Record<string, Setting>;

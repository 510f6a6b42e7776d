import type {
  Bag,
  GroundSettings,
  HoldingSettings,
  Plan,
  Practice,
  Section,
  Sheet,
  TimeSettings,
  Water,
} from "./plan.ts";

/** International foot, exact. Source: 85 FR 62698. */
export const FOOT_M = 0.3048;
export const INCH_M = FOOT_M / 12;
/** US survey foot. Source: 85 FR 62698. */
export const SURVEY_FOOT_M = 1200 / 3937;
export const HOUR_S = 3600;
export const DAY_H = 24;
export const DAY_S = DAY_H * HOUR_S;
export const POUND_KG = 0.45359237;
export const CUBIC_FOOT_M3 = FOOT_M ** 3;
export const CUBIC_YARD_M3 = 27 * CUBIC_FOOT_M3;
export const PCF_KG_PER_M3 = POUND_KG / CUBIC_FOOT_M3;

export const DEFAULT_BAG: Bag = {
  placedVolumeM3: 0.325 * CUBIC_FOOT_M3,
  filledMassKg: 36 * POUND_KG,
  placedWidthM: 14 * (FOOT_M / 12),
  courseM: 4 * (FOOT_M / 12),
};

const DEFAULT_SHEET: Sheet = {
  toeExtensionM: 1 * FOOT_M,
  tailM: 1 * FOOT_M,
  rollWidthM: 20 * FOOT_M,
  rollLengthM: 100 * FOOT_M,
  lapM: 3 * FOOT_M,
};

export const DEFAULT_SECTION: Section = {
  baseRatio: 3,
  leastBaseRatio: 2,
  crownM: 0.75 * FOOT_M,
  bag: DEFAULT_BAG,
  sheet: DEFAULT_SHEET,
};

export const DEFAULT_WATER: Water = {
  by: "elevation",
  stageM: 0,
  gaugeZeroM: 0,
  datumOffsetM: null,
  datumNote: "",
  elevationM: 0,
  fallPerM: 0,
  freeboardM: 1 * FOOT_M,
};

export const DEFAULT_GROUND: GroundSettings = {
  rmseM: null,
  verticalUnit: null,
  datumNote: "",
  marks: undefined,
};

export const DEFAULT_PRACTICE: Practice = {
  limitM: 4 * FOOT_M,
  setbackM: 8 * FOOT_M,
  stationIntervalM: 25 * FOOT_M,
  spareShare: 0.05,
  wasteShare: 0.1,
  sheetAnchorM3PerM: (2 * CUBIC_YARD_M3) / (100 * FOOT_M),
  sandDryKgPerM3: 95 * PCF_KG_PER_M3,
  sandWetKgPerM3: 120 * PCF_KG_PER_M3,
  crossFallShare: 0.5,
  taskRateLow: 40,
  taskRateHigh: 60,
  jobRate: 19,
  people: null,
  truckM3: 3 * CUBIC_YARD_M3,
  raiseM: 1 * FOOT_M,
};

export const DEFAULT_HOLDING: HoldingSettings = {
  frictionLow: 0.3,
  frictionHigh: 0.5,
  leveeKgPerM3: 110 * PCF_KG_PER_M3,
  uplift: "triangular",
  slidingFactor: 1.5,
  overturningFactor: 1.5,
  fillLowMPerS: 1e-5,
  fillHighMPerS: 1e-3,
  sheetLaid: true,
  sheetCutLow: 0.6,
  sheetCutHigh: 0.7,
  soil: "unknown",
  underDepthM: 0,
  underLowMPerS: 1e-5,
  underHighMPerS: 1e-3,
  trenchLowM: 4 * (FOOT_M / 12),
  trenchHighM: 6 * (FOOT_M / 12),
  rainMPerS: INCH_M / HOUR_S,
  runoffLow: 0.5,
  runoffHigh: 0.95,
  pumpMargin: 1.5,
  pumpSpares: 1,
};

export const DEFAULT_TIME: TimeSettings = {
  forecast: null,
  startAt: null,
  marginM: 1 * FOOT_M,
  setUpH: 2,
  fillShare: 0.5,
  crews: 2,
  shifts: null,
  shiftH: 8,
  lit: false,
  dayFromH: null,
  dayToH: null,
  liftM: 1 * FOOT_M,
};

/** A plan's settings for standing up, seeping and pumping, the defaults where it has none. */
export function holdingOf(plan: Plan): HoldingSettings {
  return plan.holding ?? DEFAULT_HOLDING;
}

/** A plan's settings for time and people, the defaults where it has none. */
export function timeOf(plan: Plan): TimeSettings {
  return plan.time ?? DEFAULT_TIME;
}

export const EMPTY_PLAN: Plan = {
  title: "Untitled plan",
  structures: [],
  alignments: [],
  noGo: [],
  gauge: null,
  flow: null,
  water: DEFAULT_WATER,
  ground: DEFAULT_GROUND,
  section: DEFAULT_SECTION,
  practice: DEFAULT_PRACTICE,
  holding: DEFAULT_HOLDING,
  time: DEFAULT_TIME,
  terrain: [],
  chosenId: null,
};

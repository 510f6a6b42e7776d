import type {
  GroundSettings,
  HoldingSettings,
  Plan,
  Practice,
  Section,
  TimeSettings,
  Water,
} from "./plan.ts";
import { defaultsOf } from "./settings.ts";

export const DEFAULT_SECTION: Section = {
  ...defaultsOf("section"),
  bag: defaultsOf("section.bag"),
  sheet: defaultsOf("section.sheet"),
};

export const DEFAULT_WATER: Water = {
  ...defaultsOf("water"),
  ...{
    by: "elevation",
    datumOffsetM: null,
    datumNote: "",
    given: undefined,
    gaugeDatum: undefined,
  },
};

export const DEFAULT_GROUND: GroundSettings = {
  ...defaultsOf("ground"),
  ...{ rmseM: null, verticalUnit: null, datumNote: "", marks: undefined },
};

export const DEFAULT_PRACTICE: Practice = { ...defaultsOf("practice"), people: null };

export const DEFAULT_HOLDING: HoldingSettings = {
  ...defaultsOf("holding"),
  ...{ uplift: "triangular", sheetLaid: true, soil: "unknown" },
};

export const DEFAULT_TIME: TimeSettings = {
  ...defaultsOf("time"),
  ...{ forecast: null, pastForecasts: undefined, startAt: null, shifts: null, lit: false },
  ...{ dayFromH: null, dayToH: null },
};

/** A plan's settings for standing up, seeping and pumping, the defaults where it has none. */
export function holdingOf(plan: Plan): HoldingSettings {
  return plan.holding ?? DEFAULT_HOLDING;
}

/** A plan's settings for time and people, the defaults where it has none. */
export function timeOf(plan: Plan): TimeSettings {
  return plan.time ?? DEFAULT_TIME;
}

/** The settings of a plan, each group as it is where a file states nothing of it. */
export const DEFAULT_SETTINGS = {
  water: DEFAULT_WATER,
  ground: DEFAULT_GROUND,
  section: DEFAULT_SECTION,
  practice: DEFAULT_PRACTICE,
  holding: DEFAULT_HOLDING,
  time: DEFAULT_TIME,
} as const;

export const EMPTY_PLAN: Plan = {
  title: "Untitled plan",
  structures: [],
  alignments: [],
  noGo: [],
  gauge: null,
  flow: null,
  ...DEFAULT_SETTINGS,
  leave: null,
  terrain: [],
  chosenId: null,
};

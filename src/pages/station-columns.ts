import { hasOtherSections } from "../../shared/reaches.ts";
import type { SizedLine, Station, StationReason } from "../../shared/sizing-types.ts";
import {
  areaIn,
  formatStation,
  lengthFrom,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../../shared/units.ts";

/** One column of the station table: the same on the screen, on paper and in the file. */
export interface StationColumn {
  readonly id: string;
  readonly title: string;
  /** Unit for the head, empty where there is none. */
  unit(system: UnitSystem): string;
  /** The value as it is read: rounded text, or null where there is no ground data. */
  value(station: Station, system: UnitSystem): string | null;
  /** False for columns that only the file carries. */
  readonly onPaper: boolean;
}

const REASONS: Readonly<Record<StationReason, string>> = {
  start: "start",
  end: "end",
  interval: "",
  corner: "corner",
  turn: "rise or dip",
  reach: "reach",
  gap: "no ground",
};

const none = () => "";
const degrees = () => "deg";

function text(
  id: string,
  title: string,
  value: (station: Station, system: UnitSystem) => string,
  onPaper = true,
): StationColumn {
  return { id, title, unit: none, value, onPaper };
}

function length(
  id: string,
  title: string,
  pick: (station: Station) => number | null,
  digits: Readonly<Record<UnitSystem, number>>,
  onPaper = true,
): StationColumn {
  return {
    id,
    title,
    unit: lengthUnit,
    onPaper,
    value: (station, system) => fixed(pick(station), (m) => lengthIn(m, system), digits[system]),
  };
}

function fixed(
  valueSI: number | null,
  convert: (valueSI: number) => number,
  digits: number,
): string | null {
  if (valueSI === null || !Number.isFinite(valueSI)) return null;
  const rounded = convert(valueSI).toFixed(digits);
  return /^-0(?:\.0*)?$/.test(rounded) ? rounded.slice(1) : rounded;
}

/** Closer than this a station stands on the end of a reach, metres. */
const SAME_M = 1e-6;
const LEVEL = { us: 2, metric: 2 };
const HEIGHT = { us: 1, metric: 2 };

/**
 * Columns of a line's station table in their order; where reaches are built otherwise than the plan says, with
 * the section each station stands in.
 */
export function stationColumns(line: Pick<SizedLine, "reaches">): readonly StationColumn[] {
  if (!hasOtherSections(line)) return COLUMNS;
  const built = text("section", "Built as", (station) => sectionsAt(line, station));
  const [where, rest] = [COLUMNS.slice(0, AFTER_REASON), COLUMNS.slice(AFTER_REASON)];
  return [...where, built, ...rest];
}

/** The section a station stands in; where two meet, both. */
function sectionsAt({ reaches }: Pick<SizedLine, "reaches">, { chainageM }: Station): string {
  const here = reaches.filter(
    ({ fromM, toM }) => chainageM >= fromM - SAME_M && chainageM <= toM + SAME_M,
  );
  return [...new Set(here.map(({ sectionName }) => sectionName))].join(" / ");
}

const COLUMNS: readonly StationColumn[] = [
  text("station", "Station", (station, system) => formatStation(station.chainageM, system)),
  length("chainage", "From start", (station) => station.chainageM, { us: 1, metric: 2 }, false),
  { ...text("lon", "Longitude", (station) => station.lon.toFixed(7), false), unit: degrees },
  { ...text("lat", "Latitude", (station) => station.lat.toFixed(7), false), unit: degrees },
  text("reason", "At", (station) => REASONS[station.reason]),
  length("ground", "Ground", (station) => station.groundM, LEVEL),
  length("lowest", "Lowest under base", (station) => station.lowestGroundM, LEVEL),
  length("water", "Water", (station) => station.waterM, LEVEL, false),
  length("crest", "Crest", (station) => station.crestM, LEVEL),
  length("height", "Height", (station) => station.heightM, HEIGHT),
  length("greatest", "Greatest height", (station) => station.greatestHeightM, HEIGHT),
  {
    id: "courses",
    title: "Courses at centre",
    unit: none,
    onPaper: true,
    value: (station) => fixed(station.courses, (n) => n, 0),
  },
  {
    id: "low-courses",
    title: "Courses at low toe",
    unit: none,
    onPaper: true,
    value: (station) => fixed(station.coursesAtLowToe, (n) => n, 0),
  },
  length("base", "Base width", (station) => station.baseM, HEIGHT),
  {
    id: "across",
    title: "Bags across base",
    unit: none,
    onPaper: true,
    value: (station) => fixed(station.bagsAcrossBase, (n) => n, 0),
  },
  {
    id: "bags",
    title: "Bags",
    unit: (system) => `per ${lengthUnit(system)}`,
    onPaper: true,
    value: (station, system) => fixed(station.bagsPerM, (perM) => perM * lengthFrom(1, system), 0),
  },
  {
    id: "area",
    title: "Section area",
    unit: (system) => (system === "us" ? "sq ft" : "m2"),
    onPaper: false,
    value: (station, system) => fixed(station.sectionAreaM2, (m2) => areaIn(m2, system), 2),
  },
  length("raise", "Can be raised to", (station) => station.raiseToM, HEIGHT, false),
];

const AFTER_REASON = COLUMNS.findIndex(({ id }) => id === "reason") + 1;

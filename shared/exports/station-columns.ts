import { hasOtherSections } from "../reaches.ts";
import type { SizedLine, Station, StationReason } from "../sizing-types.ts";
import {
  areaIn,
  formatStation,
  lengthFrom,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import { baseWidths } from "../words/base-width.ts";
import { bagTopFigure } from "../words/settling.ts";

/** One column of the stakes: the same on paper and in files. */
export interface StationColumn {
  /** As files name it, without the unit. */
  readonly id: string;
  /** As the head of a column on paper; files alone carry a column without one. */
  readonly title?: string;
  /** Unit on paper and in a file's name; empty where there is none. */
  unit(system: UnitSystem): string;
  /** The value as it is read: rounded text, or null where there is no elevation data. */
  value(station: Station, system: UnitSystem): string | null;
  /** True where the value is a number. */
  readonly isNumber: boolean;
}

const REASONS: Readonly<Record<StationReason, string>> = {
  start: "start",
  end: "end",
  interval: "",
  corner: "corner",
  turn: "rise or dip",
  reach: "reach",
  gap: "no elevation data",
  highest: "highest",
  over: "over limit",
  reading: "ground reading",
};

/** `top_of_levee_ft`: how a file names a column. */
export function fileName({ id, unit }: StationColumn, system: UnitSystem): string {
  const words = unit(system);
  return words === "" ? id : `${id}_${words.replace(/ /g, "_")}`;
}

const none = () => "";

function text(
  id: string,
  title: string | undefined,
  value: (station: Station, system: UnitSystem) => string | null,
): StationColumn {
  return { id, unit: none, value, isNumber: false, ...(title === undefined ? {} : { title }) };
}

function figure(
  id: string,
  title: string | undefined,
  unit: (system: UnitSystem) => string,
  value: (station: Station, system: UnitSystem) => string | null,
): StationColumn {
  return { id, unit, value, isNumber: true, ...(title === undefined ? {} : { title }) };
}

function length(
  id: string,
  title: string | undefined,
  pick: (station: Station) => number | null,
  digits: Readonly<Record<UnitSystem, number>>,
): StationColumn {
  return figure(id, title, lengthUnit, (station, system) => {
    const m = pick(station);
    return fixed(m === null ? null : lengthIn(m, system), digits[system]);
  });
}

function count(id: string, title: string, pick: (station: Station) => number | null) {
  return figure(id, title, none, (station) => fixed(pick(station), 0));
}

function fixed(value: number | null, digits: number): string | null {
  if (value === null || !Number.isFinite(value)) return null;
  const rounded = value.toFixed(digits);
  return /^-0(?:\.0*)?$/.test(rounded) ? rounded.slice(1) : rounded;
}

/** Closer than this a station stands on the end of a reach, metres. */
const SAME_M = 1e-6;
const LEVEL = { us: 2, metric: 2 };
const HEIGHT = { us: 1, metric: 2 };

/**
 * Columns of a line's stakes in their order; where reaches are built otherwise than the plan says, with the levee
 * type each stake belongs to.
 */
export function stationColumns(line: Pick<SizedLine, "reaches">): readonly StationColumn[] {
  if (!hasOtherSections(line)) return COLUMNS;
  const type = text("levee_type", "Levee type", (station) => typesAt(line, station));
  const [where, rest] = [COLUMNS.slice(0, AFTER_REASON), COLUMNS.slice(AFTER_REASON)];
  return [...where, type, ...rest];
}

/** The levee type at a station; where two meet, both. */
function typesAt({ reaches }: Pick<SizedLine, "reaches">, { chainageM }: Station): string {
  const here = reaches.filter(
    ({ fromM, toM }) => chainageM >= fromM - SAME_M && chainageM <= toM + SAME_M,
  );
  return [...new Set(here.map(({ sectionName }) => sectionName))].join(" / ");
}

const COLUMNS: readonly StationColumn[] = [
  text("station", "Station", (station, system) => formatStation(station.chainageM, system)),
  length("from_start", undefined, (station) => station.chainageM, { us: 1, metric: 2 }),
  figure("longitude", undefined, none, ({ lon }) => lon.toFixed(7)),
  figure("latitude", undefined, none, ({ lat }) => lat.toFixed(7)),
  text("at", "At", (station) => REASONS[station.reason]),
  length("ground", "Ground", (station) => station.groundM, LEVEL),
  length("lowest_ground", "Lowest under base", (station) => station.lowestGroundM, LEVEL),
  length("sized_for_water", undefined, (station) => station.waterM, LEVEL),
  length("top_of_levee", "Top of levee", (station) => station.crestM, LEVEL),
  figure("lay_bags_to", "Lay bags to", lengthUnit, bagTopFigure),
  length("height", "Height", (station) => station.heightM, HEIGHT),
  length("greatest_height", "Greatest height", (station) => station.greatestHeightM, HEIGHT),
  count("courses_at_center", "Courses at center", (station) => station.courses),
  count("courses_at_low_toe", "Courses at low toe", (station) => station.coursesAtLowToe),
  text("over_height_limit", undefined, ({ isOverLimit }) =>
    isOverLimit === null ? null : isOverLimit ? "yes" : "no",
  ),
  figure("base_width", "Base width", lengthUnit, ({ toeWatersideM, toeLandsideM }, system) =>
    toeWatersideM === null || toeLandsideM === null
      ? null
      : baseWidths({ waterM: toeWatersideM, landM: toeLandsideM }, system).base,
  ),
  length("half_width_waterside", undefined, (station) => station.toeWatersideM, HEIGHT),
  length("half_width_landside", undefined, (station) => station.toeLandsideM, HEIGHT),
  count("bags_across_base", "Bags across base", (station) => station.bagsAcrossBase),
  figure(
    "bags",
    "Bags",
    (system) => `per ${lengthUnit(system)}`,
    ({ bagsPerM }, system) => fixed(bagsPerM === null ? null : bagsPerM * lengthFrom(1, system), 0),
  ),
  figure(
    "cross_section",
    undefined,
    (system) => (system === "us" ? "sq ft" : "m2"),
    ({ sectionAreaM2: m2 }, system) => fixed(m2 === null ? null : areaIn(m2, system), 2),
  ),
  length("can_be_raised_to", undefined, (station) => station.raiseToM, HEIGHT),
];

const AFTER_REASON = COLUMNS.findIndex(({ id }) => id === "at") + 1;

import type { FoundChoice } from "../buildings/choice-types.ts";
import type { BandChoices } from "../buildings/level-choices.ts";
import type { BuildingRow } from "../buildings/rows.ts";
import { lowBehindBanks, type ShownState, type Sweep } from "../buildings/shown-states.ts";
import type { Building } from "../buildings/types.ts";
import type { Plan } from "../plan.ts";
import { isWaterGiven, waterElevationAtGauge } from "../stage.ts";
import { momentText } from "../time/forecast-time.ts";
import type { Band } from "../time/hydrograph.ts";
import { lengthIn, lengthUnit, type UnitSystem, volumeIn } from "../units.ts";
import { BUILDINGS } from "../words/buildings-answer.ts";
import { DISCLAIMER } from "../words/cautions.ts";
import { lowBehindWords } from "../words/low-behind.ts";
import { lineMustFix } from "../words/ring-list.ts";
import type { Named, Value } from "./exported.ts";
import { decimals } from "./rounded.ts";

/** All buildings of a check as they leave the program in a file: figures in one unit system. */
export interface ExportedBuildings {
  readonly plan: Plan;
  readonly buildings: readonly Building[];
  readonly sweep: Sweep;
  readonly states: ReadonlyMap<string, ShownState>;
  /** As the table has them; a chosen group is one row. */
  readonly rows: readonly BuildingRow[];
  /** False before there was anything to choose with. */
  readonly isChosen: boolean;
  /** What is chosen for each line of the forecast; null without these lines. */
  readonly forecasts: BandChoices | null;
  /** What its elevations count from. */
  readonly verticalDatum: string;
  /** Minutes of the forecast's clock ahead of UTC; null where none is stated. */
  readonly offsetMin: number | null;
  readonly system: UnitSystem;
}

/** What the figures of every building follow from. */
export function aboutRecord({ plan, verticalDatum, system }: ExportedBuildings): Named {
  const unit = lengthUnit(system);
  const { water } = plan;
  const waterM = isWaterGiven(water) ? waterElevationAtGauge(water) : null;
  return {
    site: plan.title,
    vertical_datum: verticalDatum,
    [`water_elevation_${unit}`]: waterM === null ? null : decimals(lengthIn(waterM, system), 2),
    [`freeboard_${unit}`]: decimals(lengthIn(water.freeboardM, system), 2),
    [`height_limit_${unit}`]: decimals(lengthIn(plan.practice.limitM, system), 2),
  };
}

/** Ids of the buildings that lie lower than water which does not reach them over the ground. */
function lowerThanWater({ plan: { water }, sweep }: ExportedBuildings): readonly string[] {
  return isWaterGiven(water) ? lowBehindBanks(sweep, waterElevationAtGauge(water)) : [];
}

/** What a file of buildings says before its figures. */
export function buildingCautions(exported: ExportedBuildings): readonly string[] {
  const low = lowerThanWater(exported).length;
  return [BUILDINGS.fail, ...(low > 0 ? [lowBehindWords(low)] : []), BUILDINGS.people, DISCLAIMER];
}

/** The figures of one row, with the unit in each name; null where nothing is known. */
function figuresOf(
  row: Pick<
    BuildingRow,
    "floorM" | "depthM" | "firstWetAtS" | "latestStartAtS" | "line" | "priority"
  >,
  { system, offsetMin }: ExportedBuildings,
): Named {
  const unit = lengthUnit(system);
  const volume = system === "us" ? "cu_yd" : "m3";
  const length = (m: number | null | undefined, digits: number): Value =>
    m === null || m === undefined ? null : decimals(lengthIn(m, system), digits);
  const at = (atS: number | null) =>
    atS === null ? null : momentText({ atS: Math.round(atS / 60) * 60, offsetMin });
  const { line } = row;
  return {
    priority: row.priority,
    [`floor_elevation_${unit}`]: length(row.floorM, 2),
    [`water_depth_${unit}`]: length(row.depthM, 2),
    first_wet: at(row.firstWetAtS),
    latest_start: at(row.latestStartAtS),
    bags_to_order: line ? line.bags : null,
    bags_in_levee: line ? line.leveeBags : null,
    [`sand_${volume}`]: line ? decimals(volumeIn(line.sandM3, system), 1) : null,
    person_hours: line ? decimals(line.personHours, 1) : null,
    [`greatest_height_${unit}`]: length(line?.greatestHeightM, 2),
    [`length_${unit}`]: length(line?.lengthM, 1),
    [`length_over_height_limit_${unit}`]: length(line?.lengthOverLimitM, 1),
    must_fix: line ? lineMustFix(line, system) : null,
  };
}

/** Whether it is chosen for each line of the forecast, and for all of them; null without these lines. */
function chosenAt(
  { forecasts }: ExportedBuildings,
  isIn: (choice: Pick<FoundChoice, "chosen" | "buildings">) => boolean,
): Named {
  const at = (band: Band) => forecasts && isIn(forecasts.bands[band].choice);
  const [low, likely, high] = [at("low"), at("likely"), at("high")];
  return {
    ...{ ring_it_low_forecast: low, ring_it_likely_forecast: likely, ring_it_high_forecast: high },
    ring_it_in_all_three: forecasts && low && likely && high,
  };
}

/** Every building with its state and its own best line, in the order of its file. */
export function buildingRecords(exported: ExportedBuildings): readonly {
  readonly building: Building;
  readonly record: Named;
}[] {
  const marks = new Map(
    exported.rows.flatMap(({ members, mark }) => members.map((id) => [id, mark] as const)),
  );
  const low = new Set(lowerThanWater(exported));
  return exported.buildings.flatMap((building) => {
    const checked = exported.sweep.checked.get(building.id);
    const state = exported.states.get(building.id);
    if (!checked || !state) return [];
    const mark = marks.get(building.id) ?? null;
    const record = {
      ...{ id: building.id, name: building.name, state: STATES[state], in_line: mark },
      ...{ ring_it: exported.isChosen ? state === "chosen" : null, weight: building.weight },
      ...chosenAt(exported, ({ buildings }) => buildings.includes(building.id)),
      ...figuresOf({ ...checked, ...building }, exported),
      lower_than_water_not_reached: checked.lowM == null ? null : low.has(building.id),
      not_checked_because: checked.failed,
    };
    return [{ building, record }];
  });
}

/** The chosen lines in the order of their numbers. */
export function lineRecords(exported: ExportedBuildings): readonly {
  readonly row: BuildingRow;
  readonly record: Named;
}[] {
  const chosen = exported.rows.filter(({ mark }) => mark !== null);
  return [...chosen]
    .sort((a, b) => a.mark! - b.mark!)
    .map((row) => ({
      row,
      record: {
        ...{ id: row.id, name: row.name, state: STATES[row.state], in_line: row.mark },
        ...{ ring_it: true, weight: null },
        ...chosenAt(exported, ({ chosen }) => chosen.includes(row.id)),
        ...figuresOf(row, exported),
        lower_than_water_not_reached: null,
        not_checked_because: null,
      },
    }));
}

/** States as files have them; nothing is called dry that is only not reached at this water. */
const STATES: Readonly<Record<ShownState, string>> = {
  chosen: "ring",
  "can-be-ringed": "can be ringed",
  "over-limit": "over height limit",
  "no-room": "no room",
  "too-late": "cannot be done in time",
  "no-data": "no elevation data",
  dry: "not flooded at this water",
};

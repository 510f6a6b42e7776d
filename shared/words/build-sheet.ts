import type { Holding } from "../holding/types.ts";
import type { Plan } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import {
  formatElevation,
  formatLength,
  formatStation,
  lengthIn,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import { unitsOf } from "./units.ts";

/** Words of the plan and the profile that crews build from. */
export const PLAN_WORDS = {
  waterSide: "WATER SIDE",
  landSide: "LAND SIDE",
  highest: "highest",
  start: "start",
  tieIn: "tie-in",
  end: "end",
  noData: "no data",
  river: "river flows",
  noFlow: "river flow not drawn",
} as const;

/** What the plan file has no place for yet. */
export const NOT_PLACED =
  "Not placed on this plan: benchmark, sand and bag pile, truck way in and its gap, pumps and hose. Mark them by hand.";

/** `over 4.0 ft limit`. */
export function overLimitWords(limitM: number, system: UnitSystem): string {
  return `over ${formatLength(limitM, system)} limit`;
}

/** `7 c`: courses. */
export function coursesMark(courses: string): string {
  return `${courses} c`;
}

/** `match line 12+00, page 2`. */
export function matchWords(chainageM: number, page: number, system: UnitSystem): string {
  return `match line ${formatStation(chainageM, system, 0)}, page ${page}`;
}

/** `floor 873.36`; null where it is not known. */
export function floorMark(floorM: number | null, system: UnitSystem): string | null {
  return floorM === null ? null : `floor ${lengthIn(floorM, system).toFixed(2)}`;
}

/** The sump and the pumps for it; its place is calculated. */
export function sumpWords(
  { inside, pumping }: Holding,
  near: { readonly awayM: number; readonly chainageM: number } | null,
  system: UnitSystem,
): readonly string[] {
  const { proposed } = pumping;
  return [
    `Sump ${lengthIn(inside!.lowestM, system).toFixed(2)}`,
    ...(near
      ? [
          `${formatLength(near.awayM, system, 0)} inside ${formatStation(near.chainageM, system, 0)}`,
        ]
      : []),
    ...(proposed
      ? [
          `${proposed.working} ${proposed.working === 1 ? "pump" : "pumps"} + ${proposed.spare} spare`,
        ]
      : []),
  ];
}

/** What the figures beside the line are: `height in ft, low toe to top`. */
export function planKey({ section }: Plan, system: UnitSystem) {
  return {
    height: `height in ${lengthUnit(system)}, low toe to top`,
    courses: `courses of ${unitsOf(system).small(section.bag.courseM)}`,
  };
}

/** Heads of the rows under the profile. */
export function profileRows(system: UnitSystem) {
  const unit = lengthUnit(system);
  return {
    height: `Height, ${unit}`,
    courses: "Courses",
    ground: `Ground, ${unit}`,
    station: "Station",
  };
}

/** `4.4 ft at 4+18, the highest`; null where nothing is built. */
export function highestWords({ totals }: SizedLine, system: UnitSystem): string | null {
  const { greatestHeightM, greatestHeightAtM } = totals;
  if (!(greatestHeightM > 0)) return null;
  return `${formatLength(greatestHeightM, system)} at ${formatStation(greatestHeightAtM, system, 0)}, the highest`;
}

/** What the lines of the profile are. */
export function profileKey(plan: Plan, system: UnitSystem) {
  const { water, practice } = plan;
  return {
    top: "top of levee",
    water:
      water.by === "stage"
        ? `water at stage ${lengthIn(water.stageM, system).toFixed(system === "us" ? 1 : 2)}`
        : `water at ${formatElevation(water.elevationM, system)}`,
    limit: `height limit, ${formatLength(practice.limitM, system)} down`,
    ground: "ground, lowest under the base",
  };
}

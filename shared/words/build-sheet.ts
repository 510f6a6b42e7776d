import type { Holding } from "../holding/types.ts";
import type { Benchmark, Plan } from "../plan.ts";
import type { SizedLine } from "../sizing-types.ts";
import { surveyOf } from "../survey/leveling.ts";
import { shownInstrument } from "../survey/rod.ts";
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

/** `BM 1`: a benchmark's name up to its comma. */
export function benchmarkMark({ name }: Benchmark): string {
  return name.split(",")[0]!.trim() || "Benchmark";
}

/** `Benchmark BM 1, well pad: 876.42 ft. Backsight 3.18, height of instrument 879.60.`; null without a benchmark. */
export function benchmarkWords(plan: Pick<Plan, "survey">, system: UnitSystem): string | null {
  const { benchmark, backsightM } = surveyOf(plan);
  if (!benchmark) return null;
  const name = benchmark.name.trim();
  const level = `${lengthIn(benchmark.elevationM, system).toFixed(2)} ${lengthUnit(system)}`;
  const instrument = shownInstrument(plan, system);
  const set =
    instrument === null || backsightM === null
      ? "Backsight not typed: height of instrument not known."
      : `Backsight ${lengthIn(backsightM, system).toFixed(2)}, height of instrument ${instrument.toFixed(2)}.`;
  return `Benchmark${name === "" ? "" : ` ${name}`}: ${level}. ${set}`;
}

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

/** The sump and the pumps for it, unless they have a place of their own; the sump's place is calculated. */
export function sumpWords(
  { inside, pumping }: Holding,
  near: { readonly awayM: number; readonly chainageM: number } | null,
  hasPumpsElsewhere: boolean,
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
    ...(proposed && !hasPumpsElsewhere
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

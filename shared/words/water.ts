import type { Plan } from "../plan.ts";
import { formatLength, formatStation, lengthIn, lengthUnit, type UnitSystem } from "../units.ts";
import type {
  DryVerdict,
  FirstOver,
  Passage,
  Reached,
  TracedAlternative,
  WaterTrace,
} from "../water-types.ts";
import { notKnownBecause } from "./dry.ts";

/** Nearer to the line than this is at it, metres. */
const AT_LINE_M = 3;

/**
 * A level as far above the sized-for water, as the water is given: "stage 32.0 ft", or an elevation. Rounded down, so
 * that it promises no more than there is.
 */
export function raisedLevelWords(
  riseM: number,
  elevationM: number,
  { water }: Plan,
  system: UnitSystem,
) {
  const isStage = water.by === "stage";
  const digits = isStage && system === "us" ? 1 : 2;
  const level = lengthIn(isStage ? water.stageM + riseM : elevationM, system);
  const down = Math.floor(level * 10 ** digits + 1e-6) / 10 ** digits;
  return `${isStage ? "stage " : ""}${down.toFixed(digits)} ${lengthUnit(system)}`;
}

/** Whether water gets in, and from which level on. */
export interface ComesIn extends DryVerdict {
  readonly firstOver: Pick<FirstOver, "riseM" | "elevationM"> | null;
}

/** The level above which water gets to what a line is for: "stage 32.0 ft"; null where none was found. */
export function firstOverWords(
  { firstOver }: Pick<ComesIn, "firstOver">,
  plan: Plan,
  system: UnitSystem,
): string | null {
  return firstOver && raisedLevelWords(firstOver.riseM, firstOver.elevationM, plan, system);
}

/** From which level on water gets to what a line is for: "overtops above stage 32.0 ft", "water gets in above ..." where it does already. */
export function overtopsWords(line: ComesIn, plan: Plan, system: UnitSystem): string {
  const { dry } = line;
  if (dry === null) return `not known whether water gets in: ${notKnownBecause(line)}`;
  const level = firstOverWords(line, plan, system);
  if (level === null) return dry ? "no overland path in at any level traced" : "water gets in";
  return dry ? `overtops above ${level}` : `water gets in above ${level}`;
}

/** "no overland path in", "water gets in", or that it is not known. */
export function dryWords({ dry, notKnown }: TracedAlternative): string {
  if (dry === null) return notKnown?.because === "no-building" ? "no building" : "not known";
  return dry ? "no overland path in" : "water gets in";
}

/** From which level on water reaches a building: "wet above stage 30.2 ft". */
export function sillWords(reached: Reached, plan: Plan, system: UnitSystem): string {
  const { wet, sillM, marginM, throughHole } = reached;
  if (wet === null) return "not known";
  if (throughHole?.alone) return "wet, across missing elevation data";
  if (sillM === null || marginM === null) return "not reached at any level traced";
  return `wet above ${raisedLevelWords(marginM, sillM, plan, system)}`;
}

/** How many buildings the sized-for water reaches. @param maybe those it reaches only if there is a culvert where one may be */
export function reachesWords(wet: number, all: number, maybe: number): string {
  const more = maybe > 0 ? `, ${maybe} more if there is a culvert` : "";
  return `reaches ${wet} of ${all} without a levee${more}`;
}

/** Of a building that is dry as traced. */
export const WET_IF_CULVERT = "at this water if there is a culvert where one may be";

/** Where water passes, seen from the line: "at 3+40", "around the end at 0+00", "72 ft beside the line at 3+40". */
export function placeWords({ chainageM, fromLineM, end }: Passage, system: UnitSystem): string {
  const station = formatStation(chainageM, system);
  const far = fromLineM > AT_LINE_M ? formatLength(fromLineM, system, 0) : "";
  if (end !== null) return `around the end at ${station}${far && `, ${far} away from it`}`;
  return far ? `${far} beside the line at ${station}` : `at ${station}`;
}

/** Where the water is taken to come from, as the end of "connected to ...". */
export function fromWords({ water }: WaterTrace): string {
  if (water.from === "sources") return "a marked source";
  if (water.from === "both") return "a marked source or the low edge of the elevation data";
  return "the low edge of the elevation data";
}

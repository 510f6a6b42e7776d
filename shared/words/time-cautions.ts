import type { Plan } from "../plan.ts";
import { endsRising } from "../time/forecast-end.ts";
import type { RiverClock } from "../time/river-clock.ts";
import type { AheadVerdict, LineTime } from "../time/types.ts";
import { formatLength, type UnitSystem } from "../units.ts";
import { endWords, hourWords } from "./clock.ts";
import { namedLevel } from "./time.ts";

/** That a forecast crests over what the line is sized for. */
export function crestAboveWords(
  crest: { readonly waterM: number; readonly riseM: number },
  plan: Plan,
  system: UnitSystem,
): string {
  const rise = formatLength(crest.riseM, system);
  return `The forecast crests at ${namedLevel(plan, crest.waterM, system)}, ${rise} above what the line is sized for.`;
}

/** That a forecast shows no crest, so that neither the height nor the time is based on one; null where it shows one. */
export function stillRisingWords(river: RiverClock, plan: Plan, system: UnitSystem): string | null {
  if (!endsRising(river)) return null;
  const level = namedLevel(plan, river.crestM, system);
  return `The forecast ends ${endWords(river, system)} with its highest water, ${level}: its crest may come later. Enter a longer forecast before you rely on it.`;
}

/** That some of the line is in no time. @param gap how much of it, in words */
export function notInTimesWords(gap: string): string {
  return `${gap} of the line has no elevation data: its bags and hours are in none of these times.`;
}

/**
 * Whether the top of levee stays above the water at one pace, for a cell of a table.
 * @param isPart true where some of the line is not known: "ahead" is then never said
 */
export function aheadCellWords(
  { behindFromH, leastSpareM }: AheadVerdict,
  { startAt }: LineTime,
  isPart: boolean,
  system: UnitSystem,
): string {
  if (behindFromH === null) return isPart ? "not known" : "ahead";
  return `behind ${hourWords(startAt, behindFromH, system)}, ${formatLength(-leastSpareM, system)} short`;
}

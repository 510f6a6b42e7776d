import type { Failure } from "../failure.ts";
import type { HeightRange } from "../messages.ts";
import type { VerticalUnit } from "../plan.ts";
import { grouped, type UnitSystem } from "../units.ts";
import { metresPer } from "../vertical-unit.ts";
import { failureWords } from "./failure.ts";

/** What a choice of the unit would make of elevation data. */
export interface UnitChoiceWords {
  readonly words: string;
  /** True where the water would lie outside of all ground. */
  readonly isUnlikely: boolean;
}

/** Why the unit of the heights is asked for; null = the person wants the question again. */
export function unitAskedWords(why: Failure | null, system: UnitSystem): string {
  return why ? failureWords(why, system).message : "What unit are the heights in?";
}

/**
 * `868 to 902 ft; your water 873.9 ft`, in the unit itself, so that the wrong one is seen.
 * @param waterM sized-for water, metres; null where it is of another place
 */
export function unitChoice(
  { lowest, highest }: HeightRange,
  unit: VerticalUnit,
  waterM: number | null,
): UnitChoiceWords {
  const sign = unit === "metre" ? "m" : "ft";
  const ground = `${grouped(lowest, 0)} to ${grouped(highest, 0)} ${sign}`;
  if (waterM === null) return { words: ground, isUnlikely: false };
  const water = waterM / metresPer(unit);
  const offBy = water < lowest ? lowest - water : water - highest;
  const side = water < lowest ? "below" : "above";
  const off = offBy > 0 ? `, ${grouped(Math.ceil(offBy), 0)} ${sign} ${side} all of it` : "";
  return {
    words: `${ground}; your water ${grouped(water, 1)} ${sign}${off}`,
    isUnlikely: offBy > 0,
  };
}

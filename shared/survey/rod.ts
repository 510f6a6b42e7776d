import type { Plan } from "../plan.ts";
import { lengthFrom, lengthIn, type UnitSystem } from "../units.ts";
import { belowInstrument, heightOfInstrumentM, surveyOf } from "./leveling.ts";

/** A figure as elevations are shown, hundredths: sums on a page are sums of what stands on it. */
function shownLevel(m: number, system: UnitSystem): number {
  return Number(lengthIn(m, system).toFixed(2));
}

/**
 * Height of instrument as the page adds it up from benchmark and backsight, in feet or meters; null until both are
 * typed.
 */
export function shownInstrument(plan: Pick<Plan, "survey">, system: UnitSystem): number | null {
  const survey = surveyOf(plan);
  const { benchmark, backsightM } = survey;
  if (benchmark === null || backsightM === null) return null;
  const shown = {
    ...survey,
    benchmark: { ...benchmark, elevationM: asShownM(benchmark.elevationM, system) },
    backsightM: asShownM(backsightM, system),
  };
  return shownLevel(heightOfInstrumentM(shown)!, system);
}

/**
 * Rod reading at which a mark has an elevation (metres), in feet or meters, hundredths: the height of instrument and
 * the elevation as they are shown, one from the other. Below 0 the mark is above the line of sight.
 */
export function rodReading(instrument: number, elevationM: number, system: UnitSystem): number {
  return Number(belowInstrument(instrument, shownLevel(elevationM, system)).toFixed(2));
}

function asShownM(m: number, system: UnitSystem): number {
  return lengthFrom(shownLevel(m, system), system);
}

import { timeOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import { type Band, hydrographOf } from "../time/hydrograph.ts";

/** Highest water of each band of a forecast, elevations at the gauge, meters. */
export type BandLevels = Readonly<Record<Band, number>>;

/** Null without a forecast, and where it has no bands beside the likely one. */
export function bandLevels(plan: Plan): BandLevels | null {
  const { forecast } = timeOf(plan);
  if (!forecast) return null;
  const crest = (band: Band) => {
    const river = hydrographOf(plan, forecast, band);
    return river ? Math.max(...river.levelM) : null;
  };
  const [low, likely, high] = [crest("low"), crest("likely"), crest("high")];
  return low === null || likely === null || high === null ? null : { low, likely, high };
}

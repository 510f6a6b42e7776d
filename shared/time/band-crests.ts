import { timeOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { momentOf, momentText } from "./forecast-time.ts";
import { type Band, hydrographOf } from "./hydrograph.ts";
import { curvePoint, type TotalsAt } from "./stage-curve.ts";
import type { BandCrest } from "./types.ts";

const BANDS: readonly Band[] = ["low", "likely", "high"];

/** Bags and heights if the low, the likely or the high forecast's crest comes true; empty without a forecast. */
export function bandCrests(plan: Plan, totalsAt: TotalsAt): BandCrest[] {
  const { forecast } = timeOf(plan);
  if (!forecast) return [];
  const offsetMin = momentOf(forecast.rows[0]!.at)!.offsetMin;
  return BANDS.flatMap((band) => {
    const hydrograph = hydrographOf(plan, forecast, band);
    if (!hydrograph) return [];
    const { atS, levelM } = hydrograph;
    const top = levelM.reduce((best, each, i) => (each > levelM[best]! ? i : best), 0);
    const riseM = levelM[top]! - waterElevationAtGauge(plan.water);
    const at = momentText({ atS: atS[top]!, offsetMin });
    return [{ band, at, ...curvePoint(plan, riseM, totalsAt(riseM)) }];
  });
}

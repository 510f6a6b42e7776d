import { HOUR_S } from "../constants.ts";
import type { Forecast, Plan } from "../plan.ts";
import { endsRising } from "../time/forecast-end.ts";
import { type Moment, momentOf } from "../time/forecast-time.ts";
import type { RiverClock } from "../time/river-clock.ts";
import type { UnitSystem } from "../units.ts";
import { momentWords } from "./clock.ts";
import { namedLevel } from "./time.ts";

/** `crest stage 31.0 ft, Thu 07:00`; where the forecast ends with it, it is not called a crest. */
export function riverPeakWords(plan: Plan, river: RiverClock, system: UnitSystem): string {
  const { start, crestH, crestM } = river;
  const when = momentWords({ ...start, atS: start.atS + crestH * HOUR_S }, false, system);
  const name = endsRising(river) ? "highest at its end" : "crest";
  return `${name} ${namedLevel(plan, crestM, system)}, ${when}`;
}

/** `12 rows by stage, Mon, April 6, 07:00 to Wed, April 8, 07:00; crest stage 31.0 ft, Thu 07:00.` */
export function forecastRowsWords(
  { rows, levels }: Forecast,
  plan: Plan,
  river: RiverClock,
  system: UnitSystem,
): string {
  const { offsetMin } = river.start;
  const [first, last] = [rows[0]!, rows.at(-1)!].map(({ at }) => ({
    atS: momentOf(at)!.atS,
    offsetMin,
  })) as [Moment, Moment];
  const ends = [first, last].map((moment) => momentWords(moment, true, system)).join(" to ");
  return `${rows.length} rows by ${levels}, ${ends}; ${riverPeakWords(plan, river, system)}.`;
}

/** When and how high the river is at an hour of the forecast. */
export function riverAtWords(
  plan: Plan,
  { start, levelAtH }: RiverClock,
  hour: number,
  system: UnitSystem,
): string {
  const when = momentWords({ ...start, atS: start.atS + hour * HOUR_S }, true, system);
  return `${when}, ${namedLevel(plan, levelAtH(hour), system)}`;
}

/** What the slider through the forecast says while nobody moves it. */
export function momentHintWords(plan: Plan, river: RiverClock, system: UnitSystem): string {
  const peak = endsRising(river) ? "Highest at the forecast's end," : "Forecast crest";
  return `${peak} ${riverAtWords(plan, river, river.crestH, system)}. Move to see the water hour by hour; the plan stays as it is.`;
}

import { HOUR_S } from "../constants.ts";
import { timeOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import type { Moment } from "./forecast-time.ts";
import { hydrographOf, levelAt } from "./hydrograph.ts";
import { startOfWork } from "./start.ts";

/** The likely forecast on the clock of the work: hours are counted from its start. */
export interface RiverClock {
  readonly start: Moment;
  /** Hours of the forecast's first and last row; the first is negative where work starts later. */
  readonly fromH: number;
  readonly toH: number;
  /** Hour of the first row with the highest water, and that water at the gauge, metres. */
  readonly crestH: number;
  readonly crestM: number;
  /** Water-surface elevation at the gauge, metres: before the first row as in it, after the last NaN. */
  readonly levelAtH: (hour: number) => number;
}

/** Null where the plan has no forecast. */
export function riverClock(plan: Plan): RiverClock | null {
  const time = timeOf(plan);
  const start = startOfWork(time);
  const river = time.forecast && hydrographOf(plan, time.forecast, "likely");
  if (!start || !river) return null;
  const hourOf = (atS: number) => (atS - start.atS) / HOUR_S;
  const crest = river.levelM.reduce((best, m, i) => (m > river.levelM[best]! ? i : best), 0);
  return {
    start,
    fromH: hourOf(river.atS[0]!),
    toH: hourOf(river.atS.at(-1)!),
    crestH: hourOf(river.atS[crest]!),
    crestM: river.levelM[crest]!,
    levelAtH: (hour) => levelAt(river, start.atS + hour * HOUR_S),
  };
}

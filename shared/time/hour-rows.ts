import { HOUR_S } from "../constants.ts";
import type { Moment } from "./forecast-time.ts";
import { type Hydrograph, levelAt } from "./hydrograph.ts";
import type { Schedule } from "./schedule.ts";
import type { LiftedStretch } from "./stretches.ts";
import type { HourRow } from "./types.ts";

export interface HourInputs {
  readonly stretches: readonly LiftedStretch[];
  readonly schedule: Schedule;
  readonly hydrograph: Hydrograph | null;
  readonly start: Moment | null;
  readonly designM: number;
}

const MOST_HOURS = 240;

/** Hour by hour what is laid, where the water stands, and how far the lowest crest is above it, but for what is on HOLD. */
export function hourRows(inputs: HourInputs): HourRow[] {
  const { schedule, hydrograph, start } = inputs;
  const forecastH = hydrograph && start ? (hydrograph.atS.at(-1)! - start.atS) / HOUR_S : 0;
  const workH = Number.isFinite(schedule.finishH) ? schedule.finishH : MOST_HOURS;
  const last = Math.min(MOST_HOURS, Math.ceil(Math.max(workH, forecastH)));
  return Array.from({ length: last + 1 }, (_, hour) => rowAt(inputs, hour));
}

function rowAt(inputs: HourInputs, hour: number): HourRow {
  const { stretches, schedule, hydrograph, start, designM } = inputs;
  const levelM = hydrograph && start ? levelAt(hydrograph, start.atS + hour * HOUR_S) : Number.NaN;
  let bagsLaid = 0;
  let leastAheadM = Number.POSITIVE_INFINITY;
  for (const [index, stretch] of stretches.entries()) {
    const { lowestM, standsM: alreadyM = lowestM, isOnHold } = stretch;
    if (isOnHold) continue;
    let standsM = alreadyM;
    for (const { startH, finishH, bags, topM } of schedule.byStretch[index]!) {
      if (finishH <= hour) standsM = topM;
      bagsLaid += bags * shareDone(startH, finishH, hour);
    }
    leastAheadM = Math.min(leastAheadM, standsM - (levelM - designM));
  }
  return {
    hour,
    waterM: Number.isNaN(levelM) ? null : levelM,
    bagsLaid: Math.floor(bagsLaid + 1e-6),
    leastAheadM: Number.isFinite(leastAheadM) ? leastAheadM : null,
  };
}

function shareDone(startH: number, finishH: number, hour: number): number {
  if (finishH <= hour) return 1;
  if (startH >= hour) return 0;
  return (hour - startH) / (finishH - startH);
}

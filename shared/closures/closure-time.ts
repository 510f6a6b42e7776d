import { HOUR_S } from "../constants.ts";
import { leaveElevationM } from "../leave.ts";
import type { Closure, Plan } from "../plan.ts";
import { type Moment, momentOf } from "../time/forecast-time.ts";
import type { River } from "../time/sequencer.ts";
import type { LiftedStretch } from "../time/stretches.ts";
import type { ClosureTime } from "../time/types.ts";

/** What a closure's hours follow from. */
export interface ClosureInputs {
  readonly plan: Plan;
  /** Whole bags of it. */
  readonly bags: number;
  /** Water at the gauge that the line is sized for, metres. */
  readonly designM: number;
  readonly marginM: number;
  /** Hour 0. */
  readonly start: Moment | null;
  /** The likely forecast on the clock of the work; null without one. */
  readonly river: River | null;
}

/**
 * Whether a way left open can still be closed: its bags, filled and set beside it, are laid by the people kept for it
 * from the stage or hour at which closing begins, at the rates of laying alone, night and day. It must be closed
 * before the water is the margin below its lowest ground.
 * @param stretches of the closure itself
 */
export function closureTime(
  closure: Closure,
  stretches: readonly LiftedStretch[],
  { plan, bags, designM, marginM, start, river }: ClosureInputs,
): ClosureTime {
  const { fromM, toM, closeBy, people } = closure;
  const { taskRateLow, taskRateHigh } = plan.practice;
  const takes = (bagsPerH: number) => (people === null ? null : bags / (people * bagsPerH));
  const takesSlowH = takes(taskRateLow);
  const lowestM = Math.min(...stretches.map((each) => each.lowestM));
  const needM = stretches.length > 0 ? lowestM - marginM : null;
  const closeM = stageElevationM(plan, closeBy.stageM);
  const closeH = closingHour(closeBy.at, closeM, { designM, start, river });
  const neededH = river && needM !== null ? river.passesH(needM) : null;
  const doneH = closeH === null || takesSlowH === null ? null : closeH + takesSlowH;
  const isTooLate =
    closeBy.at === null && closeM !== null && needM !== null && closeM >= designM + needM;
  return {
    ...{ fromM, toM, bags, people, at: closeBy.at, stageM: closeBy.stageM },
    closeH: finite(closeH),
    takesSlowH,
    takesFastH: takes(taskRateHigh),
    neededM: needM === null ? null : designM + needM,
    neededH: finite(neededH),
    earlyH: doneH === null || neededH === null ? null : finite(neededH - doneH),
    inTime: isTooLate ? false : doneH === null || neededH === null ? null : doneH <= neededH,
  };
}

function stageElevationM({ water }: Plan, stageM: number | null): number | null {
  return leaveElevationM({ by: "stage", levelM: stageM, at: null, note: "" }, water);
}

/** Hours until closing begins, the earlier of stage and hour; Infinity where the forecast never gets there. */
function closingHour(
  at: string | null,
  closeM: number | null,
  { designM, start, river }: Pick<ClosureInputs, "designM" | "start" | "river">,
): number | null {
  const moment = at === null ? null : momentOf(at);
  const byHour = moment && start ? (moment.atS - start.atS) / HOUR_S : null;
  const byStage = closeM !== null && river ? river.passesH(closeM - designM) : null;
  if (byHour === null || byStage === null) return byHour ?? byStage;
  return Math.min(byHour, byStage);
}

function finite(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}

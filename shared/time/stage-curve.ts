import { FOOT_M } from "../constants.ts";
import type { Plan } from "../plan.ts";
import type { Totals } from "../sizing-types.ts";
import { waterElevationAtGauge } from "../stage.ts";
import type { CurvePoint, NextFoot, StageCurve } from "./types.ts";

/**
 * Totals of the same line with the water so much higher (or lower) than it is sized for, metres: the same as
 * with the ground lower (or higher) by as much.
 */
export type TotalsAt = (riseM: number) => Totals;

/** Rises at which the curve has its points, feet. */
const RISES_FT = [-2, -1, 0, 1, 2, 3] as const;
const SECANTS = 2;
const FAR_BEYOND_M = 20 * FOOT_M;

/**
 * Bags against stage, from two feet below to three feet above the plan's water, and where the limit lies.
 * A line far beyond any sandbag levee has the one point it was sized for: its water is a slip.
 */
export function stageCurve(plan: Plan, totalsAt: TotalsAt): StageCurve {
  const totals = totalsAt(0);
  const now = curvePoint(plan, 0, totals);
  if (now.greatestHeightM > FAR_BEYOND_M) {
    return { points: [now], limitRiseM: null, nextFoot: null };
  }
  const all = RISES_FT.map((feet) => (feet === 0 ? totals : totalsAt(feet * FOOT_M)));
  const points = RISES_FT.map((feet, i) => curvePoint(plan, feet * FOOT_M, all[i]!));
  const nextFoot = costOf(totals, all[RISES_FT.indexOf(1)]!);
  return { points, limitRiseM: limitRise(points, all, totalsAt), nextFoot };
}

/** What the next foot takes beyond what the line takes now. */
function costOf(now: Totals, next: Totals): NextFoot {
  return {
    bags: next.bags - now.bags,
    overLimitM: next.lengthOverLimitM - now.lengthOverLimitM,
    earthM3: next.materials.earthM3 - now.materials.earthM3,
    looseSandM3: next.materials.looseSandM3 - now.materials.looseSandM3,
    hasGaps: now.lengthNoDataM > 0,
  };
}

/** One point of the curve from the totals at a rise. */
export function curvePoint({ water }: Plan, riseM: number, totals: Totals): CurvePoint {
  const { bags, greatestHeightM, lengthOverLimitM } = totals;
  return {
    riseM,
    waterM: waterElevationAtGauge(water) + riseM,
    stageM: water.by === "stage" ? water.stageM + riseM : null,
    bags,
    greatestHeightM,
    lengthOverLimitM,
  };
}

/** Rise at which a reach first passes its own limit; null where none does, or one has before the first point. */
function limitRise(
  points: readonly CurvePoint[],
  all: readonly Totals[],
  totalsAt: TotalsAt,
): number | null {
  const past = all.findIndex(({ underLimitM }) => underLimitM < 0);
  if (past <= 0) return null;
  let [lowRise, lowM] = [points[past - 1]!.riseM, all[past - 1]!.underLimitM];
  let [highRise, highM] = [points[past]!.riseM, all[past]!.underLimitM];
  let rise = lowRise;
  for (let step = 0; step <= SECANTS; step++) {
    rise = lowRise + (lowM / (lowM - highM)) * (highRise - lowRise);
    if (step === SECANTS) break;
    const underM = totalsAt(rise).underLimitM;
    if (underM < 0) [highRise, highM] = [rise, underM];
    else [lowRise, lowM] = [rise, underM];
  }
  return rise;
}

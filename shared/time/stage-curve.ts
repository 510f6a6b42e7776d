import { distanceWords, lengthWords } from "../checks/words.ts";
import { FOOT_M } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import type { Totals } from "../sizing-types.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { formatCount, formatVolume } from "../units.ts";
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
    const words = "The line is far higher than any sandbag levee: check the water.";
    return { points: [now], limitRiseM: null, nextFoot: null, words };
  }
  const all = RISES_FT.map((feet) => (feet === 0 ? totals : totalsAt(feet * FOOT_M)));
  const points = RISES_FT.map((feet, i) => curvePoint(plan, feet * FOOT_M, all[i]!));
  const next = points[RISES_FT.indexOf(1)]!;
  const nextFoot = {
    bags: next.bags - now.bags,
    overLimitM: next.lengthOverLimitM - now.lengthOverLimitM,
  };
  return {
    points,
    limitRiseM: limitRise(points, all, totalsAt),
    nextFoot,
    words: [
      nextFootWords(nextFoot),
      ...looseWords(totals, all[RISES_FT.indexOf(1)]!),
      ...(totals.lengthNoDataM > 0 ? ["Stretches without ground data are not in it."] : []),
    ].join(" "),
  };
}

/** What one more foot takes of earth and of sand without bags, where anything is built of them. */
function looseWords(now: Totals, next: Totals): string[] {
  const more = [
    { name: "earth", m3: next.materials.earthM3 - now.materials.earthM3 },
    { name: "loose sand", m3: next.materials.looseSandM3 - now.materials.looseSandM3 },
  ].filter(({ m3 }) => m3 > 0);
  if (more.length === 0) return [];
  const amounts = more.map(
    ({ name, m3 }) => `${formatVolume(m3, "us")} (${formatVolume(m3, "metric")}) of ${name}`,
  );
  return [`It takes ${amounts.join(" and ")} besides.`];
}

/** One point of the curve from the totals at a rise. */
export function curvePoint({ water }: Plan, riseM: number, totals: Totals): CurvePoint {
  const { bags, greatestHeightM, lengthOverLimitM, jobHours } = totals;
  return {
    riseM,
    waterM: waterElevationAtGauge(water) + riseM,
    stageM: water.by === "stage" ? water.stageM + riseM : null,
    bags,
    greatestHeightM,
    lengthOverLimitM,
    jobHours,
  };
}

/** What the next foot of water costs, in words with both units. */
export function nextFootWords({ bags, overLimitM }: NextFoot): string {
  const cost = `The next foot (${lengthWords(FOOT_M).replace(/^.*\((.*)\)$/, "$1")}) of water costs ${formatCount(bags)} bags`;
  if (!(overLimitM >= 0.5)) return `${cost} and puts nothing more over the limit.`;
  return `${cost} and puts ${distanceWords(overLimitM)} over the limit.`;
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

import { signedAreaM2 } from "../alignment.ts";
import type { CutWalk } from "../cut-walk.ts";
import { holdingOf } from "../defaults.ts";
import type { LineSamples } from "../line-samples.ts";
import type { HoldingSettings, Plan } from "../plan.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { greatestAt, leastAt, sumAlong } from "./along.ts";
import { blighRatio, CREEP_TABLE, laneRatio } from "./creep.ts";
import { CRITICAL, exitGradient, gradientClasses } from "./exit-gradient.ts";
import { type InsideInputs, lookInside } from "./inside.ts";
import { outsideAfter } from "./outside.ts";
import { type HoldingWalk, holdingWalk, passedBySheet, seepageAt } from "./profile.ts";
import { pumpingFor } from "./pumping.ts";
import type { Creep, ExitGradient, Holding, Raise, Seepage, Spread } from "./types.ts";
import { weakestPlaces } from "./weakest.ts";

const OVER_SLACK_M = 1e-6;

export type LineHoldingInputs = Omit<InsideInputs, "waterM">;

/** Standing, seepage, gradients, reserve and pumping of one sized line, from its walk. */
export function lineHolding(inputs: LineHoldingInputs): Holding {
  const { plan, line, samples, cuts, waterSide } = inputs;
  const holding = holdingOf(plan);
  const walk = holdingWalk(plan, holding, samples, cuts, waterSide);
  const seepage = seepageOf(samples, walk, holding);
  const waterM = samples.waterM.reduce((least, each) => Math.min(least, each), Infinity);
  const found = lookInside({ ...inputs, waterM });
  return {
    standing: weakestPlaces(samples, walk.profile, holding, isOverItsLimit(cuts)),
    seepage,
    exit: exitOf(samples, walk, holding),
    creep: creepOf(samples, walk, holding),
    raise: raiseOf(samples, walk, plan),
    inside: found?.inside ?? null,
    pumping: pumpingFor({
      holding,
      seepageM3PerS: seepage.totalM3PerS,
      enclosedM2: line.closed ? Math.abs(signedAreaM2(line)) : null,
      basin: found?.basin ?? null,
      inside: found?.inside ?? null,
      outsideM: outsideAfter(plan, waterM),
    }),
    profile: walk.profile,
  };
}

/** True where a section with a limit of its own is built higher than that. */
function isOverItsLimit({ reaches, reach, greatestHeightM }: CutWalk): boolean {
  return greatestHeightM.some((heightM, i) => {
    const limitM = reaches[reach[i]!]!.section.limitM;
    return limitM !== null && heightM > limitM + OVER_SLACK_M;
  });
}

function seepageOf(
  samples: LineSamples,
  { rates, profile }: HoldingWalk,
  holding: HoldingSettings,
): Seepage {
  const through = sumAlong(samples, (i) => rates.through[i]!);
  const under = sumAlong(samples, (i) => rates.under[i]!).total;
  const bare = times(through.total, holding.fillLowMPerS, holding.fillHighMPerS);
  const passed = passedBySheet(holding);
  const behind = sumAlong(samples, (i) => (rates.hasSheet[i] === 1 ? rates.through[i]! : 0)).total;
  const open = times(through.total - behind, holding.fillLowMPerS, holding.fillHighMPerS);
  const held = times(behind, holding.fillLowMPerS, holding.fillHighMPerS);
  const sheeted = {
    low: held.low * passed.low + open.low,
    high: held.high * passed.high + open.high,
  };
  const below = times(under, holding.underLowMPerS, holding.underHighMPerS);
  const laid = holding.sheetLaid ? sheeted : bare;
  const worst = greatestAt(profile.seepageHighM2PerS);
  return {
    throughBareM3PerS: bare,
    throughSheetM3PerS: sheeted,
    underM3PerS: below,
    totalM3PerS: { low: laid.low + below.low, high: laid.high + below.high },
    worstM: worst === null ? null : samples.chainageM[worst]!,
    worstM2PerS: worst === null ? { low: 0, high: 0 } : seepageAt(rates, worst, holding),
    lengthNoDataM: through.lengthNoDataM,
  };
}

function exitOf(
  samples: LineSamples,
  { profile, shapes }: HoldingWalk,
  holding: HoldingSettings,
): ExitGradient | null {
  const worst = greatestAt(profile.gradientHigh);
  const shape = worst === null ? null : shapes[worst];
  if (worst === null || !shape || !(shape.headM > 0)) return null;
  const baseM = shape.toeWaterM + shape.toeLandM;
  const high = exitGradient(shape.headM, baseM, holding.trenchLowM);
  return {
    atM: samples.chainageM[worst]!,
    gradient: { low: exitGradient(shape.headM, baseM, holding.trenchHighM), high },
    classes: gradientClasses(high),
    critical: CRITICAL,
  };
}

function creepOf(
  samples: LineSamples,
  { shapes }: HoldingWalk,
  holding: HoldingSettings,
): Creep | null {
  const { soil, trenchLowM } = holding;
  const ratioAt = (i: number, ratio: typeof laneRatio) => {
    const shape = shapes[i];
    if (!shape || !(shape.headM > 0)) return Number.POSITIVE_INFINITY;
    return ratio(shape.headM, shape.toeWaterM + shape.toeLandM, trenchLowM);
  };
  const worst = leastAt(Float64Array.from(shapes, (_, i) => ratioAt(i, laneRatio)));
  if (worst === null) return null;
  const required = soil === "unknown" ? null : CREEP_TABLE[soil];
  return {
    soil,
    atM: samples.chainageM[worst]!,
    lane: ratioAt(worst, laneRatio),
    bligh: ratioAt(worst, blighRatio),
    laneRequired: required?.lane ?? null,
    blighRequired: required?.bligh ?? null,
  };
}

/**
 * Null where nothing is built, and where a part is built of a section whose reserve is not published: what the
 * rest could carry more says nothing of the line. Source: NDSU-NR (base at least twice the height); never past
 * the limit.
 */
function raiseOf(
  samples: LineSamples,
  { profile, shapes }: HoldingWalk,
  { water }: Plan,
): Raise | null {
  const isUntold = shapes.some((shape, i) => shape !== null && Number.isNaN(profile.raiseM[i]!));
  if (isUntold) return null;
  const least = leastAt(profile.raiseM);
  if (least === null) return null;
  const leastM = profile.raiseM[least]!;
  const moreM = Math.max(0, leastM);
  return {
    leastM,
    atM: samples.chainageM[least]!,
    standsForM: waterElevationAtGauge(water) + moreM,
    standsForStageM: water.by === "stage" ? water.stageM + moreM : null,
  };
}

function times(value: number, low: number, high: number): Spread {
  return { low: value * low, high: value * high };
}

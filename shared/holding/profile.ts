import { builtAt, type CutWalk } from "../cut-walk.ts";
import type { LineSamples } from "../line-samples.ts";
import type { HoldingSettings, Plan } from "../plan.ts";
import { type BuiltReach, reserveM } from "../sections/built-reach.ts";
import { exitGradient } from "./exit-gradient.ts";
import { factorsOf } from "./free-body.ts";
import { restingLevee } from "./levee-body.ts";
import { type SampleShape, shapeAt } from "./sample-shape.ts";
import { seepageThrough, slabSeepage } from "./seepage.ts";
import type { HoldingProfile, Spread } from "./types.ts";

/** Seepage at every sample for a conductivity of 1, m3/s per metre over m/s; NaN where there is no ground. */
export interface SeepageRates {
  readonly through: Float64Array;
  readonly under: Float64Array;
  /** 1 where the section has a sheet on its waterside, once sheet is laid at all. */
  readonly hasSheet: Uint8Array;
}

export interface HoldingWalk {
  readonly profile: HoldingProfile;
  readonly rates: SeepageRates;
  readonly shapes: readonly (SampleShape | null)[];
}

/** Statics, seepage, exit gradient and raise reserve at every sample of the walk. */
export function holdingWalk(
  plan: Plan,
  holding: HoldingSettings,
  samples: LineSamples,
  cuts: CutWalk,
  waterSide: 1 | -1,
): HoldingWalk {
  const { count } = samples;
  const profile: HoldingProfile = {
    waterDepthM: new Float32Array(count),
    slidingLow: new Float32Array(count),
    slidingHigh: new Float32Array(count),
    overturning: new Float32Array(count),
    seepageLowM2PerS: new Float32Array(count),
    seepageHighM2PerS: new Float32Array(count),
    gradientHigh: new Float32Array(count),
    raiseM: new Float32Array(count),
  };
  const rates = {
    through: new Float64Array(count),
    under: new Float64Array(count),
    hasSheet: new Uint8Array(count),
  };
  const shapes = Array.from({ length: count }, (_, i) => shapeAt(i, samples, cuts, waterSide));
  for (const [i, shape] of shapes.entries()) {
    const reach = builtAt(cuts, i);
    rates.hasSheet[i] = reach.section.sheet ? 1 : 0;
    if (shape) fillSample(profile, rates, i, shape, holding, reach);
    else fillNothing(profile, rates, i, cuts.areaM2[i]!);
    profile.raiseM[i] = shape
      ? reserveM(reach, shape.heightM, cuts.greatestHeightM[i]!, plan) - shape.heightM
      : Number.NaN;
    profile.seepageLowM2PerS[i] = seepageAt(rates, i, holding).low;
    profile.seepageHighM2PerS[i] = seepageAt(rates, i, holding).high;
  }
  return { profile, rates, shapes };
}

/** Share of the seepage through the levee that the sheet lets pass, low and high. */
export function passedBySheet(holding: HoldingSettings): Spread {
  return { low: 1 - holding.sheetCutHigh, high: 1 - holding.sheetCutLow };
}

/** Through, with the sheet if it is laid, and under at one sample, m3/s per metre. */
export function seepageAt(rates: SeepageRates, i: number, holding: HoldingSettings): Spread {
  const laid = holding.sheetLaid && rates.hasSheet[i] === 1;
  const passed = laid ? passedBySheet(holding) : { low: 1, high: 1 };
  const through = rates.through[i]!;
  const under = rates.under[i]!;
  return {
    low: through * holding.fillLowMPerS * passed.low + under * holding.underLowMPerS,
    high: through * holding.fillHighMPerS * passed.high + under * holding.underHighMPerS,
  };
}

/** What stands by its bracing has no factors here. */
const NOT_RATED = { sliding: { low: Number.NaN, high: Number.NaN }, overturning: Number.NaN };

function fillSample(
  profile: HoldingProfile,
  rates: SeepageRates,
  i: number,
  shape: SampleShape,
  holding: HoldingSettings,
  { section, kgPerM3 }: BuiltReach,
): void {
  const { waterDepthM, headM, runWater, runLand } = shape;
  const friction = { low: holding.frictionLow, high: holding.frictionHigh };
  const { body, load } = restingLevee(shape, waterDepthM, kgPerM3);
  const rated = factorsOf(body, load, friction, holding.uplift);
  const { sliding, overturning } = section.carriedBy === "weight" ? rated : NOT_RATED;
  profile.waterDepthM[i] = waterDepthM;
  profile.slidingLow[i] = sliding.low;
  profile.slidingHigh[i] = sliding.high;
  profile.overturning[i] = overturning;
  if (!(headM > 0)) return;
  const baseM = shape.toeWaterM + shape.toeLandM;
  rates.through[i] = seepageThrough({ headM, baseM, waterRun: runWater, landRun: runLand }).rateM;
  rates.under[i] = slabSeepage(1, headM, holding.underDepthM, baseM);
  profile.gradientHigh[i] = exitGradient(headM, baseM, holding.trenchLowM);
}

function fillNothing(
  profile: HoldingProfile,
  rates: SeepageRates,
  i: number,
  areaM2: number,
): void {
  const nothing = areaM2 === 0 ? 0 : Number.NaN;
  const safe = areaM2 === 0 ? Number.POSITIVE_INFINITY : Number.NaN;
  profile.waterDepthM[i] = nothing;
  profile.slidingLow[i] = safe;
  profile.slidingHigh[i] = safe;
  profile.overturning[i] = safe;
  profile.gradientHigh[i] = nothing;
  rates.through[i] = nothing;
  rates.under[i] = nothing;
}

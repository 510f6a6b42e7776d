import type { LineSamples } from "../line-samples.ts";
import type { HoldingSettings } from "../plan.ts";
import { leastAt, lengthWhere } from "./along.ts";
import type { HoldingProfile, Spread, Standing, Verdict, Weakest } from "./types.ts";

const SLACK = 1e-6;

/**
 * Where the line is weakest against sliding and overturning; null where no water stands against it. Statics
 * take a levee type as one body: where one is built over its height limit, no factor meets what is required.
 */
export function weakestPlaces(
  samples: LineSamples,
  profile: HoldingProfile,
  holding: HoldingSettings,
  isOverItsLimit: boolean,
): Standing | null {
  const sliding = leastAt(profile.slidingLow);
  const overturning = leastAt(profile.overturning);
  if (sliding === null || overturning === null) return null;
  const at = (sample: number, factors: readonly [Float32Array, Float32Array], required: number) => {
    const [low, high] = factors;
    const factor = { low: low[sample]!, high: high[sample]! };
    return {
      verdict: atMost(verdictOf(factor, required), isOverItsLimit),
      chainageM: samples.chainageM[sample]!,
      waterDepthM: profile.waterDepthM[sample]!,
      factor,
      required,
      lengthShortM: lengthWhere(samples, (i) => low[i]! < required - SLACK),
    } satisfies Weakest;
  };
  const { slidingLow, slidingHigh } = profile;
  return {
    uplift: holding.uplift,
    sliding: at(sliding, [slidingLow, slidingHigh], holding.slidingFactor),
    overturning: at(
      overturning,
      [profile.overturning, profile.overturning],
      holding.overturningFactor,
    ),
  };
}

/** Whether a factor is what is required at both ends of its range, at the high one alone, or at neither. */
export function verdictOf(factor: Spread, required: number): Verdict {
  if (factor.low >= required - SLACK) return "meets-required";
  return factor.high >= required - SLACK ? "doubtful" : "below-required";
}

function atMost(verdict: Verdict, isOverItsLimit: boolean): Verdict {
  return isOverItsLimit && verdict === "meets-required" ? "doubtful" : verdict;
}

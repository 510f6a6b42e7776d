import { holdingOf } from "../defaults.ts";
import type { Spread } from "../holding/types.ts";
import { type Listed, listStretches } from "./listed.ts";
import { type CheckContext, ofStretch, type Rule } from "./rule.ts";
import { stretchesOf } from "./stretch.ts";

const SLACK = 1e-6;

/** Factors of safety against what is required; metres. */
export type StandFinding =
  | {
      readonly kind: "sliding";
      readonly waterDepthM: number;
      readonly factor: Spread;
      readonly friction: Spread;
      readonly required: number;
      readonly lengthM: number;
    }
  | {
      readonly kind: "overturning";
      readonly waterDepthM: number;
      readonly factor: number;
      readonly required: number;
      readonly lengthM: number;
    };

/** Whether the water can push the levee away. */
export const sliding: Rule = {
  id: "sliding",
  find: (context) => {
    const { holding, plan } = context;
    if (!holding?.standing) return [];
    const { slidingLow, slidingHigh, waterDepthM } = holding.profile;
    const { slidingFactor: required, frictionLow, frictionHigh } = holdingOf(plan);
    return shortOf(context, slidingLow, required).map((listed) => {
      const { worst } = listed.stretch;
      const factor = { low: slidingLow[worst]!, high: slidingHigh[worst]! };
      return ofStretch(factor.high < required - SLACK ? "stop" : "caution", listed, {
        kind: "sliding",
        ...{ waterDepthM: waterDepthM[worst]!, factor, required, lengthM: listed.lengthM },
        friction: { low: frictionLow, high: frictionHigh },
      });
    });
  },
};

/** Whether the water can turn the levee over. */
export const overturning: Rule = {
  id: "overturning",
  find: (context) => {
    const { holding, plan } = context;
    if (!holding?.standing) return [];
    const { overturning: factors, waterDepthM } = holding.profile;
    const required = holdingOf(plan).overturningFactor;
    return shortOf(context, factors, required).map((listed) => {
      const { worst } = listed.stretch;
      const figures = { waterDepthM: waterDepthM[worst]!, factor: factors[worst]!, required };
      const { lengthM } = listed;
      return ofStretch("stop", listed, { kind: "overturning", ...figures, lengthM });
    });
  },
};

function shortOf(context: CheckContext, factor: Float32Array, required: number): Listed[] {
  const { line, samples, plan } = context;
  const shortAt = (i: number) => required - SLACK - factor[i]!;
  const stretches = stretchesOf(samples, line.closed, plan.practice.stationIntervalM, shortAt);
  return listStretches(stretches, shortAt);
}

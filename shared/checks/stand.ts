import { holdingOf } from "../defaults.ts";
import { factorWords, roundedDown } from "../holding/factor-words.ts";
import type { CheckContext, Rule } from "./rule.ts";
import { stretchesOf } from "./stretch.ts";
import { type Told, toldOf } from "./told.ts";
import { distanceWords, lengthWords } from "./words.ts";

const SLACK = 1e-6;
const ENGINEER = "It is a licensed engineer's and the local code's to say that less will do.";

/** Whether the water can push the levee away. */
export const sliding: Rule = {
  id: "sliding",
  rule: "Friction under the base is at least so many times the thrust of the water.",
  source: "FEMA P-259, from memory; friction from memory, weak; thrust NDSU-NR",
  find: (context) => {
    const { holding, plan } = context;
    if (!holding?.standing) return [];
    const { slidingLow, slidingHigh, waterDepthM } = holding.profile;
    const { slidingFactor, frictionLow, frictionHigh } = holdingOf(plan);
    return shortOf(context, slidingLow, slidingFactor).map(({ stretch, where, lengthM }) => {
      const [low, high] = [slidingLow[stretch.worst]!, slidingHigh[stretch.worst]!];
      const fails = high < slidingFactor - SLACK;
      return {
        severity: fails ? "stop" : "caution",
        stretch,
        sample: stretch.worst,
        message: `${where}: with ${lengthWords(waterDepthM[stretch.worst]!)} of water it resists sliding ${factorWords({ low, high })} times, where ${slidingFactor} is asked, on ${distanceWords(lengthM)}; friction ${frictionLow} to ${frictionHigh}.`,
        remedy: `Widen the base, strip the sod and dig a bond trench, or lead the line over higher ground. ${ENGINEER}`,
      };
    });
  },
};

/** Whether the water can turn the levee over. */
export const overturning: Rule = {
  id: "overturning",
  rule: "The weight resists turning about the landside toe at least so many times.",
  source: "FEMA P-259, from memory; thrust NDSU-NR",
  find: (context) => {
    const { holding, plan } = context;
    if (!holding?.standing) return [];
    const { overturning: factor, waterDepthM } = holding.profile;
    const asked = holdingOf(plan).overturningFactor;
    return shortOf(context, factor, asked).map(({ stretch, where, lengthM }) => ({
      severity: "stop",
      stretch,
      sample: stretch.worst,
      message: `${where}: with ${lengthWords(waterDepthM[stretch.worst]!)} of water it resists overturning ${roundedDown(factor[stretch.worst]!)} times, where ${asked} is asked, on ${distanceWords(lengthM)}.`,
      remedy: `Widen the base or lead the line over higher ground, and keep the inner toe drained. ${ENGINEER}`,
    }));
  },
};

function shortOf(context: CheckContext, factor: Float32Array, asked: number): Told[] {
  const { line, trace, plan } = context;
  const shortAt = (i: number) => asked - SLACK - factor[i]!;
  const stretches = stretchesOf(trace, line.closed, plan.practice.stationIntervalM, shortAt);
  return toldOf(stretches, shortAt);
}

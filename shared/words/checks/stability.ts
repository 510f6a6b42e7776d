import type { NotPumped } from "../../checks/inside.ts";
import { factorWords, roundedDown } from "../../holding/factor-words.ts";
import type { GradientClass } from "../../holding/types.ts";
import type { Soil } from "../../plan.ts";
import { formatHours } from "../../units.ts";
import { pumpCountWords, pumpWords } from "../pumps.ts";
import { SOIL_NAMES } from "../soils.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

const ENGINEER = "Only a licensed engineer and the local code can accept less.";
const WATCH =
  "Watch for boils: clear water, report and watch it; carrying soil, ring it with bags and raise the ring until it runs clear. Never plug or cap a boil.";
const SEEN: Readonly<Record<GradientClass, string>> = {
  light: "light seepage at most was",
  medium: "medium seepage was",
  heavy: "heavy seepage was",
  boils: "sand boils were",
  "new-boils": "new sand boils were",
};
const NOT_PUMPED: Readonly<Record<NotPumped, string>> = {
  rain: "rain, since the area that drains to a line is not known",
  seepage: "seepage under the levee",
  joints: "leaks at joints and closures",
};

function onSoil(soil: Soil): string {
  return soil === "unknown" ? "if the soil is sand or silt" : `on ${SOIL_NAMES[soil]}`;
}

export const STABILITY_TEXT: TextOf<
  | ("sliding" | "overturning" | "exit-gradient" | "creep" | "pumps" | "pump-failure")
  | "inside-holes"
> = {
  sliding: ({ waterDepthM, factor, friction, required, lengthM }, u) => ({
    what: `with ${u.length(waterDepthM)} of water, sliding calculates at ${factorWords(factor)}, where ${required} is required, on ${u.distance(lengthM)}; friction ${friction.low} to ${friction.high} is assumed.`,
    remedy: `Widen the base, strip the sod and dig a bond trench, or lead the line over higher ground. ${ENGINEER}`,
  }),
  overturning: ({ waterDepthM, factor, required, lengthM }, u) => ({
    what: `with ${u.length(waterDepthM)} of water, overturning calculates at ${roundedDown(factor)}, where ${required} is required, on ${u.distance(lengthM)}.`,
    remedy: `Widen the base or lead the line over higher ground, and keep the landside toe drained. ${ENGINEER}`,
  }),
  "exit-gradient": ({ soil, gradient: { low, high }, seen }) => ({
    what: `${onSoil(soil)}, the gradient at the landside toe calculates at ${low.toFixed(2)} to ${high.toFixed(2)}, where ${SEEN[seen]} seen.`,
    remedy: `Widen the base or lead the line over higher ground. ${WATCH}`,
  }),
  creep: ({ soil, lane, bligh, laneRequired, blighRequired }) => {
    const ratios = `Lane ${lane.toFixed(1)}, Bligh ${bligh.toFixed(1)}`;
    if (soil === "unknown") {
      return {
        what: `The soil under the levee is not stated. The seepage path under the base is short: at worst ${ratios} times the head, where sand requires 5 to 8.5 and 12 to 18.`,
        remedy: `Give the soil in Stability, seepage, pumps. On sand or silt expect water to come up behind the levee. ${WATCH}`,
      };
    }
    const required = [
      laneRequired === null ? null : `Lane ${laneRequired}`,
      blighRequired === null ? null : `Bligh ${blighRequired}`,
    ].filter((words) => words !== null);
    return {
      what: `the seepage path under the base is ${ratios} times the head, where ${SOIL_NAMES[soil]} requires ${required.join(", ")}.`,
      remedy: `Expect water to come up behind the levee. ${WATCH}`,
    };
  },
  pumps: ({ demandM3PerS, capacityM3PerS, pump, working, spare, sumpM, notCounted }, u) => {
    const sump =
      sumpM === null ? "" : ` Put the sump at the lowest place inside, ${u.elevation(sumpM)}.`;
    return {
      what: `To be pumped: ${u.flows(demandM3PerS)}. Pumps for ${u.flowUpTo(capacityM3PerS)}: ${pumpCountWords({ working, spare })}, ${pumpWords(pump, u)}.${sump} Not counted: ${notCounted.map((each) => NOT_PUMPED[each]).join("; ")}.`,
      remedy:
        "Have them on site with fuel, hose and power of their own before the water comes; electric pumps on ground-fault protection, cords out of the wet, engine exhaust away from people. Output falls with head and hose: ask the maker.",
    };
  },
  "pump-failure": ({ excessM3PerS, hours }, u) => ({
    what: `When one pump fails in heavy rain, water gains up to ${u.flowUpTo(excessM3PerS)} and reaches a building within ${formatHours(Math.max(0.1, hours))}.`,
    remedy:
      "Connect the spare so that it starts at once, and have the pumps watched day and night.",
  }),
  "inside-holes": ({ share }) => ({
    what: `Inside the ring ${Math.round(share * 100)} % of the ground has no elevation data: the lowest place may be there, and no water is counted as stored there.`,
    remedy: "Look for the lowest place in the field before you set the sump.",
  }),
};

export const STABILITY_RULES: RulesOf<
  | ("sliding" | "overturning" | "exit-gradient" | "creep" | "pumps" | "pump-failure")
  | "inside-holes"
> = {
  sliding: rule(
    "Friction under the base is at least so many times the thrust of the water.",
    "FEMA P-259, from memory; friction from memory, weak; thrust NDSU-NR",
  ),
  overturning: rule(
    "The weight resists turning about the landside toe at least so many times.",
    "FEMA P-259, from memory; thrust NDSU-NR",
  ),
  "exit-gradient": rule(
    "The gradient at the landside toe stays at or below 0.5.",
    "NIX-11; the formula (Khosla) from memory",
  ),
  creep: rule(
    "The seepage path under the base is as long as the creep tables require.",
    "Lane and Bligh, tables from memory",
  ),
  pumps: rule(
    "Pumps carry rain inside and seepage, 1.5 times over, with a spare.",
    "LSU, PWM; the margin and the spare from memory",
  ),
  "pump-failure": rule(
    "When one pump fails there is time to start another before a building gets wet.",
    "judgement; LSU (several small pumps beat one large)",
  ),
  "inside-holes": rule(
    "The ground inside the ring is known, so that its lowest place is.",
    "judgement",
  ),
};

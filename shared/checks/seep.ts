import { holdingOf } from "../defaults.ts";
import { ACCEPTED_GRADIENT } from "../holding/exit-gradient.ts";
import type { GradientClass } from "../holding/types.ts";
import type { Plan, Soil } from "../plan.ts";
import { type Finding, ofWholePlan, type Rule } from "./rule.ts";
import { stationWords } from "./words.ts";

const CLAYS: ReadonlySet<Soil> = new Set(["soft-clay", "medium-clay", "hard-clay"]);
const SOIL_WORDS: Readonly<Record<Soil, string>> = {
  unknown: "ground that is not stated",
  "fine-silt": "very fine sand or silt",
  "fine-sand": "fine sand",
  "medium-sand": "medium sand",
  "coarse-sand": "coarse sand",
  "fine-gravel": "fine gravel",
  "coarse-gravel": "coarse gravel",
  "soft-clay": "soft clay",
  "medium-clay": "medium clay",
  "hard-clay": "hard clay",
};
const SEEN: Readonly<Record<GradientClass, string>> = {
  light: "light seepage at most",
  medium: "medium seepage",
  heavy: "heavy seepage",
  boils: "sand boils",
  "new-boils": "new sand boils",
};
const WATCH =
  "Keep sandbags at hand to ring a boil, never to stop it: raise the ring until the water runs clear. A licensed engineer can judge the ground.";

/** Gradient of the water that comes up behind the levee. */
export const exitGradientRule: Rule = {
  id: "exit-gradient",
  rule: "The gradient at the landside toe stays at or below 0.5.",
  source: "NIX-11; the formula (Khosla) from memory",
  find: ({ holding, plan }) => {
    const exit = holding?.exit;
    if (!exit || exit.gradient.high <= ACCEPTED_GRADIENT || isClay(plan)) return [];
    const { low, high } = exit.gradient;
    const seen = SEEN[exit.classes.at(-1)!];
    const sand = isUnknown(plan) ? "if the ground is sand or silt" : `on ${soilWords(plan)}`;
    return [
      {
        severity: isUnknown(plan) ? "note" : "caution",
        stretch: null,
        chainageM: exit.atM,
        sample: null,
        message: `${stationWords(exit.atM)}: ${sand}, the gradient at the landside toe comes to ${low.toFixed(2)} to ${high.toFixed(2)}, where ${seen} were seen.`,
        remedy: `Widen the base or lead the line over higher ground. ${WATCH}`,
      },
    ];
  },
};

/** Length of the path under the base against the head. */
export const creepRule: Rule = {
  id: "creep",
  rule: "The way of the water under the base is as long as the creep tables ask.",
  source: "Lane and Bligh, tables from memory",
  find: ({ holding, plan }) => {
    const creep = holding?.creep;
    if (!creep) return [];
    const ratios = `Lane ${creep.lane.toFixed(1)}, Bligh ${creep.bligh.toFixed(1)}`;
    if (creep.soil === "unknown") {
      return ofWholePlan(
        "note",
        `The ground under the levee is not stated. The way of the water under the base is short: at worst ${ratios} times the head, where sand asks for 5 to 8.5 and 12 to 18.`,
        `Give the kind of ground. On sand or silt expect water to come up behind the levee. ${WATCH}`,
      );
    }
    const lane = creep.laneAsked !== null && creep.lane < creep.laneAsked;
    const bligh = creep.blighAsked !== null && creep.bligh < creep.blighAsked;
    if (!lane && !bligh) return [];
    const asked = [
      creep.laneAsked === null ? null : `Lane ${creep.laneAsked}`,
      creep.blighAsked === null ? null : `Bligh ${creep.blighAsked}`,
    ].filter((words) => words !== null);
    const finding: Finding = {
      severity: "caution",
      stretch: null,
      chainageM: creep.atM,
      sample: null,
      message: `${stationWords(creep.atM)}: the way of the water under the base is ${ratios} times the head, where ${soilWords(plan)} asks for ${asked.join(", ")}.`,
      remedy: `Expect water to come up behind the levee. ${WATCH}`,
    };
    return [finding];
  },
};

function isUnknown(plan: Plan): boolean {
  return holdingOf(plan).soil === "unknown";
}

function isClay(plan: Plan): boolean {
  return CLAYS.has(holdingOf(plan).soil);
}

function soilWords(plan: Plan): string {
  return SOIL_WORDS[holdingOf(plan).soil];
}

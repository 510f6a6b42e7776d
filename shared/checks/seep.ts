import { holdingOf } from "../defaults.ts";
import { ACCEPTED_GRADIENT } from "../holding/exit-gradient.ts";
import type { GradientClass, Spread } from "../holding/types.ts";
import type { Soil } from "../plan.ts";
import { type Finding, ofWholePlan, type Rule } from "./rule.ts";
import { atStation } from "./where.ts";

const CLAYS: ReadonlySet<Soil> = new Set(["soft-clay", "medium-clay", "hard-clay"]);

export type SeepFinding =
  | {
      readonly kind: "exit-gradient";
      readonly soil: Soil;
      readonly gradient: Spread;
      /** What was seen at the higher gradient. */
      readonly seen: GradientClass;
    }
  | {
      /** Length of the seepage path over the head, by Lane and by Bligh, and what the soil requires. */
      readonly kind: "creep";
      readonly soil: Soil;
      readonly lane: number;
      readonly bligh: number;
      readonly laneRequired: number | null;
      readonly blighRequired: number | null;
    };

/** Gradient of the water that comes up behind the levee. */
export const exitGradientRule: Rule = {
  id: "exit-gradient",
  find: ({ holding, plan }) => {
    const exit = holding?.exit;
    const { soil } = holdingOf(plan);
    if (!exit || exit.gradient.high <= ACCEPTED_GRADIENT || CLAYS.has(soil)) return [];
    const { gradient, classes, atM } = exit;
    const finding = { kind: "exit-gradient", soil, gradient, seen: classes.at(-1)! } as const;
    return [ofPlace(soil === "unknown" ? "note" : "caution", atM, finding)];
  },
};

/** Length of the path under the base against the head. */
export const creepRule: Rule = {
  id: "creep",
  find: ({ holding }) => {
    const creep = holding?.creep;
    if (!creep) return [];
    const { soil, lane, bligh, laneRequired, blighRequired, atM } = creep;
    const finding = { kind: "creep", soil, lane, bligh, laneRequired, blighRequired } as const;
    if (soil === "unknown") return ofWholePlan("note", finding);
    const isShort =
      (laneRequired !== null && lane < laneRequired) ||
      (blighRequired !== null && bligh < blighRequired);
    return isShort ? [ofPlace("caution", atM, finding)] : [];
  },
};

function ofPlace(severity: Finding["severity"], atM: number, finding: SeepFinding): Finding {
  return {
    ...{ severity, finding },
    ...{ where: atStation(atM), stretch: null, chainageM: atM, sample: null },
  };
}

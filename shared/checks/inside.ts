import { holdingOf } from "../defaults.ts";
import type { PumpKind, Spread } from "../holding/types.ts";
import { ofWholePlan, type Rule } from "./rule.ts";

/** A pump that fails must leave this long to start another. Source: judgement. */
const HOURS_TO_ACT = 2;
const HOLES_WORTH_LISTING = 0.01;

/** What water is not in the pumps' figure. */
export type NotPumped = "rain" | "seepage" | "joints";

/** Flows in m3/s. */
export type InsideFinding =
  | {
      readonly kind: "pumps";
      readonly demandM3PerS: Spread;
      readonly capacityM3PerS: number;
      readonly pump: PumpKind;
      readonly working: number;
      readonly spare: number;
      /** Elevation of the lowest place inside, metres; null where it is not known. */
      readonly sumpM: number | null;
      readonly notCounted: readonly NotPumped[];
    }
  | { readonly kind: "pump-failure"; readonly excessM3PerS: number; readonly hours: number }
  | { readonly kind: "inside-holes"; readonly share: number };

/** What has to be pumped, and with what. */
export const pumps: Rule = {
  id: "pumps",
  find: ({ holding, plan, levelDoubt }) => {
    if (!holding?.pumping.proposed || levelDoubt?.countsUnknown) return [];
    const { demandM3PerS, capacityM3PerS, proposed, rainM3PerS } = holding.pumping;
    const { working, spare } = proposed;
    const low = holding.inside;
    const notCounted: readonly NotPumped[] = [
      ...(rainM3PerS ? [] : (["rain"] as const)),
      ...(holdingOf(plan).underDepthM > 0 ? [] : (["seepage"] as const)),
      "joints",
    ];
    const [found] = ofWholePlan("note", {
      kind: "pumps",
      ...{ demandM3PerS, capacityM3PerS, working, spare, notCounted },
      pump: proposed.kind,
      sumpM: low?.lowestM ?? null,
    });
    return [{ ...found!, ...(low ? { at: low.lowestAt } : {}) }];
  },
};

/** What happens inside when a pump fails. */
export const pumpFailure: Rule = {
  id: "pump-failure",
  find: ({ holding }) => {
    const oneFails = holding?.pumping.oneFails;
    if (!oneFails || oneFails.hoursToStructure === null) return [];
    if (oneFails.hoursToStructure >= HOURS_TO_ACT) return [];
    const { excessM3PerS, hoursToStructure: hours } = oneFails;
    return ofWholePlan("caution", { kind: "pump-failure", excessM3PerS, hours });
  },
};

/** Ground inside that is not known. */
export const insideHoles: Rule = {
  id: "inside-holes",
  find: ({ holding }) => {
    const inside = holding?.inside;
    if (!inside || inside.holeShare < HOLES_WORTH_LISTING) return [];
    return ofWholePlan("caution", { kind: "inside-holes", share: inside.holeShare });
  },
};

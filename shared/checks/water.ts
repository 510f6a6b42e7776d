import { FOOT_M } from "../constants.ts";
import { flowDirection } from "../stage.ts";
import { ofWholePlan, type Rule } from "./rule.ts";

/** Least freeboard that is published. Source: NDSU-11, IS-280. */
export const LEAST_FREEBOARD_M = FOOT_M;

/** Metres. */
export type WaterFinding =
  | { readonly kind: "datum"; readonly of: "gauge-zero" | "water-elevation" }
  | { readonly kind: "fall-direction" }
  | { readonly kind: "freeboard"; readonly freeboardM: number; readonly leastM: number };

/** Whether water and ground are heights over the same zero. */
export const datum: Rule = {
  id: "datum",
  find: ({ plan: { water } }) => {
    const stated =
      water.datumNote.trim() !== "" || (water.by === "stage" && water.datumOffsetM !== null);
    const of = water.by === "stage" ? "gauge-zero" : "water-elevation";
    return stated ? [] : ofWholePlan("caution", { kind: "datum", of });
  },
};

/** Fall of the river without its direction. */
export const fallDirection: Rule = {
  id: "fall-direction",
  find: ({ plan, plane }) =>
    plan.water.fallPerM > 0 && flowDirection(plan.flow, plane) === null
      ? ofWholePlan("stop", { kind: "fall-direction" })
      : [],
};

/** Freeboard against the published least. */
export const leastFreeboard: Rule = {
  id: "freeboard",
  find: ({ plan: { water } }) => {
    const { freeboardM } = water;
    if (!(freeboardM < LEAST_FREEBOARD_M - 1e-9)) return [];
    return ofWholePlan("caution", { kind: "freeboard", freeboardM, leastM: LEAST_FREEBOARD_M });
  },
};

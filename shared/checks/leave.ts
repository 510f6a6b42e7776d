import { leaveElevationM } from "../leave.ts";
import { waterElevationAtGauge } from "../stage.ts";
import { ofWholePlan, type Rule } from "./rule.ts";

/** Metres. */
export type LeaveFinding =
  | { readonly kind: "leave-not-set" }
  | { readonly kind: "leave-above-sized"; readonly aboveM: number };

/** When people leave: set, and no later than the water that the line is sized for. */
export const leave: Rule = {
  id: "leave",
  find: ({ plan: { leave: set, water } }) => {
    if (!set) return ofWholePlan("caution", { kind: "leave-not-set" });
    const levelM = leaveElevationM(set, water);
    const aboveM = levelM === null ? 0 : levelM - waterElevationAtGauge(water);
    return aboveM > 0.005 ? ofWholePlan("caution", { kind: "leave-above-sized", aboveM }) : [];
  },
};

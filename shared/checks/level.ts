import type { LevelDoubt } from "../level-doubt.ts";
import { ofWholePlan, type Rule } from "./rule.ts";

export interface LevelFinding {
  readonly kind: "water-level";
  readonly doubt: LevelDoubt;
}

/** Water and ground that do not belong together. */
export const waterLevel: Rule = {
  id: "water-level",
  find: ({ levelDoubt: doubt }) =>
    doubt
      ? ofWholePlan(doubt.countsUnknown ? "stop" : "caution", { kind: "water-level", doubt })
      : [],
};

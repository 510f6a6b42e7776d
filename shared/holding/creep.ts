import type { Soil } from "../plan.ts";

/** Least ratio of creep line to head. Null where the table says nothing. */
export interface CreepRatios {
  readonly lane: number | null;
  readonly bligh: number | null;
}

/** Lane's and Bligh's tables. Source: from memory. */
export const CREEP_TABLE: Readonly<Record<Exclude<Soil, "unknown">, CreepRatios>> = {
  "fine-silt": { lane: 8.5, bligh: 18 },
  "fine-sand": { lane: 7, bligh: 15 },
  "medium-sand": { lane: 6, bligh: null },
  "coarse-sand": { lane: 5, bligh: 12 },
  "fine-gravel": { lane: 4, bligh: 9 },
  "coarse-gravel": { lane: 3, bligh: null },
  "soft-clay": { lane: 3, bligh: null },
  "medium-clay": { lane: 2, bligh: null },
  "hard-clay": { lane: 1.8, bligh: null },
};

/**
 * Lane's weighted creep ratio: (horizontal / 3 + vertical) / head, where the path goes down and up the trench.
 * Source: the rule and its third are published (lecture on L = C H); the table is from memory.
 */
export function laneRatio(headM: number, baseM: number, trenchM: number): number {
  return (baseM / 3 + 2 * trenchM) / headM;
}

/** Bligh's creep ratio: (horizontal + vertical) / head. Source: as Lane's. */
export function blighRatio(headM: number, baseM: number, trenchM: number): number {
  return (baseM + 2 * trenchM) / headM;
}

import { US_GALLON_M3 } from "../constants.ts";
import type { PumpKind, PumpOption } from "./types.ts";

/** One US gallon a minute, m3/s. */
const GPM_M3_PER_S = US_GALLON_M3 / 60;

interface PumpClass {
  readonly kind: PumpKind;
  readonly lowM3PerS: number;
  readonly highM3PerS: number;
}

/**
 * Pumps as they are sold, with their range of capacity. Output falls with head and with the length of hose.
 * Source: PWM; the smallest sump pump from a county plumbing rule (Prince George's County).
 */
export const PUMP_CLASSES: readonly PumpClass[] = [
  { kind: "sump", lowM3PerS: 15 * GPM_M3_PER_S, highM3PerS: 15 * GPM_M3_PER_S },
  {
    kind: "diaphragm",
    lowM3PerS: 50 * GPM_M3_PER_S,
    highM3PerS: 90 * GPM_M3_PER_S,
  },
  {
    kind: "centrifugal",
    lowM3PerS: 142 * GPM_M3_PER_S,
    highM3PerS: 500 * GPM_M3_PER_S,
  },
  {
    kind: "trash",
    lowM3PerS: 200 * GPM_M3_PER_S,
    highM3PerS: 1600 * GPM_M3_PER_S,
  },
];

/** More pumps of one kind than this are too many to watch. Source: judgement. */
const MOST_WORKING = 4;
/** Fewer than this leave nothing running when one fails. Source: LSU (several small beat one large). */
const LEAST_WORKING = 2;

/**
 * Every class of pump that could carry a flow, counted at the lower end of its class, with spares.
 * Source: PWM; at least two at work: LSU; the spare is from memory.
 */
export function pumpOptions(capacityM3PerS: number, spare: number): PumpOption[] {
  if (!(capacityM3PerS > 0)) return [];
  return PUMP_CLASSES.map(({ kind, lowM3PerS }) => ({
    kind,
    eachM3PerS: lowM3PerS,
    working: Math.max(LEAST_WORKING, Math.ceil(capacityM3PerS / lowM3PerS - 1e-9)),
    spare,
  }));
}

/** The smallest pumps of which four are enough; the largest where even four of those are not. */
export function proposedPumps(options: readonly PumpOption[]): PumpOption | null {
  return options.find(({ working }) => working <= MOST_WORKING) ?? options.at(-1) ?? null;
}

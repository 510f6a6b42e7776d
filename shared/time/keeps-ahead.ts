import { HOUR_S } from "../constants.ts";
import { type Hydrograph, highestBetween } from "./hydrograph.ts";
import type { Schedule } from "./schedule.ts";
import type { LiftedStretch } from "./stretches.ts";

export interface AheadInputs {
  readonly stretches: readonly LiftedStretch[];
  readonly schedule: Schedule;
  readonly hydrograph: Hydrograph;
  /** Start of work, seconds since 1970. */
  readonly startS: number;
  /** Water at the gauge that the line is sized for, metres. */
  readonly designM: number;
  /** Crest required above the water while it is built, metres; the finished crest is always enough. */
  readonly marginM: number;
}

export interface AheadResult {
  /** Least of what the crests have beyond what is required, metres; below 0 the line is behind. */
  readonly leastSpareM: number;
  readonly behindFromH: number | null;
  /** Stretch with the least spare; null when none is behind. */
  readonly behindStretch: number | null;
  /** Least height of each stretch's crest above the water, metres; NaN when nothing is forecast. */
  readonly leastAheadM: readonly number[];
  /** Least of what each stretch has beyond what is required, metres; Infinity when nothing is forecast. */
  readonly stretchSpareM: readonly number[];
}

const SLACK_M = 1e-6;

/**
 * Compares every stretch's crest with the highest forecast water of each time between two of its lifts,
 * from the start of work to the forecast's end. A stretch stands as high as its last finished lift, before
 * that as high as its lowest ground, or what stands there already; nothing is required while that is dry. Nothing is said of a stretch on
 * HOLD. A river over the finished crest is not a matter of time.
 */
export function keepsAhead(inputs: AheadInputs): AheadResult {
  const { stretches, schedule, marginM } = inputs;
  let leastSpareM = Number.POSITIVE_INFINITY;
  let behindFromH: number | null = null;
  let behindStretch: number | null = null;
  const stretchSpareM = stretches.map(() => Number.POSITIVE_INFINITY);
  const leastAheadM = stretches.map((stretch, index) => {
    let leastM = Number.NaN;
    if (stretch.isOnHold) return leastM;
    for (const [standsM, fromH, toH] of standing(stretch, schedule, index)) {
      const highest = highestOver(inputs, fromH, toH);
      if (Number.isNaN(highest.aboveDesignM)) continue;
      const aheadM = standsM - highest.aboveDesignM;
      const spareM = spareOf(stretch, standsM, highest.aboveDesignM, marginM);
      if (!(leastM <= aheadM)) leastM = aheadM;
      stretchSpareM[index] = Math.min(stretchSpareM[index]!, spareM);
      if (spareM < leastSpareM) {
        leastSpareM = spareM;
        if (spareM < -SLACK_M) behindStretch = index;
      }
      if (spareM < -SLACK_M) {
        const sinceH = firstBehind(
          inputs,
          Math.max(stretch.lowestM, standsM - marginM),
          fromH,
          highest.atH,
        );
        behindFromH = Math.min(behindFromH ?? sinceH, sinceH);
      }
    }
    return leastM;
  });
  return { leastSpareM, behindFromH, behindStretch, leastAheadM, stretchSpareM };
}

/** What a crest has beyond what is required; while its ground is dry, how far the water is from it. */
function spareOf(
  { lowestM, crestM }: LiftedStretch,
  standsM: number,
  waterM: number,
  marginM: number,
): number {
  if (waterM <= lowestM + SLACK_M) return lowestM - waterM;
  return standsM - Math.min(crestM, waterM + marginM);
}

/** What a stretch stands at, from when to when, hours from the start. */
function standing(
  { lowestM, standsM: alreadyM = lowestM }: LiftedStretch,
  schedule: Schedule,
  index: number,
): [standsM: number, fromH: number, toH: number][] {
  const found: [number, number, number][] = [];
  let standsM = alreadyM;
  let fromH = 0;
  for (const lift of schedule.byStretch[index]!) {
    found.push([standsM, fromH, lift.finishH]);
    standsM = lift.topM;
    fromH = lift.finishH;
  }
  found.push([standsM, fromH, Number.POSITIVE_INFINITY]);
  return found;
}

function highestOver({ hydrograph, startS, designM }: AheadInputs, fromH: number, toH: number) {
  const from = startS + fromH * HOUR_S;
  const { levelM, atS } = highestBetween(hydrograph, from, startS + toH * HOUR_S);
  return { aboveDesignM: levelM - designM, atH: (atS - startS) / HOUR_S };
}

/** First hour between two at which the water passes a level, to a tenth of an hour. */
function firstBehind(inputs: AheadInputs, levelM: number, fromH: number, atH: number): number {
  let low = fromH;
  let high = atH;
  while (high - low > 0.1) {
    const middle = (low + high) / 2;
    if (highestOver(inputs, fromH, middle).aboveDesignM > levelM + SLACK_M) high = middle;
    else low = middle;
  }
  return highestOver(inputs, fromH, fromH).aboveDesignM > levelM + SLACK_M ? fromH : high;
}

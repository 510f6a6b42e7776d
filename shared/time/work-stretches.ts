import type { LineSamples } from "../line-samples.ts";
import type { Part } from "./divider.ts";
import { isApart } from "./even-stretches.ts";
import type { AheadResult } from "./keeps-ahead.ts";
import type { Schedule } from "./schedule.ts";
import type { LiftedStretch } from "./stretches.ts";
import type { WorkStretch } from "./types.ts";

export interface WorkStretchInputs {
  readonly samples: LineSamples;
  readonly stretches: readonly LiftedStretch[];
  readonly parts: readonly Part[];
  /** Null while the crew is not known. */
  readonly slow: Schedule | null;
  readonly wetH: Float32Array;
  /** Null without a forecast. */
  readonly ahead: AheadResult | null;
}

/** Where along the line which steps are laid, in order of chainage; neighbors with the same steps are one. */
export function workStretches(inputs: WorkStretchInputs): WorkStretch[] {
  const { stretches } = inputs;
  const found: WorkStretch[] = [];
  for (const [index, stretch] of stretches.entries()) {
    const here = stretchAt(inputs, index);
    const before = found.at(-1);
    const joins =
      before &&
      !isApart(stretches[index - 1]!, stretch) &&
      before.crew === here.crew &&
      before.steps.join() === here.steps.join();
    if (joins) found.splice(-1, 1, joined(before, here));
    else found.push(here);
  }
  return found;
}

function stretchAt(
  { samples, stretches, parts, slow, wetH, ahead }: WorkStretchInputs,
  index: number,
): WorkStretch {
  const { fromM, toM, lowestM, crestM, lowestSample, lifts, isOnHold } = stretches[index]!;
  const crew = parts.findIndex((part) => part.stretches.includes(index));
  const done = slow?.byStretch[index] ?? [];
  const waterM = samples.waterM[lowestSample]!;
  const steps = parts[crew]?.steps ?? [];
  return {
    ...{ fromM, toM, isOnHold, crew: crew + 1 },
    steps: steps.flatMap((step, k) => (step.stretches.includes(index) ? [k + 1] : [])),
    lowestM: waterM + lowestM,
    crestM: waterM + crestM,
    bags: lifts.reduce((sum, { bags }) => sum + bags, 0),
    startH: finite(done[0]?.startH),
    finishH: finite(done.at(-1)?.finishH),
    wetH: finite(wetH[lowestSample]),
    leastAheadM: isOnHold ? null : finite(ahead?.leastAheadM[index]),
    leastSpareM: isOnHold ? null : finite(ahead?.stretchSpareM[index]),
  };
}

function joined(before: WorkStretch, after: WorkStretch): WorkStretch {
  const lower = before.lowestM <= after.lowestM ? before : after;
  return {
    ...before,
    toM: after.toM,
    bags: before.bags + after.bags,
    ...{ lowestM: lower.lowestM, crestM: lower.crestM },
    startH: least(before.startH, after.startH),
    finishH:
      before.finishH === null ? null : after.finishH && Math.max(before.finishH, after.finishH),
    wetH: least(before.wetH, after.wetH),
    leastAheadM: least(before.leastAheadM, after.leastAheadM),
    leastSpareM: least(before.leastSpareM, after.leastSpareM),
  };
}

/** The lesser; what is null is later than any. */
function least(a: number | null, b: number | null): number | null {
  if (a === null || b === null) return a ?? b;
  return Math.min(a, b);
}

/** A number that is one; null otherwise. */
export function finite(value = Number.NaN): number | null {
  return Number.isFinite(value) ? value : null;
}

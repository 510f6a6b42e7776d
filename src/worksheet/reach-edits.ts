import type { Failure, Outcome } from "../../shared/failure.ts";
import type { Alignment } from "../../shared/plan.ts";
import { apply } from "../document/store.ts";
import { edit, withAlternativeChanged } from "./alternative-edits.ts";

/** Closest two breaks may stand, metres. */
const CLOSEST_M = 0.5;

/** The breaks with one more, in order; refused outside the line or on another break. */
export function breaksWith(
  breaksM: readonly number[],
  atM: number,
  lengthM: number,
): Outcome<readonly number[]> {
  if (!(atM > CLOSEST_M && atM < lengthM - CLOSEST_M)) {
    return refused(
      "reach/outside",
      "Expected a station inside the line, away from its ends.",
      "Type a station between the first and the last.",
    );
  }
  if (breaksM.some((each) => Math.abs(each - atM) < CLOSEST_M)) {
    return refused(
      "reach/taken",
      "A reach already ends at that station.",
      "Choose a station at least half a metre away.",
    );
  }
  return { ok: true, value: [...breaksM, atM].sort((a, b) => a - b) };
}

export function addBreak(alternative: Alignment, atM: number, lengthM: number): Outcome<void> {
  const next = breaksWith(alternative.reachBreaksM, atM, lengthM);
  if (!next.ok) return next;
  return apply({
    note: `Divide ${alternative.name} into reaches`,
    change: (plan) =>
      withAlternativeChanged(plan, alternative.id, (now) => ({ ...now, reachBreaksM: next.value })),
  });
}

export function removeBreak(alternative: Alignment, atM: number): void {
  edit({
    note: `Join two reaches of ${alternative.name}`,
    change: (plan) =>
      withAlternativeChanged(plan, alternative.id, (now) => ({
        ...now,
        reachBreaksM: now.reachBreaksM.filter((each) => each !== atM),
      })),
  });
}

function refused(code: string, message: string, remedy: string): { ok: false; failure: Failure } {
  return { ok: false, failure: { code, message, remedy } };
}

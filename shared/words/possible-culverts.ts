import type { CulvertCandidate, FoundCandidates } from "../pipes/candidates.ts";
import type { PossibleCulvert } from "../plan.ts";
import { formatCount, type UnitSystem } from "../units.ts";
import { unitsOf } from "./units.ts";

/** What is asked of a place where there may be a culvert, and what can be answered. */
export const CULVERT_QUESTION = {
  title: "Is there a culvert here?",
  answers: [
    { value: "yes", words: "Yes" },
    { value: "no", words: "No" },
    { value: "look", words: "Look in the field" },
  ],
  notCounted: "Until someone answers, no pipe is counted there.",
  show: "Show on map",
  again: "Ask again",
} as const;

/** `A low place 1.9 ft deep, a bank 11.0 ft high, and behind it, 76 ft away, a channel 0.4 ft lower.` */
export function candidateWords(
  { sagDepthM, bankM, leadsTo, fallM, lengthM }: CulvertCandidate,
  system: UnitSystem,
): string {
  const u = unitsOf(system);
  return `A low place ${u.length(sagDepthM)} deep, a bank ${u.length(bankM)} high, and behind it, ${u.distance(lengthM)} away, ${leadsTo === "channel" ? "a channel" : "open ground"} ${levelWords(u.length(fallM), fallM)}.`;
}

function levelWords(fall: string, fallM: number): string {
  return fallM < 0.05 ? "at the same level" : `${fall} lower`;
}

/** Why there are none, or not all; null where all there are are shown. */
export function candidatesNote({ found, leftOff, looked }: FoundCandidates): string | null {
  if (!looked) {
    return "No places to look at are suggested here: the elevation data is too coarse to show a bank, or there is too much of it around the plan.";
  }
  if (leftOff === 0) return null;
  return `The nearest ${formatCount(found.length)} are shown; ${formatCount(leftOff)} more come when these are answered.`;
}

/** `Answered: no culvert.` */
export function answerWords({ answer }: Pick<PossibleCulvert, "answer">): string {
  return answer === "no" ? "Answered: no culvert." : "To look at in the field. No pipe is counted.";
}

/** What to do in the field at a place that is still to be looked at. */
export function fieldLookWords(name: string): {
  readonly name: string;
  readonly look: string;
} {
  return {
    name: `"${name}"`,
    look: "Is there a pipe through the bank? Look at both ends. If there is: measure its inside and both inverts, and report it at once.",
  };
}

import { mustFixCount } from "../completeness.ts";
import type { LeaveLevel, Plan } from "../plan.ts";
import type { Check, SizedLine } from "../sizing-types.ts";
import type { UnitSystem } from "../units.ts";
import type { TracedAlternative } from "../water-types.ts";
import { overtopsButForGap } from "./ground-gap.ts";
import { leaveLevelWords } from "./leave.ts";
import { NOT_TRACED } from "./line-state.ts";

/** The leave level with its day in full: `Leave at the stage or at the hour, whichever comes first: ...`. */
export function leaveInFullWords(leave: LeaveLevel, system: UnitSystem): string {
  const level = leaveLevelWords(leave, system, true);
  const both = leave.levelM !== null && leave.at !== null;
  return both ? `Leave at the first of the two: ${level}.` : `Leave at ${level}, or sooner.`;
}

export const LEAVE_NOT_SET_ASK =
  "Nobody has set when people leave. Do not start work: get it from the plan lead.";

export const WHAT_SETS_LEAVE =
  "It is set by the exit road and the time people need to get out, never by the level the levee overtops at.";

/** Above which level a line overtops, as a sentence; what is not known of it. */
export function overtopsSentence(
  traced: TracedAlternative | null,
  line: SizedLine,
  plan: Plan,
  checks: readonly Check[],
  system: UnitSystem,
): string {
  if (!traced) return NOT_TRACED;
  return `This line ${overtopsButForGap(traced, line, plan, system, mustFixCount(checks))}. Freeboard is not protection.`;
}

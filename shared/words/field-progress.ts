import type { BuildState, ProgressMark } from "../plan.ts";
import type { UnitSystem } from "../units.ts";
import { stationsWords } from "./crew-parts.ts";

const STATES: Readonly<Record<BuildState, string>> = {
  "not-begun": "Not begun",
  begun: "Begun",
  "to-height": "Up to height",
  "poly-on": "Poly on",
  checked: "Checked",
};

/** `Up to height`. */
export function buildStateWords(state: BuildState): string {
  return STATES[state];
}

/** `4+50 to 4+75: up to height`, as a step of undo. */
export function markedNote(mark: ProgressMark, system: UnitSystem): string {
  return `${stationsWords(mark, system)}: ${buildStateWords(mark.state).toLowerCase()}`;
}

/** Names the step by which another phone's marks came in. */
export function addedMarksNote(count: number): string {
  return `Add ${count === 1 ? "1 mark" : `${count} marks`} of what is built`;
}

export const WHO_CLEARED = "Who cleared the Must fix?";
export const CLEAR_FIRST =
  "Do not mark this stretch before the plan lead or an engineer cleared it: type who.";
export const YOUR_NAME = "Your name, so that others know who marked it";
/** A mark by the heights of another plan. */
export const OLD_MARK = "Begun, by another plan";
/** The mark of a stretch that is up to height, in one word. */
export const DONE = "Done";

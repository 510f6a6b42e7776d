import { effect, signal } from "@preact/signals";
import { asFailure } from "../../../shared/failure.ts";
import type { Alignment, LonLat, Plan } from "../../../shared/plan.ts";
import type { FindRingResponse, FoundLine } from "../../../shared/search-types.ts";
import { withAlternativeChanged } from "../../document/edits/alternatives.ts";
import { tell } from "../../document/notices.ts";
import { followUp, history, plan } from "../../document/store.ts";
import { engine } from "../../engine.ts";
import { sameParts } from "../parts.ts";
import { asFound, found, foundForOf, inputsOf, rememberFound } from "./found.ts";
import { planToSearch } from "./plan-to-search.ts";

/** A step of a drag is searched for no longer than this, milliseconds; the line may then be a little dearer. */
const STEP_CAP_MS = 150;
/** Rest after the last step before the line is searched for thoroughly, milliseconds. */
const SETTLE_MS = 300;

/** True while the found line is to follow the stage and everything else that it was found for. */
export const following = signal(false);
/** True while a followed line is being searched for again. */
export const catchingUp = signal(false);

let inFlight = false;
let wake = () => {};
/** Corners that a search gave which was cut short. */
const rough = new WeakSet<readonly LonLat[]>();

/**
 * While {@link following}, searches again for the found line whenever the plan asks another question: one
 * search at a time, the newest plan next, quick ones while the plan keeps changing and a thorough one once it
 * rests. What comes out becomes part of the step that asked for it, so that undo takes both back. Ends by
 * itself when the line is gone, is edited by hand, or cannot be found.
 */
export function keepFollowing(): () => void {
  return effect(() => {
    plan.value;
    wake();
    if (following.value && !inFlight) void keepUp();
  });
}

async function keepUp(): Promise<void> {
  inFlight = true;
  while (following.peek()) {
    const line = followed();
    const known = line && foundForOf(line);
    if (!known) break;
    const isCurrent = sameParts(known, inputsOf(plan.peek()));
    if (isCurrent && !rough.has(line.corners)) break;
    if (isCurrent) await rest();
    const stillCurrent = sameParts(known, inputsOf(plan.peek()));
    if (!(await step(line, isCurrent && stillCurrent ? undefined : STEP_CAP_MS))) break;
  }
  inFlight = false;
  catchingUp.value = false;
  if (!followed()) following.value = false;
}

/** The followed alternative as it was found; null when it is gone or was edited by hand. */
function followed(): Alignment | null {
  const id = found.peek()?.ids[0];
  const line = plan.peek().alignments.find((each) => each.id === id);
  return line && foundForOf(line) ? line : null;
}

function rest(): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, SETTLE_MS);
    wake = () => {
      clearTimeout(timer);
      resolve();
    };
  });
}

/** @returns false when nothing can follow any more */
async function step({ id, corners }: Alignment, timeCapMs: number | undefined): Promise<boolean> {
  const of = plan.peek();
  const inputs = inputsOf(of);
  const before = history.peek().done.at(-1)?.before;
  const answer = before ? await searched(of, timeCapMs) : null;
  const line = answer?.lines[0];
  if (!before || !answer || !line) return false;
  const isThorough = timeCapMs === undefined;
  if (isThorough) rough.delete(corners);
  if (isThorough && isNoBetter(line, of)) return true;
  rememberFound(line.corners, inputs);
  if (answer.cutShort && !isThorough) rough.add(line.corners);
  const outcome = followUp(before, (now) =>
    withAlternativeChanged(now, id, (each) => asFound(each, line)),
  );
  const last = found.peek();
  if (outcome.ok && outcome.value && last) {
    const { cutShort, notes } = answer;
    const lines = [line];
    const result = { inputs, lines, cutShort, notes, before: null, further: null };
    found.value = { ...last, ...result, proofSought: false };
  }
  return outcome.ok;
}

/** Whether a line is no better than the one that is there, found in haste for the same question. */
function isNoBetter(line: FoundLine, of: Plan): boolean {
  const last = found.peek();
  const now = last?.lines[0];
  if (!last || !now || !sameParts(last.inputs, inputsOf(of))) return false;
  found.value = { ...last, cutShort: false };
  return line.kind === now.kind && line.totals.bags >= now.totals.bags;
}

/** Null, said in a notice, when there is no such line any more. */
async function searched(of: Plan, timeCapMs?: number): Promise<FindRingResponse | null> {
  catchingUp.value = true;
  const request = {
    plan: planToSearch(of),
    ...found.peek()!.ringOptions,
    together: true,
    timeCapMs,
  };
  try {
    return await engine.findRing(request);
  } catch (thrown) {
    if (timeCapMs !== undefined) return searched(of);
    following.value = false;
    tell("error", asFailure(thrown));
    return null;
  }
}

import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { Refusal } from "../../../shared/failure.ts";
import type { CallOptions } from "../../../shared/messages.ts";
import type { Plan } from "../../../shared/plan.ts";
import type {
  FindRingRequest,
  FindRingResponse,
  RingOptions,
} from "../../../shared/search-types.ts";
import { isWaterGiven } from "../../../shared/stage.ts";
import { plan } from "../../document/store.ts";
import { engine } from "../../engine.ts";
import { isPicking } from "../footprints.ts";
import { ground } from "../ground.ts";
import { unitSystem } from "../screen.ts";
import { found, inputsOf, isOutdated } from "./found.ts";
import { planToSearch } from "./plan-to-search.ts";
import { putFound, putPolished } from "./put-found.ts";
import { reachesM, ringOptionsOf, ringSettings } from "./ring-settings.ts";
import { working } from "./working.ts";

/** The first answer is worked at no longer than this, milliseconds; it is polished afterwards. */
const FIRST_CAP_MS = 250;

/** True while it is being looked into how good a found line is and what a bigger cordon would save. */
export const lookingFurther = signal(false);

/** Whether there is ground, water and a building to search around. */
export const canFind: ReadonlySignal<boolean> = computed(
  () => ground.value !== null && isWaterGiven(plan.value.water) && plan.value.structures.length > 0,
);

/** Finds the line that needs the fewest bags, puts it into the plan and then looks further. */
export async function findRing(): Promise<void> {
  const of = plan.peek();
  const ringOptions = ringOptionsOf(ringSettings.peek(), of, unitSystem.peek());
  const answer = await working((options) => firstAnswer(of, ringOptions, options));
  if (!answer || !putFound(answer, ringOptions, inputsOf(of))) return;
  isPicking.value = false;
  await lookFurther();
}

/**
 * The soonest answer: one ring round everything, in haste. Where there is none in haste it is looked for
 * thoroughly, and where there is none at all, several rings are.
 */
async function firstAnswer(
  of: Plan,
  ringOptions: RingOptions,
  options: CallOptions,
): Promise<FindRingResponse> {
  const several = (ringOptions.structureIds ?? []).length > 1;
  const ways: readonly Partial<FindRingRequest>[] = [
    { together: true, timeCapMs: FIRST_CAP_MS },
    ...(several ? [{ together: true }] : []),
  ];
  for (const way of ways) {
    const answer = await engine
      .findRing({ plan: planToSearch(of), ...ringOptions, ...way }, options)
      .catch(unlessNoRing);
    if (answer) return answer;
  }
  return engine.findRing({ plan: planToSearch(of), ...ringOptions }, options);
}

/** @throws what was thrown, unless it says that there is no ring */
function unlessNoRing(thrown: unknown): null {
  if (thrown instanceof Refusal && thrown.code.startsWith("site/")) return null;
  throw thrown;
}

/**
 * How good the found line is, whether separate rings or a longer search do better, and what bigger cordons
 * would save. A better line of the same kind takes the place of the first within the same step, as long as
 * nothing else was done since. Ends when the plan asks another question.
 */
export async function lookFurther(): Promise<void> {
  const last = found.peek();
  const further = await looked({ judge: "estimate", reachesM: reachesM(unitSystem.peek()) });
  const same = found.peek();
  if (!last || !further || same?.lines !== last.lines) return;
  const polished = putPolished(same, further.lines);
  found.value = { ...same, lines: polished ? further.lines : same.lines, further };
}

/** Looks for a proof of how good the found line is; where none can be had the estimate stands. */
export async function lookForProof(): Promise<void> {
  const last = found.peek();
  const answer = await looked({ judge: "proof", together: true });
  const same = found.peek();
  if (!last?.further || !answer || same?.lines !== last.lines) return;
  const howGood = answer.lines[0]?.howGood ?? null;
  const lines = last.further.lines.map((line) => ({ ...line, howGood }));
  found.value = { ...same, further: { ...last.further, lines }, proofSought: true };
}

async function looked(ask: Partial<FindRingRequest>): Promise<FindRingResponse | null> {
  const last = found.peek();
  if (!last || isOutdated.peek()) return null;
  lookingFurther.value = true;
  const request = { plan: planToSearch(plan.peek()), ...last.ringOptions, ...ask };
  const answer = await working((options) => engine.findRing(request, options), isOutdated);
  lookingFurther.value = false;
  return answer;
}

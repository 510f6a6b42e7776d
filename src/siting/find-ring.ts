import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { Refusal } from "../../shared/failure.ts";
import type { CallOptions } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SiteRingResponse, SitingWish } from "../../shared/siting-types.ts";
import { plan } from "../document/store.ts";
import { engine } from "../engine.ts";
import { ground, unitSystem } from "../state.ts";
import { found, inputsOf } from "./found.ts";
import { putFound } from "./put-found.ts";
import { askedOf, findWish, reachesM } from "./wish.ts";
import { working } from "./working.ts";

/** True while it is being looked into how good a found line is and what a bigger cordon would save. */
export const lookingFurther = signal(false);

/** Whether there is ground and a structure to search round. */
export const canFind: ReadonlySignal<boolean> = computed(
  () => ground.value !== null && plan.value.structures.length > 0,
);

/** Finds the line that needs the fewest bags, puts it into the plan and then looks further. */
export async function findRing(): Promise<void> {
  const of = plan.peek();
  const asked = askedOf(findWish.peek(), of, unitSystem.peek());
  const answer = await working((options) => firstAnswer(of, asked, options));
  if (answer && putFound(answer, asked, inputsOf(of))) await lookFurther("estimate");
}

/** One ring round everything, which is soonest; other groupings at once only where there is no such ring. */
async function firstAnswer(
  of: Plan,
  asked: SitingWish,
  options: CallOptions,
): Promise<SiteRingResponse> {
  try {
    return await engine.siteRing({ plan: decided(of), ...asked, together: true }, options);
  } catch (thrown) {
    const noRing = thrown instanceof Refusal && thrown.code.startsWith("site/");
    if (!noRing || (asked.structureIds ?? []).length < 2) throw thrown;
    return engine.siteRing({ plan: decided(of), ...asked }, options);
  }
}

/**
 * How good the found line is, whether separate rings or a longer search would do better, and what bigger
 * cordons would save. An answer for a line that is no longer the last found is dropped.
 */
export async function lookFurther(judge: "estimate" | "proof"): Promise<void> {
  const last = found.peek();
  if (!last) return;
  lookingFurther.value = true;
  const request = {
    plan: decided(plan.peek()),
    ...last.asked,
    judge,
    reachesM: reachesM(unitSystem.peek()),
  };
  const further = await working((options) => engine.siteRing(request, options));
  lookingFurther.value = false;
  const same = found.peek()?.lines === last.lines;
  if (further && same) found.value = { ...last, further };
}

/** The plan without the foreign parts of its file, which the engine has no use for. */
export function decided({ carried: _, ...rest }: Plan): Plan {
  return rest;
}

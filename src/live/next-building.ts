import { signal } from "@preact/signals";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Plan } from "../../shared/plan.ts";
import { tell } from "../document/notices.ts";
import { plan, replacePlan } from "../document/store.ts";
import { savePlan } from "./actions.ts";
import { footprintLayer, isPicking, placeMarked } from "./footprints.ts";

/** Whether the person is asked if the present plan is to be saved before the next building's is started. */
export const nextIsAsked = signal(false);

/**
 * A plan for another building on the same river: ground, gauge, water, forecast, crew and levee type stay; buildings,
 * lines, no-go areas and when to leave are the former building's own.
 */
export function planForNext(now: Plan): Plan {
  const { sources, gauge, flow, water, ground, section, practice, terrain } = now;
  const { holding = EMPTY_PLAN.holding!, time = EMPTY_PLAN.time! } = now;
  return {
    ...EMPTY_PLAN,
    ...(sources ? { sources } : {}),
    ...{ gauge, flow, water, ground, section, practice, holding, time, terrain },
  };
}

/** Asks first whether to save the present plan, when there is anything of it. */
export function askNextBuilding(): void {
  const { structures, alignments } = plan.peek();
  if (structures.length + alignments.length > 0) nextIsAsked.value = true;
  else startNextBuilding(false);
}

/** Starts the next building's plan, as one step that can be undone; imported footprints stay to pick from. */
export function startNextBuilding(saving: boolean): void {
  if (saving) savePlan();
  nextIsAsked.value = false;
  placeMarked.value = null;
  const outcome = replacePlan(planForNext(plan.peek()), "Next building, same river");
  if (!outcome.ok) tell("error", outcome.failure);
  else isPicking.value = footprintLayer.peek() !== null;
}

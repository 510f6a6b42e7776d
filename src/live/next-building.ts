import { signal } from "@preact/signals";
import { planForNext } from "../../shared/next-plan.ts";
import { tell } from "../document/notices.ts";
import { plan, replacePlan } from "../document/store.ts";
import { savePlan } from "./actions.ts";
import { footprintLayer, isPicking, placeMarked } from "./footprints.ts";
import { tool } from "./screen.ts";

/** Whether the person is asked if the present plan is to be saved before the next building's is started. */
export const nextIsAsked = signal(false);

/** Asks first whether to save the present plan, when there is anything of it. */
export function askNextBuilding(): void {
  const { structures, alignments } = plan.peek();
  if (structures.length + alignments.length > 0) nextIsAsked.value = true;
  else startNextBuilding(false);
}

/** Starts the next building's plan, as one step that can be undone; with the way to its building in hand. */
export function startNextBuilding(saving: boolean): void {
  if (saving) savePlan();
  nextIsAsked.value = false;
  placeMarked.value = null;
  const outcome = replacePlan(planForNext(plan.peek()), "Next building, same river");
  if (!outcome.ok) tell("error", outcome.failure);
  else if (footprintLayer.peek()) isPicking.value = true;
  else tool.value = "draw-structure";
}

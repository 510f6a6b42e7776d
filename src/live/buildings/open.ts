import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Plan } from "../../../shared/plan.ts";
import { plan, undo } from "../../document/store.ts";
import { fieldOpen } from "../field.ts";

/** Whether the view of all buildings is open over the planning screen. */
export const buildingsOpen = signal(false);
/** Whether its printed list is open over it. */
export const ringListOpen = signal(false);
/** The line of that view that is open as an ordinary plan, and that plan as it was opened; null when none is. */
export const lineInPlan = signal<{ readonly id: string; readonly opened: Plan } | null>(null);

/** Whether the map is lent to another view, where nothing of the plan is edited on it. */
export const mapIsLent: ReadonlySignal<boolean> = computed(
  () => fieldOpen.value || buildingsOpen.value,
);

/** Opens the view; a plan that was opened from it and not changed since gives way to the one before. */
export function openBuildings(): void {
  if (lineInPlan.peek()?.opened === plan.peek()) undo();
  lineInPlan.value = null;
  buildingsOpen.value = true;
}

export function leaveBuildings(): void {
  buildingsOpen.value = false;
}

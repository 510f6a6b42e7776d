import { effect } from "@preact/signals";
import { asFailure } from "../shared/failure.ts";
import type { Plan } from "../shared/plan.ts";
import { engine } from "./engine.ts";
import { ground } from "./state.ts";
import { levelAtMomentM, momentTraced, planAtMoment } from "./time-now.ts";

/**
 * Keeps `momentTraced` in step with the moment of the forecast that is looked at: one request under way, the
 * newest moment next. A failure leaves the picture as it was, and it shows as stale.
 */
export function keepMomentTraced(): () => void {
  let inFlight = false;
  let wanted: Plan | null = null;

  async function drain(): Promise<void> {
    inFlight = true;
    while (wanted) {
      const of: Plan = wanted;
      wanted = null;
      await follow(of);
    }
    inFlight = false;
  }

  return effect(() => {
    if (levelAtMomentM.value === null || !ground.value) {
      wanted = null;
      momentTraced.value = null;
      return;
    }
    wanted = planAtMoment.value;
    if (!inFlight) void drain();
  });
}

async function follow(of: Plan): Promise<void> {
  try {
    const ids = of.chosenId === null ? [] : [of.chosenId];
    const trace = await engine.traceWater({ plan: of, ids });
    if (levelAtMomentM.peek() !== null) momentTraced.value = { trace, of };
  } catch (thrown) {
    if (asFailure(thrown).code !== "cancelled") momentTraced.value = null;
  }
}

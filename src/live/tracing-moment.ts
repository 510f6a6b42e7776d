import { effect } from "@preact/signals";
import type { Plan } from "../../shared/plan.ts";
import { engine } from "../engine.ts";
import { ground } from "./ground.ts";
import { latest } from "./latest.ts";
import { levelAtMomentM, momentTraced, planAtMoment } from "./time-now.ts";

/**
 * Keeps `momentTraced` in step with the moment of the forecast that is looked at: one request under way, the
 * newest moment next. A failure takes the picture away.
 */
export function keepMomentTraced(): () => void {
  const moment = latest((of: Plan, signal) =>
    engine.traceWater({ plan: of, ids: of.chosenId === null ? [] : [of.chosenId] }, { signal }),
  );
  const stops = [
    effect(() => {
      if (levelAtMomentM.value === null || !ground.value) moment.drop();
      else moment.want(planAtMoment.value);
    }),
    effect(() => {
      const last = moment.answered.value;
      momentTraced.value = last && { trace: last.answer, of: last.of };
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

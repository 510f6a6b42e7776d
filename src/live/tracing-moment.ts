import { effect } from "@preact/signals";
import { engine } from "../engine.ts";
import { follow } from "./follow.ts";
import { momentTraced, toTraceAtMoment } from "./time-now.ts";

const following = follow(toTraceAtMoment, {
  overtaken: "shown",
  ask: ({ plan, chosenId }, signal) =>
    engine.traceWater({ plan, ids: chosenId === null ? [] : [chosenId] }, { signal }),
});

/** Keeps `momentTraced` in step with the moment of the forecast that is looked at; a failure takes the picture away. */
export function keepMomentTraced(): () => void {
  const stops = [
    following.keep(),
    effect(() => {
      const last = following.answered.value;
      momentTraced.value = last && { trace: last.answer, of: last.of };
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

import { computed, effect, signal } from "@preact/signals";
import { asFailure, type Failure } from "../../shared/failure.ts";
import { chosenId } from "../document/chosen.ts";
import { engine } from "../engine.ts";
import { follow } from "./follow.ts";
import { ground } from "./ground.ts";
import { WATER } from "./parts.ts";
import { questionOf } from "./question.ts";
import { traced, tracingFailure } from "./results.ts";
import { uncounted } from "./uncounted.ts";
import { toTrace } from "./water-now.ts";

/** The plan must rest this long before its water is followed, milliseconds. */
const SETTLE_MS = 250;
/** A trace that took longer is not made again while a button is held down, milliseconds. */
const QUICK_MS = 50;
/** After so many breakdowns of the engine the water of a ground is not followed any more. */
const MOST_CRASHES = 2;

/** Breakdowns of the engine while the water of this ground was followed. */
const crashes = signal<readonly Failure[]>([]);
const lastMs = signal(Number.POSITIVE_INFINITY);
const isPressed = signal(false);

/** The picture of the water is of the chosen line: another choice is another question. */
const question = questionOf(WATER, () => {
  const water = toTrace.value;
  return water && crashes.value.length < MOST_CRASHES ? { water, chosenId: chosenId.value } : null;
});

const following = follow(question, {
  overtaken: "cancelled",
  restMs: SETTLE_MS,
  waits: computed(() => isPressed.value && lastMs.value > QUICK_MS),
  ask: async ({ plan, chosenId: of }, signal) => {
    const startedAt = performance.now();
    try {
      const trace = await engine.traceWater({ plan: { ...plan, chosenId: of } }, { signal });
      lastMs.value = performance.now() - startedAt;
      return trace;
    } catch (thrown) {
      const failure = asFailure(thrown);
      if (failure.code === "engine/crashed") crashes.value = [...crashes.peek(), failure];
      throw thrown;
    }
  },
});

/**
 * Keeps `traced` in step with plan, choice and ground once they rest. What is held down (a drag, a slider) is waited
 * for unless a trace is quick. A failure goes to `tracingFailure` and stops nothing else.
 */
export function keepTraced(): () => void {
  const stops = [
    keepPressed(),
    effect(() => {
      ground.value;
      crashes.value = [];
    }),
    following.keep(),
    effect(() => {
      const last = following.answered.value;
      traced.value = last && { trace: last.answer, of: last.of.water, chosenId: last.of.chosenId };
    }),
    effect(() => {
      const last = crashes.value.length < MOST_CRASHES ? null : crashes.value.at(-1);
      tracingFailure.value = uncounted.value ?? following.failed.value?.answer ?? last ?? null;
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

/** Keeps `isPressed` in step with the pointer, anywhere on the page. */
function keepPressed(): () => void {
  const aborted = new AbortController();
  const on = (type: string, pressed: boolean) =>
    window.addEventListener(
      type,
      () => {
        isPressed.value = pressed;
      },
      { capture: true, signal: aborted.signal },
    );
  on("pointerdown", true);
  on("pointerup", false);
  on("pointercancel", false);
  on("blur", false);
  return () => aborted.abort();
}

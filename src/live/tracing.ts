import { computed, effect } from "@preact/signals";
import { asFailure } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";
import { chosenId } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { engine } from "../engine.ts";
import { ground } from "./ground.ts";
import { traced, tracingFailure } from "./results.ts";
import { sizeAgain } from "./sizing-clock.ts";
import { uncounted } from "./uncounted.ts";
import { sameWater } from "./water-now.ts";

/** The plan must rest this long before its water is followed, milliseconds. */
const SETTLE_MS = 250;
/** A trace that took longer is not made again while a button is held down, milliseconds. */
const QUICK_MS = 50;
/** After so many breakdowns of the engine the water of a ground is not followed any more. */
const MOST_CRASHES = 2;

/**
 * Keeps `traced` in step with plan, choice and ground: when they rest, one request at a time; one that is
 * overtaken is cancelled and its late answer dropped. What is held down (a drag, a slider) is waited for
 * unless a trace is quick. A failure goes to `tracingFailure` and stops nothing else.
 */
export function keepTraced(): () => void {
  const asked = computed(changedPlan());
  const held = heldDown(() => {
    if (isDue) void request();
  });
  let isDue = false;
  let lastMs = Number.POSITIVE_INFINITY;
  let crashes = 0;
  let lastGround = ground.peek();
  let underWay: AbortController | null = null;
  let settle: ReturnType<typeof setTimeout> | undefined;

  async function request(): Promise<void> {
    isDue = held() && lastMs > QUICK_MS;
    if (isDue) return;
    const abort = new AbortController();
    underWay = abort;
    const of = asked.peek();
    const startedAt = performance.now();
    try {
      const trace = await engine.traceWater({ plan: of }, { signal: abort.signal });
      if (abort.signal.aborted) return;
      lastMs = performance.now() - startedAt;
      traced.value = { trace, of };
      tracingFailure.value = null;
    } catch (thrown) {
      const failure = asFailure(thrown);
      if (failure.code === "engine/crashed") crashes += 1;
      if (!abort.signal.aborted) tracingFailure.value = failure;
    }
  }

  return effect(() => {
    const summary = ground.value;
    asked.value;
    sizeAgain.value;
    underWay?.abort();
    if (crashes < MOST_CRASHES) tracingFailure.value = null;
    clearTimeout(settle);
    isDue = false;
    if (summary !== lastGround) {
      [lastGround, crashes] = [summary, 0];
      traced.value = null;
      tracingFailure.value = null;
    }
    if (uncounted.value) {
      [traced.value, tracingFailure.value] = [null, uncounted.value];
      return;
    }
    if (summary && crashes < MOST_CRASHES) settle = setTimeout(() => void request(), SETTLE_MS);
  });
}

/** The plan with its choice made, the same object for as long as the water has the same question to answer. */
function changedPlan(): () => Plan {
  let last: Plan | null = null;
  return () => {
    const { carried: _, ...rest } = plan.value;
    const now = { ...rest, chosenId: chosenId.value };
    if (!last || last.chosenId !== now.chosenId || !sameWater(last, now)) last = now;
    return last;
  };
}

/** Whether a pointer is down anywhere on the page. */
function heldDown(onRelease: () => void): () => boolean {
  let isDown = false;
  const released = () => {
    isDown = false;
    onRelease();
  };
  const early = { capture: true };
  const pressed = () => {
    isDown = true;
  };
  window.addEventListener("pointerdown", pressed, early);
  window.addEventListener("pointerup", released, early);
  window.addEventListener("pointercancel", released, early);
  window.addEventListener("blur", released);
  return () => isDown;
}

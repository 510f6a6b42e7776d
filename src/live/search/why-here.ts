import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { SidewaysCostResponse } from "../../../shared/search-types.ts";
import { chosenId } from "../../document/chosen.ts";
import { engine } from "../../engine.ts";
import { follow } from "../follow.ts";
import { ground } from "../ground.ts";
import { SIDEWAYS } from "../parts.ts";
import { questionOf } from "../question.ts";

/** Rest after the last change before it is worked out again, milliseconds. */
const SETTLE_MS = 150;

/** Whether it is shown what moving the chosen line sideways would cost. */
export const whyHere = signal(false);

const question = questionOf(SIDEWAYS, () => {
  const id = chosenId.value;
  return whyHere.value && ground.value && id !== null ? { id } : null;
});
const costs = follow(question, {
  overtaken: "gone",
  restMs: SETTLE_MS,
  ask: ({ plan, id }, signal) => engine.sidewaysCost({ plan, id }, { signal }),
});

/** What it would cost, while it is shown and the line lies still. */
export const sidewaysNow: ReadonlySignal<SidewaysCostResponse | null> = computed(
  () => costs.answered.value?.answer ?? null,
);

/** Keeps {@link sidewaysNow} in step with the chosen line; it is empty from any change of what it follows from. */
export const keepSideways = costs.keep;

import { computed, type ReadonlySignal } from "@preact/signals";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { chosenId } from "../document/chosen.ts";
import { engine } from "../engine.ts";
import { toSize } from "./current.ts";
import { follow } from "./follow.ts";
import { ground } from "./ground.ts";
import { SIZING } from "./parts.ts";
import { questionOf } from "./question.ts";
import { chosenLine } from "./results.ts";

/** Rest after the last change before a line is sized on many grounds, milliseconds. */
const SETTLE_MS = 400;

const question = questionOf(SIZING, () => {
  const [sizing, id] = [toSize.value, chosenId.value];
  return sizing && ground.value && id !== null ? { id } : null;
});
const simulations = follow(question, {
  overtaken: "gone",
  restMs: SETTLE_MS,
  ask: ({ plan, id }, signal) => engine.simulateGround({ plan, id }, { signal }),
});

const hasFailed = computed(
  () => simulations.failed.value !== null && simulations.failed.value.of === question.value,
);

/** The chosen line with what its bags are on many grounds, once that is known; null there where it failed. */
export const simulatedLine: ReadonlySignal<SizedLine | null> = computed(() => {
  const line = chosenLine.value;
  if (!line) return null;
  const answer = simulations.isCurrent.value ? simulations.answered.value?.answer : undefined;
  if (answer?.lineId === line.id) return { ...line, simulatedGround: answer };
  return hasFailed.value ? { ...line, simulatedGround: null } : line;
});

/** True while the chosen line is still being sized on many grounds. */
export const isSimulating: ReadonlySignal<boolean> = computed(
  () => question.value !== null && !simulations.isCurrent.value && !hasFailed.value,
);

/** Keeps {@link simulatedLine} in step with the chosen line; empty from any change of what it follows from. */
export const keepSimulated = simulations.keep;

import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import type { Plan } from "../../../shared/plan.ts";
import type { SidewaysCostResponse } from "../../../shared/siting-types.ts";
import { chosenId } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { engine } from "../../engine.ts";
import { ground } from "../ground.ts";
import { latest } from "../latest.ts";
import { type Parts, sameParts, sidewaysParts } from "../parts.ts";
import { decided } from "./find-ring.ts";

/** Rest after the last change before it is worked out again, milliseconds. */
const SETTLE_MS = 150;

interface Question {
  readonly plan: Plan;
  readonly id: string;
}

const costs = latest(({ plan: of, id }: Question, signal) =>
  engine.sidewaysCost({ plan: decided(of), id }, { signal }),
);

/** Whether it is shown what moving the chosen line sideways would cost. */
export const whyHere = signal(false);
/** What it would cost, while it is shown and the line lies still. */
export const sidewaysNow: ReadonlySignal<SidewaysCostResponse | null> = computed(
  () => costs.answered.value?.answer ?? null,
);

/** Keeps {@link sidewaysNow} in step with the chosen line; it is empty from any change of what it follows from. */
export function keepSideways(): () => void {
  let shown: Parts = [];
  let settle: ReturnType<typeof setTimeout> | undefined;
  return effect(() => {
    const [of, id] = [plan.value, chosenId.value];
    const wanted = [whyHere.value, ground.value, id, ...sidewaysParts(of)];
    if (sameParts(wanted, shown)) return;
    shown = wanted;
    clearTimeout(settle);
    costs.drop();
    if (!whyHere.value || !ground.value || id === null) return;
    settle = setTimeout(() => costs.want({ plan: of, id }), SETTLE_MS);
  });
}

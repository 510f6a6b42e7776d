import { effect, signal } from "@preact/signals";
import type { LonLat } from "../../shared/plan.ts";
import type { SidewaysCostResponse } from "../../shared/siting-types.ts";
import { plan } from "../document/store.ts";
import { engine } from "../engine.ts";
import { chosenId, ground } from "../state.ts";
import { decided } from "./find-ring.ts";

/** Rest after the last change before it is worked out again, milliseconds. */
const SETTLE_MS = 150;

/** Whether it is shown what moving the chosen line sideways would cost. */
export const whyHere = signal(false);
/** What it would cost, while it is shown and the line lies still. */
export const sidewaysNow = signal<SidewaysCostResponse | null>(null);

/** Keeps {@link sidewaysNow} in step with the chosen line; it is empty while the line moves. */
export function keepSideways(): () => void {
  let shown: readonly unknown[] = [];
  let settle: ReturnType<typeof setTimeout> | undefined;
  return effect(() => {
    const of = plan.value;
    const id = chosenId.value;
    const corners = of.alignments.find((each) => each.id === id)?.corners;
    const wanted = [
      whyHere.value,
      ground.value,
      corners,
      of.water,
      of.section,
      of.practice,
      of.noGo,
    ];
    if (wanted.every((part, k) => part === shown[k])) return;
    shown = wanted;
    clearTimeout(settle);
    sidewaysNow.value = null;
    if (!whyHere.value || !ground.value || id === null || !corners) return;
    settle = setTimeout(() => void ask(id, corners), SETTLE_MS);
  });
}

async function ask(id: string, corners: readonly LonLat[]): Promise<void> {
  try {
    const answer = await engine.sidewaysCost({ plan: decided(plan.peek()), id });
    const now = plan.peek().alignments.find((each) => each.id === id);
    if (whyHere.peek() && now?.corners === corners) sidewaysNow.value = answer;
  } catch {
    sidewaysNow.value = null;
  }
}

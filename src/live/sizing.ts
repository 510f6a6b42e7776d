import { batch, effect } from "@preact/signals";
import { checksWhileDragged } from "../../shared/checks.ts";
import { asFailure, type Failure } from "../../shared/failure.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { engine } from "../engine.ts";
import { type Asked, askedNow, isCurrent, sizedFor, sizedIsWhole } from "./current.ts";
import { latest } from "./latest.ts";
import { sized, sizingFailure } from "./results.ts";
import { sizeAgain } from "./sizing-clock.ts";
import { uncounted } from "./uncounted.ts";

/** After the last change by this long what is left out during a drag is counted too, milliseconds. */
const SETTLE_MS = 180;

/**
 * Keeps `sized` in step with the plan: one request under way at a time, the newest plan next, so that a drag never
 * queues up behind itself; a whole one when the plan rests.
 */
export function keepSized(): () => void {
  const dragged = latest((asked: Asked, signal) => size(asked, false, signal));
  const whole = latest((asked: Asked, signal) => size(asked, true, signal));
  let settle: ReturnType<typeof setTimeout> | undefined;
  return effect(() => {
    sizeAgain.value;
    const asked = askedNow();
    clearTimeout(settle);
    if (uncounted.value) {
      for (const each of [dragged, whole]) each.drop();
      showNothing(asked, uncounted.value);
      return;
    }
    settle = setTimeout(() => whole.want(asked), SETTLE_MS);
    dragged.want(asked);
  });
}

/** Takes away what was sized: there is nothing to count on the elevation data that is open. */
function showNothing(asked: Asked, why: Failure): void {
  batch(() => {
    sized.value = new Map();
    sizedFor.value = { ...asked, isWhole: true };
    sizingFailure.value = why;
  });
}

async function size(asked: Asked, isWhole: boolean, signal: AbortSignal): Promise<void> {
  try {
    const { lines } = await engine.size({ plan: decided(asked.plan), live: !isWhole }, { signal });
    if (signal.aborted) return;
    const isLate = isWhole ? !isCurrent(asked) : sizedIsWhole.peek();
    if (isLate) return;
    batch(() => {
      sized.value = new Map(lines.map((line) => [line.id, isWhole ? line : withLastAtRest(line)]));
      sizedFor.value = { ...asked, isWhole };
      sizingFailure.value = null;
    });
  } catch (thrown) {
    const failure = asFailure(thrown);
    const isOurs = !signal.aborted && isCurrent(asked);
    if (failure.code !== "cancelled" && isOurs) sizingFailure.value = failure;
  }
}

/** Keeps in sight, while a line is dragged, what was found of it at rest. */
function withLastAtRest(line: SizedLine): SizedLine {
  const before = sized.peek().get(line.id);
  if (!before) return line;
  const { lengthM } = line.totals;
  return { ...line, checks: checksWhileDragged(line.checks, before.checks, lengthM) };
}

/** The plan without the foreign parts of its file, which the engine has no use for. */
function decided({ carried: _, ...rest }: Plan): Plan {
  return rest;
}

import { effect } from "@preact/signals";
import { checksWhileDragged } from "../shared/checks.ts";
import { asFailure, type Failure } from "../shared/failure.ts";
import type { Plan } from "../shared/plan.ts";
import type { SizedLine } from "../shared/sizing-types.ts";
import { plan } from "./document/store.ts";
import { engine } from "./engine.ts";
import { sizeAgain } from "./sizing-clock.ts";
import { sized, sizingFailure } from "./state.ts";
import { uncounted } from "./uncounted.ts";

/** After the last change by this long the totals at +- RMSE are computed too, milliseconds. */
const SETTLE_MS = 180;

let inFlight = false;
let wanted: Plan | null = null;
let settle: ReturnType<typeof setTimeout> | undefined;

/**
 * Keeps `sized` in step with the plan: one request under way at a time, the newest plan next, so that a
 * drag never queues up behind itself.
 */
export function keepSized(): () => void {
  return effect(() => {
    sizeAgain.value;
    clearTimeout(settle);
    if (uncounted.value) return showNothing(uncounted.value);
    wanted = plan.value;
    settle = setTimeout(() => void request(plan.value, false), SETTLE_MS);
    if (!inFlight) void drain();
  });
}

async function drain(): Promise<void> {
  inFlight = true;
  while (wanted) {
    const next = wanted;
    wanted = null;
    await request(next, true);
  }
  inFlight = false;
}

let asked = 0;
let shown = 0;

/** Takes away what was sized on other elevation data, and drops what is under way. */
function showNothing(why: Failure): void {
  wanted = null;
  shown = ++asked;
  sized.value = new Map();
  sizingFailure.value = why;
}

async function request(of: Plan, live: boolean): Promise<void> {
  const turn = ++asked;
  try {
    const { lines } = await engine.size({ plan: decided(of), live });
    const stale = turn < shown || (!live && of !== plan.value);
    if (stale) return;
    shown = turn;
    sized.value = new Map(lines.map((line) => [line.id, live ? withLastAtRest(line) : line]));
    sizingFailure.value = null;
  } catch (thrown) {
    const failure = asFailure(thrown);
    const isOurs = turn >= shown && of === plan.value;
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

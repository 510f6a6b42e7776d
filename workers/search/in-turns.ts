import type { CallOptions } from "../../shared/messages.ts";
import { stopIfCancelled } from "../stop-if-cancelled.ts";
import type { SearchStep } from "./types.ts";

/** Longest stretch of work between two looks at the messages, milliseconds. */
const TURN_MS = 40;

/**
 * Drives a search step by step without keeping the worker from its messages: progress is reported, and a
 * cancelled search stops at its next step.
 * @throws Refusal `cancelled`
 */
export async function inTurns<T>(
  steps: Generator<SearchStep, T>,
  options?: CallOptions,
): Promise<T> {
  let turnEndsAt = performance.now() + TURN_MS;
  let share = 0;
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    if (performance.now() < turnEndsAt) continue;
    share = Math.max(share, step.value.share);
    options?.onProgress?.(share, step.value.doing);
    await new Promise((resolve) => setTimeout(resolve, 0));
    stopIfCancelled(options);
    turnEndsAt = performance.now() + TURN_MS;
  }
}

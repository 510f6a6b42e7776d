import type { Failure } from "../shared/failure.ts";
import type { LoneValue } from "../shared/ground-marks.ts";
import terrainWorker from "../workers/terrain.worker.ts?worker&url";
import { underPagePolicy } from "./engine/page-policy.ts";
import { makeRemoteEngine } from "./engine/remote.ts";
import { splitEngine } from "./engine/split.ts";
import { sizeAgain } from "./live/sizing-clock.ts";
import { markMet, tell } from "./live/state.ts";

/** How often to look whether a working engine has said anything, milliseconds. */
const SILENCE_MS = 10_000;
const WORKER = underPagePolicy(terrainWorker);

function inWorker() {
  return makeRemoteEngine(() => new Worker(WORKER, { type: "module" }), {
    silenceMs: SILENCE_MS,
    onRestart,
    onMark,
  });
}

function onRestart(failure: Failure | null): void {
  if (failure) tell("error", failure);
  sizeAgain.value += 1;
}

function onMark(mark: LoneValue): void {
  markMet.value = mark;
}

/** The engine in its two workers. The only place that knows where they are. */
export const engine = splitEngine(inWorker(), inWorker());

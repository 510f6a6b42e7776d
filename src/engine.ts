import { makeRemoteEngine } from "./remote-engine.ts";
import { sizeAgain } from "./sizing-clock.ts";
import { tell } from "./state.ts";

/** Silence after which a working engine is asked whether it lives, milliseconds. */
const SILENCE_MS = 10_000;

/** The engine in its worker. The only place that knows where the worker is. */
export const engine = makeRemoteEngine(
  () => new Worker(new URL("../workers/terrain.worker.ts", import.meta.url), { type: "module" }),
  {
    silenceMs: SILENCE_MS,
    onRestart: (failure) => {
      if (failure) tell("error", failure);
      sizeAgain.value += 1;
    },
  },
);

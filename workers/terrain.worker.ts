import type { Verb } from "../shared/messages.ts";
import type { ToWorker } from "../shared/wire.ts";
import { makeEngine } from "./engine.ts";
import { loadAhead } from "./load-ahead.ts";
import { overviewFiles } from "./overview-files.ts";
import { serveEngine } from "./serve.ts";

/** What the page starts with: one of them in each worker. */
const FIRST_WORK: readonly Verb[] = ["size", "traceWater"];
const AHEAD_MS = 30_000;
let isStarted = false;

const answer = serveEngine(makeEngine(overviewFiles), (message, transfer) =>
  postMessage(message, transfer),
);
addEventListener("message", async ({ data }: MessageEvent<ToWorker>) => {
  await answer(data);
  if (isStarted || data.kind !== "call" || !FIRST_WORK.includes(data.verb)) return;
  isStarted = true;
  setTimeout(loadAhead, AHEAD_MS);
});
postMessage({ kind: "pong" });

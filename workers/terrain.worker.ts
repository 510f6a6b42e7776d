import type { ToWorker } from "../shared/messages.ts";
import { makeEngine } from "./engine.ts";
import { overviewFiles } from "./overview-files.ts";
import { serveEngine } from "./serve.ts";

const scope = self as unknown as DedicatedWorkerGlobalScope;
const answer = serveEngine(makeEngine(overviewFiles), (message, transfer) =>
  scope.postMessage(message, transfer),
);
scope.onmessage = (event: MessageEvent<ToWorker>) => void answer(event.data);
scope.postMessage({ kind: "pong" });

import type { ToWorker } from "../shared/messages.ts";
import { makeEngine } from "./engine.ts";
import { serveEngine } from "./serve.ts";

const scope = self as unknown as DedicatedWorkerGlobalScope;
const answer = serveEngine(makeEngine(), (message, transfer) =>
  scope.postMessage(message, transfer),
);
scope.onmessage = (event: MessageEvent<ToWorker>) => void answer(event.data);
scope.postMessage({ kind: "pong" });

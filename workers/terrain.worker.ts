import type { ToWorker } from "../shared/messages.ts";
import { makeEngine } from "./engine.ts";
import { overviewFiles } from "./overview-files.ts";
import { serveEngine } from "./serve.ts";

const answer = serveEngine(makeEngine(overviewFiles), (message, transfer) =>
  postMessage(message, transfer),
);
addEventListener("message", (event: MessageEvent<ToWorker>) => void answer(event.data));
postMessage({ kind: "pong" });

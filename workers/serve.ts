import { asFailure } from "../shared/failure.ts";
import type { Engine, FromWorker, ToWorker } from "../shared/messages.ts";
import { transferablesOf } from "./transfer.ts";

/** Work shorter than this reports no progress, milliseconds. */
const QUIET_MS = 300;

/**
 * Answers messages with an engine. Each call ends in exactly one `done` or `failed`; a cancelled call
 * ends in `failed` with the code `cancelled`.
 * @param post sends to the other side, moving the listed buffers
 */
export function serveEngine(
  engine: Engine,
  post: (message: FromWorker, transfer: ArrayBuffer[]) => void,
): (message: ToWorker) => Promise<void> {
  const running = new Map<number, AbortController>();
  return async (message) => {
    if (message.kind === "ping") {
      post({ kind: "pong" }, []);
      return;
    }
    if (message.kind === "cancel") {
      running.get(message.id)?.abort();
      return;
    }
    const { id, verb, request } = message;
    const abort = new AbortController();
    const startedAt = performance.now();
    running.set(id, abort);
    const onProgress = (share: number, doing: string) => {
      if (performance.now() - startedAt < QUIET_MS) return;
      post({ kind: "progress", id, share, doing }, []);
    };
    try {
      const call = engine[verb] as (request: unknown, options: object) => Promise<never>;
      const response = await call(request, { onProgress, signal: abort.signal });
      post({ kind: "done", id, response }, transferablesOf(verb, response));
    } catch (thrown) {
      post({ kind: "failed", id, failure: asFailure(thrown) }, []);
    } finally {
      running.delete(id);
    }
  };
}

import { asFailure } from "../shared/failure.ts";
import type { CallOptions, Engine, OpenTerrainRequest, Verb } from "../shared/messages.ts";
import type { Call, Done, FromWorker, ToWorker } from "../shared/wire.ts";
import { type PageRanges, pageRanges } from "./page-ranges.ts";
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
  post: <V extends Verb>(message: FromWorker<V>, transfer: ArrayBuffer[]) => void,
): <V extends Verb>(message: ToWorker<V>) => Promise<void> {
  const running = new Map<number, AbortController>();
  const ranges = pageRanges((message) => post(message, []));
  return async (message) => {
    if (message.kind === "ping") {
      post({ kind: "pong" }, []);
      return;
    }
    if (message.kind === "range") {
      ranges.hear(message);
      return;
    }
    if (message.kind === "cancel") {
      running.get(message.id)?.abort();
      return;
    }
    const { id } = message;
    const abort = new AbortController();
    const startedAt = performance.now();
    running.set(id, abort);
    const onProgress = (share: number, doing: string) => {
      if (performance.now() - startedAt < QUIET_MS) return;
      post({ kind: "progress", id, share, doing }, []);
    };
    try {
      const call = await withAddressed(message, ranges);
      const done = await answer(engine, call, { onProgress, signal: abort.signal });
      post(done, transferablesOf(done));
    } catch (thrown) {
      post({ kind: "failed", id, failure: asFailure(thrown) }, []);
    } finally {
      running.delete(id);
    }
  };
}

/** A call whose rasters at web addresses are files like the others. */
async function withAddressed<V extends Verb>(call: Call<V>, ranges: PageRanges): Promise<Call<V>> {
  const { files, addressed = [] } = call.request as Partial<OpenTerrainRequest>;
  if (!files || addressed.length === 0) return call;
  const there = await Promise.all(addressed.map(ranges.fileAt));
  return { ...call, request: { ...call.request, files: [...files, ...there] } };
}

async function answer<V extends Verb>(
  engine: Engine,
  { id, verb, request }: Call<V>,
  options: CallOptions,
): Promise<Done<V>> {
  return { kind: "done", id, verb, response: await engine[verb](request, options) };
}

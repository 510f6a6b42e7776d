import { Refusal } from "../shared/failure.ts";
import type {
  CallOptions,
  Engine,
  FromWorker,
  OpenTerrainRequest,
  ToWorker,
  Verb,
} from "../shared/messages.ts";

/** The part of `Worker` that is used; tests pass a stand-in that runs the same server. */
export interface WorkerLike {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Pending {
  readonly resolve: (response: never) => void;
  readonly reject: (reason: Refusal) => void;
  readonly onProgress: CallOptions["onProgress"];
}

export interface RemoteOptions {
  /** A call is waiting and the worker has been silent this long: ask whether it lives, milliseconds. */
  readonly silenceMs: number;
  /** Told after a crash, when the worker runs again and the terrain has been reopened (or not: failure). */
  readonly onRestart: (failure: Refusal | null) => void;
}

const VERBS: readonly Verb[] = [
  "openTerrain",
  "size",
  "crossSection",
  "heightTile",
  "holeTile",
  "contours",
  "probe",
  "traceWater",
  "siteRing",
  "improveLine",
  "sidewaysCost",
];

const CRASHED = () =>
  new Refusal(
    "engine/crashed",
    "The part of the page that reads the ground stopped and was started again.",
    "Your plan is kept. If it happens again, use a smaller or coarser raster.",
  );

/**
 * The engine behind a worker. A cancelled call rejects at once with the code `cancelled`, and its late
 * answer is dropped. When the worker dies (an error event, or silence to a ping) every waiting call
 * rejects with `engine/crashed`, a new worker is started and the last terrain is opened in it again.
 */
export function makeRemoteEngine(spawn: () => WorkerLike, options: RemoteOptions): Engine {
  const waiting = new Map<number, Pending>();
  let nextId = 1;
  let lastTerrain: OpenTerrainRequest | null = null;
  let heardAt = Date.now();
  let watch: ReturnType<typeof setTimeout> | undefined;
  let worker = start();

  function start(): WorkerLike {
    const fresh = spawn();
    heardAt = Date.now();
    fresh.onmessage = (event) => hear(event.data);
    fresh.onerror = () => restart();
    return fresh;
  }

  function hear(message: FromWorker): void {
    heardAt = Date.now();
    if (message.kind === "pong") return;
    const call = waiting.get(message.id);
    if (!call) return;
    if (message.kind === "progress") {
      call.onProgress?.(message.share, message.doing);
      return;
    }
    waiting.delete(message.id);
    if (message.kind === "done") {
      call.resolve(message.response as never);
      return;
    }
    const { code, message: text, remedy } = message.failure;
    call.reject(new Refusal(code, text, remedy));
  }

  function restart(): void {
    worker.terminate();
    const lost = [...waiting.values()];
    waiting.clear();
    worker = start();
    for (const call of lost) call.reject(CRASHED());
    if (!lastTerrain) {
      options.onRestart(null);
      return;
    }
    call("openTerrain", lastTerrain).then(
      () => options.onRestart(null),
      (failure: Refusal) => options.onRestart(failure),
    );
  }

  function listen(): void {
    clearTimeout(watch);
    if (waiting.size === 0) return;
    watch = setTimeout(() => {
      const silentMs = Date.now() - heardAt;
      if (silentMs > 3 * options.silenceMs) restart();
      else if (silentMs > options.silenceMs) worker.postMessage({ kind: "ping" });
      listen();
    }, options.silenceMs);
  }

  function call(verb: Verb, request: unknown, { onProgress, signal }: CallOptions = {}) {
    return new Promise<never>((resolve, reject) => {
      const id = nextId++;
      const cancelled = () =>
        new Refusal("cancelled", "The work was cancelled.", "Start it again when you want it.");
      if (signal?.aborted) return reject(cancelled());
      if (waiting.size === 0) heardAt = Date.now();
      waiting.set(id, { resolve, reject, onProgress });
      signal?.addEventListener("abort", () => {
        if (!waiting.delete(id)) return;
        worker.postMessage({ kind: "cancel", id });
        reject(cancelled());
      });
      worker.postMessage({ kind: "call", id, verb, request });
      listen();
    });
  }

  const engine = Object.fromEntries(
    VERBS.map((verb) => [
      verb,
      (request: unknown, callOptions?: CallOptions) => call(verb, request, callOptions),
    ]),
  ) as unknown as Engine;

  return {
    ...engine,
    openTerrain: async (request, callOptions) => {
      const summary = await engine.openTerrain(request, callOptions);
      lastTerrain = request;
      return summary;
    },
  };
}

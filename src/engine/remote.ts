import {
  type Bug,
  type Failure,
  failureOf,
  givenOf,
  Refusal,
  refusal,
} from "../../shared/failure.ts";
import type { LoneValue } from "../../shared/ground-marks.ts";
import {
  type CallOptions,
  type Engine,
  engineOf,
  type OpenTerrainRequest,
  type RequestOf,
  type ResponseOf,
  type Verb,
} from "../../shared/messages.ts";
import type {
  Call,
  Done,
  FromWorker,
  RangeGiven,
  RangeWanted,
  ToWorker,
} from "../../shared/wire.ts";
import { addTexts, hasText } from "../../shared/words/failure.ts";
import type { RefusalTexts } from "../../shared/words/refusals/text.ts";

/** The part of `Worker` that is used; tests pass a stand-in that runs the same server. */
export interface WorkerLike {
  postMessage<V extends Verb>(message: ToWorker<V>): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Pending {
  readonly done: (message: Done) => void;
  readonly reject: (reason: Refusal) => void;
  readonly onProgress: CallOptions["onProgress"];
}

export interface RemoteOptions {
  /**
   * How often to look whether a worker that calls wait for has said anything, milliseconds. After one look without
   * a word it is asked whether it lives; after three more it is restarted. Progress counts as a word.
   */
  readonly silenceMs: number;
  /** Told after a crash, when the worker runs again and the terrain has been reopened (or not: failure). */
  readonly onRestart: (failure: Failure | null) => void;
  /** Told when a call met a height that may mark missing data. */
  readonly onMark?: (mark: LoneValue) => void;
  /** Asks for a part of a file at a web address that the worker reads; left out, it may not. */
  readonly onRange?: (wanted: RangeWanted) => Promise<RangeGiven["answer"]>;
  /** Told when a call failed by an error in the program. */
  readonly onBug?: (failure: Failure) => void;
  /** Fetches the texts of what the engine refuses. */
  readonly fetchTexts?: () => Promise<RefusalTexts>;
}

/** Looks without a word before the worker counts as dead: one, then three after it was asked. */
const SILENT_LOOKS = 4;

const crashed = (bug: Bug | undefined) =>
  new Refusal({ ...failureOf("engine/crashed"), ...(bug && { bug }) });

/** How long a refusal waits for its text on a network that does not answer. */
const LONGEST_FETCH_MS = 6000;

async function lateTexts(): Promise<RefusalTexts> {
  return (await import("../../shared/words/refusals/late.ts")).LATE_REFUSALS;
}

/** Fetches the text of a refusal; where it does not come in time, it is said without. */
async function withTexts(failure: Failure, fetchTexts = lateTexts): Promise<void> {
  if (hasText(failure)) return;
  const fetched = fetchTexts().then(addTexts);
  const late = new Promise<void>((resolve) => setTimeout(resolve, LONGEST_FETCH_MS));
  await Promise.race([fetched, late]);
}

/**
 * The engine behind a worker. A cancelled call rejects at once with the code `cancelled`, and its late
 * answer is dropped. When the worker dies (an error event, or silence to a ping) every waiting call
 * rejects with `engine/crashed`, a new worker is started and the last terrain is opened in it again; calls made
 * meanwhile wait for that.
 */
export function makeRemoteEngine(spawn: () => WorkerLike, options: RemoteOptions): Engine {
  const waiting = new Map<number, Pending>();
  let nextId = 1;
  let lastTerrain: OpenTerrainRequest | null = null;
  let reopening: Promise<unknown> | null = null;
  let silentLooks = 0;
  let watch: ReturnType<typeof setTimeout> | undefined;
  let worker = start();

  function start(): WorkerLike {
    const fresh = spawn();
    silentLooks = 0;
    fresh.onmessage = (event) => hear(event.data);
    fresh.onerror = (event) => restart(bugOfEvent(event));
    return fresh;
  }

  function hear(message: FromWorker): void {
    silentLooks = 0;
    if (message.kind === "pong") return;
    if (message.kind === "range") {
      void giveRange(message, worker);
      return;
    }
    const call = waiting.get(message.id);
    if (!call) return;
    if (message.kind === "progress") {
      call.onProgress?.(message.share, message.doing);
      return;
    }
    if (message.kind === "done") {
      waiting.delete(message.id);
      call.done(message);
      return;
    }
    const { bug } = message.failure;
    const unknown = givenOf("ground/mark-unknown", message.failure);
    if (unknown) options.onMark?.(unknown.mark);
    if (bug) options.onBug?.(message.failure);
    // until its text is there a call can still be cancelled
    const reject = () => waiting.delete(message.id) && call.reject(new Refusal(message.failure));
    void withTexts(message.failure, options.fetchTexts).then(reject, reject);
  }

  async function giveRange(wanted: RangeWanted, to: WorkerLike): Promise<void> {
    const { kind, ask } = wanted;
    const given = await (options.onRange?.(wanted) ?? Promise.reject(new TypeError())).then(
      (answer) => ({ answer, error: null }),
      (thrown: unknown) => ({ answer: null, error: (thrown as Error | null)?.name ?? "Error" }),
    );
    to.postMessage({ kind, ask, ...given });
  }

  function restart(bug?: Bug): void {
    worker.terminate();
    const lost = [...waiting.values()];
    waiting.clear();
    worker = start();
    for (const call of lost) call.reject(crashed(bug));
    if (!lastTerrain) {
      options.onRestart(null);
      return;
    }
    const own = worker;
    const over = (refusal: Refusal | null) => {
      if (own !== worker) return;
      reopening = null;
      options.onRestart(refusal?.failure ?? null);
    };
    reopening = send("openTerrain", lastTerrain).then(() => over(null), over);
  }

  function listen(): void {
    if (watch !== undefined) return;
    watch = setTimeout(() => {
      watch = undefined;
      if (waiting.size === 0) return;
      silentLooks += 1;
      if (silentLooks >= SILENT_LOOKS) restart();
      else worker.postMessage({ kind: "ping" });
      listen();
    }, options.silenceMs);
  }

  async function call<V extends Verb>(
    verb: V,
    request: RequestOf<V>,
    callOptions?: CallOptions,
  ): Promise<ResponseOf<V>> {
    if (reopening && verb !== "openTerrain") await reopening;
    return send(verb, request, callOptions);
  }

  function send<V extends Verb>(
    verb: V,
    request: RequestOf<V>,
    { onProgress, signal }: CallOptions = {},
  ) {
    return new Promise<ResponseOf<V>>((resolve, reject) => {
      const id = nextId++;
      const cancelled = () => refusal("cancelled", { overtaken: false });
      if (signal?.aborted) return reject(cancelled());
      if (waiting.size === 0) silentLooks = 0;
      const done = (message: Done) => {
        if (answers(message, verb)) resolve(message.response);
        else reject(new Error(`A call of ${verb} was answered with ${message.verb}.`));
      };
      waiting.set(id, { done, reject, onProgress });
      signal?.addEventListener("abort", () => {
        if (!waiting.delete(id)) return;
        worker.postMessage({ kind: "cancel", id });
        reject(cancelled());
      });
      const message: Call<V> = { kind: "call", id, verb, request };
      worker.postMessage(message);
      listen();
    });
  }

  const engine = engineOf((verb) => (request, callOptions) => call(verb, request, callOptions));

  return {
    ...engine,
    openTerrain: async (request, callOptions) => {
      const summary = await engine.openTerrain(request, callOptions);
      lastTerrain = request;
      return summary;
    },
  };
}

function answers<V extends Verb>(message: Done, verb: V): message is Done & Done<V> {
  return message.verb === verb;
}

/** All that a worker's error event says of what was thrown in it. */
function bugOfEvent({ message, filename, lineno, colno }: ErrorEvent): Bug {
  return { name: "Error", message, stack: `${filename}:${lineno}:${colno}`, cause: null };
}

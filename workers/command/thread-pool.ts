import { Piscina } from "piscina";
import { asFailure, failureOf, type Outcome, Refusal, refusal } from "../../shared/failure.ts";
import type { OpenTerrainRequest, RequestOf, ResponseOf } from "../../shared/messages.ts";

/** The elevation data that each thread opens for itself. */
export interface PoolGround extends Required<Pick<OpenTerrainRequest, "verticalUnit" | "marks">> {
  readonly paths: readonly string[];
}

/** What the threads do. */
export type SweepVerb = "checkBuilding" | "checkGroup";

/** Engines in threads of their own, or wherever else tasks are done. */
export interface ThreadPool {
  /**
   * Gives a task to the next thread that is free. A thread that ends in mid-task is replaced; a signal ends it.
   * @throws Refusal as the engine does, `cancelled`, `engine/thread-ended`
   */
  readonly run: <V extends SweepVerb>(
    verb: V,
    request: RequestOf<V>,
    signal?: AbortSignal,
  ) => Promise<ResponseOf<V>>;
  readonly close: () => Promise<void>;
}

/** Threads that work on any elevation data. */
export interface GroundPool extends Pick<ThreadPool, "close"> {
  /** As of {@link ThreadPool}. */
  readonly run: <V extends SweepVerb>(
    ground: PoolGround,
    verb: V,
    request: RequestOf<V>,
    signal?: AbortSignal,
  ) => Promise<ResponseOf<V>>;
}

const SEARCHING = new URL("./sweep-thread.mjs", import.meta.url);

/**
 * Threads that open elevation data when they are first given work on it.
 * @param script what they run
 */
export function groundPool(threads: number, script = SEARCHING): GroundPool {
  const pool = new Piscina({
    filename: script.href,
    ...{ minThreads: threads, maxThreads: threads },
    // a package that the engine loads takes data apart that it expects each thread to have
    workerData: {},
    execArgv: [],
  });
  return {
    async run<V extends SweepVerb>(
      ground: PoolGround,
      verb: V,
      request: RequestOf<V>,
      signal?: AbortSignal,
    ) {
      const work: Promise<Outcome<ResponseOf<V>>> = pool.run(
        { ground, verb, request },
        signal && { signal },
      );
      const outcome = await work.catch((thrown: unknown) => {
        throw signal?.aborted ? refusal("cancelled", { overtaken: false }) : threadEnded(thrown);
      });
      if (outcome.ok) return outcome.value;
      throw new Refusal(outcome.failure);
    },
    close: () => pool.close({ force: true }),
  };
}

/** Threads that work on one set of elevation data. */
export function threadPool(threads: number, ground: PoolGround, script = SEARCHING): ThreadPool {
  const { run, close } = groundPool(threads, script);
  return { run: (verb, request, signal) => run(ground, verb, request, signal), close };
}

function threadEnded(thrown: unknown): Refusal {
  const { bug } = asFailure(thrown);
  const cause = bug?.message ?? String(thrown);
  return new Refusal({ ...failureOf("engine/thread-ended", { cause }), ...(bug && { bug }) });
}

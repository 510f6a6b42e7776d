import { Piscina } from "piscina";
import { type Outcome, refusalOf } from "../../shared/failure.ts";
import type { OpenTerrainRequest, RequestOf, ResponseOf } from "../../shared/messages.ts";

/** The elevation data that each thread opens for itself. */
export interface PoolGround extends Required<Pick<OpenTerrainRequest, "verticalUnit" | "marks">> {
  readonly paths: readonly string[];
}

/** What the threads do. */
export type SweepVerb = "checkBuilding" | "checkGroup";

/** Engines in threads of their own. */
export interface ThreadPool {
  /** Gives a task to the next thread that is free. @throws Refusal as the engine does */
  readonly run: <V extends SweepVerb>(verb: V, request: RequestOf<V>) => Promise<ResponseOf<V>>;
  readonly close: () => Promise<void>;
}

/** Threads that open the elevation data when they are first given work. */
export function threadPool(threads: number, ground: PoolGround): ThreadPool {
  const pool = new Piscina({
    filename: new URL("./sweep-thread.mjs", import.meta.url).href,
    ...{ minThreads: threads, maxThreads: threads, workerData: ground },
    execArgv: [],
  });
  return {
    async run<V extends SweepVerb>(verb: V, request: RequestOf<V>) {
      const outcome: Outcome<ResponseOf<V>> = await pool.run({ verb, request });
      if (outcome.ok) return outcome.value;
      throw refusalOf(outcome.failure);
    },
    close: () => pool.close({ force: true }),
  };
}

import { availableParallelism } from "node:os";
import type { Building } from "../../shared/buildings/types.ts";
import { Refusal } from "../../shared/failure.ts";
import type { TerrainFile } from "../../shared/messages.ts";
import type { QueueAddress } from "./queue/address.ts";
import { type PoolGround, type ThreadPool, threadPool } from "./thread-pool.ts";

/** Who does the tasks of a check, and how many it is given at once. */
interface SweepPool extends ThreadPool {
  readonly atOnce: number;
  /** What ended the check, instead of the error that it ended with. */
  readonly reasonOf: (thrown: unknown) => unknown;
}

interface SweepPoolOf {
  /** Null = threads of this process. */
  readonly queue: QueueAddress | null;
  /** Null = as many as the machine has processors. */
  readonly threads: number | null;
  readonly ground: PoolGround;
  readonly files: readonly TerrainFile[];
  readonly buildings: readonly Building[];
  readonly check: string;
  readonly say: (message: string) => void;
}

/** Threads of this machine, or workers at a queue. @throws Refusal `queue/...` */
export async function sweepPool({ queue, threads, ...of }: SweepPoolOf): Promise<SweepPool> {
  if (!queue) {
    const atOnce = threads ?? availableParallelism();
    return { ...threadPool(atOnce, of.ground), atOnce, reasonOf: (thrown) => thrown };
  }
  const { tilePool } = await import("./queue/tile-pool.ts");
  const files = of.files.map(({ name, blob }) => ({ name, bytes: blob.size }));
  const pool = await tilePool(queue, { ...of, ground: { ...of.ground, files } });
  return {
    ...pool,
    atOnce: of.buildings.length,
    reasonOf: (thrown) => {
      const refused = pool.refused();
      return refused ? new Refusal(refused) : thrown;
    },
  };
}

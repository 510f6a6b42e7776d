import type { CheckGroupRequest } from "../../../shared/buildings/check-types.ts";
import type { Building } from "../../../shared/buildings/types.ts";
import { type Failure, failureOf, type Outcome, Refusal } from "../../../shared/failure.ts";
import type { RequestOf, ResponseOf } from "../../../shared/messages.ts";
import type { SweepVerb, ThreadPool } from "../thread-pool.ts";
import type { QueueAddress } from "./address.ts";
import { programVersion } from "./program-version.ts";
import {
  cutIntoTiles,
  jobId,
  type SharedGround,
  type TileAnswer,
  tilesOf,
  withoutCommon,
} from "./tile-job.ts";
import { openTileQueue } from "./tile-queue.ts";

/** What is checked by way of a queue. */
interface TilePoolOf {
  readonly buildings: readonly Building[];
  /** Name of the check; jobs of the same check are the same jobs. */
  readonly check: string;
  readonly ground: SharedGround;
  readonly say: (message: string) => void;
}

/** Workers on any machine that take jobs out of a queue. */
export interface TilePool extends ThreadPool {
  /** Why a worker takes no job of this check; null while none has said so. All tasks then end as `cancelled`. */
  readonly refused: () => Failure | null;
}

/** Jobs in Redis at a time. */
const MOST_JOBS = 256;

interface Task {
  readonly key: string;
  readonly request: object;
  readonly settle: (outcome: Outcome<unknown>) => void;
}

interface Tile {
  readonly id: string;
  readonly verb: SweepVerb;
  readonly tasks: readonly Task[];
}

/** @throws Refusal `queue/...` as of `connect` */
export async function tilePool(address: QueueAddress, of: TilePoolOf): Promise<TilePool> {
  const { buildings, check, ground, say } = of;
  const queue = await openTileQueue(address, await programVersion(), say);
  const tiles = tilesOf(buildings);
  const arrived = new Map<SweepVerb, Task[]>();
  const waiting: Tile[] = [];
  const atWork = new Set<Tile>();
  let refused: Failure | null = null;

  function take(verb: SweepVerb, task: Task): void {
    if (refused) {
      task.settle({ ok: false, failure: CANCELLED });
      return;
    }
    if (arrived.size === 0) setImmediate(cut);
    const same = arrived.get(verb);
    if (same) same.push(task);
    else arrived.set(verb, [task]);
  }

  /** Makes tiles of all that came in one turn. */
  function cut(): void {
    for (const [verb, tasks] of arrived) waiting.push(...tilesFor(check, verb, tasks, tiles));
    arrived.clear();
    goOn();
  }

  function goOn(): void {
    while (atWork.size < MOST_JOBS && waiting.length > 0) {
      const tile = waiting.shift()!;
      atWork.add(tile);
      void work(tile).finally(() => {
        atWork.delete(tile);
        goOn();
      });
    }
  }

  async function work({ id, verb, tasks }: Tile): Promise<void> {
    const requests = new Map(tasks.map(({ key, request }) => [key, request]));
    const job = { ground, verb, ...withoutCommon(requests) };
    try {
      const answer = await queue.answer(id, job);
      if (answer.refused) return refuse(answer);
      for (const { key, settle } of tasks) settle(answer.outcomes[key]!);
    } catch (thrown) {
      for (const task of tasks) {
        if (tasks.length === 1) task.settle({ ok: false, failure: lost(thrown) });
        else waiting.push({ id: jobId(check, verb, `alone ${task.key}`), verb, tasks: [task] });
      }
    }
  }

  function refuse({ host, refused: why }: TileAnswer): void {
    refused ??= failureOf("queue/worker-refused", { host, why: why! });
    const tasks = [...atWork, ...waiting.splice(0)].flatMap((tile) => tile.tasks);
    for (const { settle } of tasks) settle({ ok: false, failure: CANCELLED });
  }

  return {
    refused: () => refused,
    run: <V extends SweepVerb>(verb: V, request: RequestOf<V>) =>
      new Promise<ResponseOf<V>>((resolve, reject) => {
        const settle = (outcome: Outcome<unknown>) =>
          outcome.ok
            ? resolve(outcome.value as ResponseOf<V>)
            : reject(new Refusal(outcome.failure));
        take(verb, { key: keyOf(request), request, settle });
      }),
    close: async () => {
      const count = new Set(tiles.values()).size;
      const ids = Array.from({ length: count }, (_, k) =>
        jobId(check, "checkBuilding", tileName(k)),
      );
      await queue.close([...ids, ...[...atWork].map(({ id }) => id)]);
    },
  };
}

function keyOf(request: RequestOf<SweepVerb>): string {
  if ("building" in request) return request.building.id;
  return JSON.stringify((request as CheckGroupRequest).members.map(({ id }) => id));
}

function tileName(tile: number): string {
  return `tile ${tile}`;
}

/** Buildings by the tiles of the whole list, groups as they came. */
function tilesFor(
  check: string,
  verb: SweepVerb,
  tasks: readonly Task[],
  tiles: ReadonlyMap<string, number>,
): Tile[] {
  if (verb === "checkGroup") {
    return cutIntoTiles(tasks).map((some) => {
      const name = some.map(({ key }) => key).join(" ");
      return { id: jobId(check, verb, name), verb, tasks: some };
    });
  }
  const byTile = new Map<number, Task[]>();
  for (const task of tasks) {
    const tile = tiles.get(task.key)!;
    const same = byTile.get(tile);
    if (same) same.push(task);
    else byTile.set(tile, [task]);
  }
  return [...byTile]
    .sort(([a], [b]) => a - b)
    .map(([tile, some]) => ({ id: jobId(check, verb, tileName(tile)), verb, tasks: some }));
}

const CANCELLED = failureOf("cancelled", { overtaken: false });

function lost(thrown: unknown): Failure {
  const cause = thrown instanceof Error ? thrown.message : String(thrown);
  return failureOf("queue/worker-lost", { cause });
}

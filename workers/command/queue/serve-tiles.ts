import { hostname } from "node:os";
import { asFailure, type Failure, type Outcome, refusal } from "../../../shared/failure.ts";
import type { RequestOf } from "../../../shared/messages.ts";
import {
  begunWords,
  doneWords,
  JOB_BACK,
  note,
  refusedWords,
} from "../../../shared/words/terminal.ts";
import { terrainFiles } from "../files.ts";
import { type GroundPool, groundPool, type SweepVerb } from "../thread-pool.ts";
import type { QueueAddress } from "./address.ts";
import { connect } from "./connect.ts";
import { programVersion } from "./program-version.ts";
import { queueOf, type SharedGround, type TileAnswer, type TileJob } from "./tile-job.ts";
import { onceAnOutage } from "./tile-queue.ts";

/** How a worker works. */
interface ServeOptions {
  readonly threads: number;
  /** A worker that has not been heard of for so long is taken to be lost, seconds; its jobs go to others. */
  readonly lostAfterS: number;
  readonly say: (message: string) => void;
}

/** One more than there are threads, so that none waits for the next job. */
const AHEAD = 1;

/**
 * Takes jobs of this very program out of its queue until it is closed, which ends the jobs at work first.
 * @throws Refusal as of `connect`
 */
export async function serveTiles(
  address: QueueAddress,
  { threads, lostAfterS, say }: ServeOptions,
): Promise<{ readonly version: string; readonly close: () => Promise<void> }> {
  const [connection, version] = await Promise.all([connect(address), programVersion()]);
  const { Worker } = await import("bullmq");
  const pool = groundPool(threads);
  const refusals = refusalsOf();
  const answer = async ({ data }: { readonly data: TileJob }): Promise<TileAnswer> => {
    const host = hostname();
    const refused = await refusals(data);
    if (refused) {
      say(refusedWords(refused));
      return { host, refused, outcomes: {} };
    }
    const tasks = { count: Object.keys(data.requests).length, of: OF_TASKS[data.verb] };
    say(begunWords(tasks));
    const startedAt = performance.now();
    const outcomes = await outcomesOf(pool, data);
    say(doneWords(tasks, (performance.now() - startedAt) / 1000));
    return { host, refused: null, outcomes };
  };
  const worker = new Worker<TileJob, TileAnswer>(queueOf(version), answer, {
    connection,
    concurrency: threads + AHEAD,
    ...{ lockDuration: 1000 * lostAfterS, stalledInterval: 1000 * lostAfterS },
  });
  worker.on("error", onceAnOutage(address, say));
  worker.on("stalled", () => say(note(JOB_BACK)));
  await worker.waitUntilReady();
  return {
    version,
    close: async () => {
      await worker.close();
      await pool.close();
    },
  };
}

const OF_TASKS = { checkBuilding: "buildings", checkGroup: "groups" } as const;

async function outcomesOf(
  pool: GroundPool,
  { ground, verb, common, requests }: TileJob,
): Promise<TileAnswer["outcomes"]> {
  const { paths, verticalUnit, marks } = ground;
  const tasks = Object.entries(requests).map(async ([key, own]) => {
    const request = { ...common, ...own } as RequestOf<SweepVerb>;
    const outcome = await pool
      .run({ paths, verticalUnit, marks }, verb, request)
      .then((value): Outcome<unknown> => ({ ok: true, value }))
      .catch((thrown): Outcome<unknown> => ({ ok: false, failure: asFailure(thrown) }));
    return [key, outcome] as const;
  });
  return Object.fromEntries(await Promise.all(tasks));
}

/** Why a job cannot be taken here: its elevation data are not here. */
function refusalsOf(): (job: TileJob) => Promise<Failure | null> {
  const same = new Set<string>();
  return async (job) => {
    try {
      const key = JSON.stringify(job.ground);
      if (!same.has(key)) await compare(job.ground);
      same.add(key);
      return null;
    } catch (thrown) {
      return asFailure(thrown);
    }
  };
}

/** @throws Refusal `queue/no-raster`, `queue/other-raster` */
async function compare({ paths, files }: SharedGround): Promise<void> {
  const here = await terrainFiles(paths).catch((thrown) => {
    throw refusal("queue/no-raster", { why: asFailure(thrown) });
  });
  const came = here.map(({ name, blob }) => ({ name, bytes: blob.size }));
  const isSame = ({ name, bytes }: (typeof came)[number], k: number) =>
    files[k]?.name === name && files[k].bytes === bytes;
  if (came.length === files.length && came.every(isSame)) return;
  throw refusal("queue/other-raster", { expected: files, came });
}

import { randomUUID } from "node:crypto";
import type { Job } from "bullmq";
import { note, noWorkerWords, outageWords } from "../../../shared/words/terminal.ts";
import type { QueueAddress } from "./address.ts";
import { connect } from "./connect.ts";
import { queueOf, type TileAnswer, type TileJob } from "./tile-job.ts";

/** Jobs in Redis and their answers. */
export interface TileQueue {
  /**
   * The answer of a job, which is submitted unless one of that name is there from a run before. The job is removed.
   * @throws Error with the queue's reason, where no worker could end it
   */
  readonly answer: (id: string, job: Omit<TileJob, "by">) => Promise<TileAnswer>;
  /** Removes the jobs named, as far as no worker is at work on them, and closes the connections. */
  readonly close: (ids: readonly string[]) => Promise<void>;
}

/** Answers that nobody fetches are kept so long, seconds. */
const KEPT = { age: 7 * 24 * 3600 };
/** Events are for promptness: a missed one is made up for at the next look. */
const MOST_EVENTS = 200;
const LOOK_MS = 2000;
/** It is said so often that nobody works, and for the first time after so long, milliseconds. */
const SAY_MS = 30_000;
const SAY_FIRST_MS = 5000;
/** Jobs at work are waited for so long at the end, milliseconds. */
const END_MS = 10_000;

/** @throws Refusal as of `connect` */
export async function openTileQueue(
  address: QueueAddress,
  version: string,
  say: (message: string) => void,
): Promise<TileQueue> {
  const connection = await connect(address);
  const { Queue, QueueEvents } = await import("bullmq");
  const options = { connection, streams: { events: { maxLen: MOST_EVENTS } } };
  const queue = new Queue(queueOf(version), options);
  const events = new QueueEvents(queueOf(version), { connection });
  const by = randomUUID();
  const pending = new Map<string, (ended: Job | null) => void>();
  const sayLost = onceAnOutage(address, say);
  queue.on("error", sayLost);
  events.on("error", sayLost);

  /** Ends the wait for a job that has ended, or that Redis does not have any more. */
  const look = async (id: string) => {
    const state = await queue.getJobState(id);
    if (state !== "completed" && state !== "failed" && state !== "unknown") return;
    const job = (await queue.getJob(id)) ?? null;
    pending.get(id)?.(job);
    pending.delete(id);
  };
  const lookSoon = ({ jobId }: { readonly jobId: string }) => {
    if (pending.has(jobId)) look(jobId).catch(sayLost);
  };
  events.on("completed", lookSoon);
  events.on("failed", lookSoon);
  await events.waitUntilReady();

  let saidAtMs = performance.now() - SAY_MS + SAY_FIRST_MS;
  let isLooking = false;
  const lookAtAll = async () => {
    if (isLooking) return;
    isLooking = true;
    try {
      for (const id of [...pending.keys()]) await look(id);
      if (pending.size === 0 || performance.now() - saidAtMs < SAY_MS) return;
      saidAtMs = performance.now();
      if ((await queue.getWorkersCount()) === 0) say(note(noWorkerWords(address.shown, version)));
    } finally {
      isLooking = false;
    }
  };
  const timer = setInterval(() => void lookAtAll().catch(sayLost), LOOK_MS);

  return {
    async answer(id, job) {
      for (;;) {
        const data: TileJob = { ...job, by };
        await queue.add("tile", data, { jobId: id, removeOnComplete: KEPT, removeOnFail: KEPT });
        const ended = await new Promise<Job<TileJob, TileAnswer> | null>((resolve) => {
          pending.set(id, resolve);
          look(id).catch(sayLost);
        });
        if (!ended) continue;
        await queue.remove(id);
        const { failedReason, returnvalue } = ended;
        const isOfFormerRun = ended.data.by !== by;
        if (failedReason && !isOfFormerRun) throw new Error(failedReason);
        if (failedReason || !hasAll(returnvalue, job, isOfFormerRun)) continue;
        return returnvalue;
      }
    },
    async close(ids) {
      clearInterval(timer);
      const endAtMs = performance.now() + END_MS;
      for (const id of ids) {
        while ((await queue.remove(id)) === 0 && performance.now() < endAtMs) {
          if ((await queue.getJobState(id)) === "unknown") break;
          await new Promise((done) => setTimeout(done, 100));
        }
      }
      await Promise.all([queue.close(), events.close()]);
    },
  };
}

/** Whether an answer is one to these tasks: one that a former run got may be of fewer, or a refusal since put right. */
function hasAll(answer: TileAnswer, { requests }: Omit<TileJob, "by">, isOfFormerRun: boolean) {
  if (answer.refused) return !isOfFormerRun;
  return Object.keys(requests).every((key) => key in answer.outcomes);
}

/** Says what goes wrong between this machine and the queue, once in a while. */
export function onceAnOutage(
  { shown }: QueueAddress,
  say: (message: string) => void,
): (error: unknown) => void {
  let saidAtMs = Number.NEGATIVE_INFINITY;
  return (error) => {
    if (performance.now() - saidAtMs < SAY_MS) return;
    saidAtMs = performance.now();
    const { code, message } = error as { readonly code?: string; readonly message?: string };
    say(note(outageWords(shown, code ?? null, message ?? "")));
  };
}

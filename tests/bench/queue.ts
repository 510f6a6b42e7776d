import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { checkBuildings } from "../../shared/buildings/check-buildings.ts";
import { readQueueAddress } from "../../workers/command/queue/address.ts";
import { tilePool } from "../../workers/command/queue/tile-pool.ts";
import { type ThreadPool, threadPool } from "../../workers/command/thread-pool.ts";
import { ended, startRedis } from "../helpers/redis-server.ts";
import { engineOn, seededTown, townPlan, townRaster } from "../helpers/sweep-town.ts";
import { runDrystead } from "../helpers/terminal.ts";
import type { BenchRow } from "./row.ts";

/**
 * The same check by two threads of this process and by one worker of two threads at a queue, one after the other; both
 * have opened the elevation data before. The processor time of all that take part (submitter, Redis, worker) stands
 * beside the time that passed, which on a busy machine says little. `DRYSTEAD_BUILDINGS=100` names another count. The
 * peer of the queue is the pool.
 */
const THREADS = 2;
/** Source: proc(5), which counts in hundredths of a second on Linux. */
const TICKS = 100;

/** Processor time that a process has used, seconds; NaN where the system does not say. */
function usedS(pid: number | undefined): number {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, "utf8")
      .replace(/^.*\) /, "")
      .split(" ");
    return (Number(fields[11]) + Number(fields[12])) / TICKS;
  } catch {
    return Number.NaN;
  }
}

/** Rows of the bench. */
export async function rows(): Promise<readonly BenchRow[]> {
  const count = Number(process.env.DRYSTEAD_BUILDINGS ?? "1000");
  const town = seededTown(count);
  const bytes = townRaster(town.sideM, town.heightAt);
  const folder = mkdtempSync(join(tmpdir(), "drystead-bench-"));
  const path = join(folder, "town.tif");
  writeFileSync(path, bytes);
  const ground = { paths: [path], verticalUnit: "metre" as const, marks: [] };
  const engine = await engineOn(bytes);
  const question = { plan: townPlan(town.waterM), buildings: town.buildings };
  const pool = threadPool(THREADS, ground);
  const redis = await startRedis();
  const queue = ["--queue", redis.address];
  const worker = runDrystead(["sweep-worker", ...queue, "--workers", String(THREADS)]);
  await worker.says(/Taking jobs/);
  const [{ traceBuildings }, buildings] = [engine, town.buildings];
  const measured = async (by: ThreadPool, atOnce: number, of: typeof question) => {
    const startedAt = performance.now();
    const checkBuilding: typeof engine.checkBuilding = (request) =>
      by.run("checkBuilding", request);
    const checkGroup: typeof engine.checkGroup = (request) => by.run("checkGroup", request);
    await checkBuildings({ traceBuildings, checkBuilding, checkGroup }, atOnce, of);
    return performance.now() - startedAt;
  };
  const byQueue = async (of: typeof question, check: string) => {
    const files = [{ name: "town.tif", bytes: bytes.length }];
    const shared = { ...ground, files };
    const tiles = await tilePool(readQueueAddress(redis.address), {
      ...{ buildings: of.buildings, check, ground: shared, say: () => {} },
    });
    const ms = await measured(tiles, of.buildings.length, of);
    await tiles.close();
    return ms;
  };
  const cpuS = () => usedS(process.pid) + usedS(worker.child.pid) + usedS(redis.pid);
  try {
    const few = { ...question, buildings: buildings.slice(0, 32) };
    await measured(pool, THREADS, few);
    await byQueue(few, "few");
    const begunS = cpuS();
    const poolMs = await measured(pool, THREADS, question);
    const betweenS = cpuS();
    const queueMs = await byQueue(question, "all");
    const [poolS, queueS] = [betweenS - begunS, cpuS() - betweenS];
    const more = (queue: number, than: number) => `${(100 * (queue / than - 1)).toFixed(1)} %`;
    const row = { promisedMs: null, peer: `the pool, ${THREADS} threads of one process` };
    const name = `${count} buildings by a queue, one worker of ${THREADS} threads`;
    return [
      {
        ...row,
        name: `${name} (${more(queueMs, poolMs)} more than the pool)`,
        ...{ ms: queueMs, peerMs: poolMs },
      },
      {
        ...row,
        name: `the same, processor time (${more(queueS, poolS)} more)`,
        ...{ ms: 1000 * queueS, peerMs: 1000 * poolS },
      },
    ];
  } finally {
    await pool.close();
    await ended(worker.child, "SIGTERM");
    await redis.stop();
    rmSync(folder, { recursive: true });
  }
}

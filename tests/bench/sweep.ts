import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { checkBuildings } from "../../shared/buildings/check-buildings.ts";
import type { CheckBuildingRequest } from "../../shared/buildings/check-types.ts";
import { threadPool } from "../../workers/command/thread-pool.ts";
import { engineOn, seededTown, townPlan, townRaster } from "../helpers/sweep-town.ts";
import type { BenchRow } from "./row.ts";

/**
 * The check of seeded buildings on a made town at 1 m, its water traced in this thread, its lines searched in two
 * others: from the open raster to the last group. Processor time of all threads stands beside the time that passed,
 * which on a busy machine says little; memory is that of the process with its threads, once a quarter is done and at
 * the end. `DRYSTEAD_BUILDINGS=1000,10000`
 * names other counts. The peer does one Dijkstra
 * search a building on a grid of as many nodes as ours has, and neither a ring nor its bags: scikit-image's
 * MCP_Geometric (8 neighbors, compiled), where Debian's python3-skimage is installed.
 */
const THREADS = 2;
const SEED = 11;
const PROMISED_MS = 30_000;
/** Each of so many buildings is checked with and without further stages. */
const STAGED = 60;
/** So many at once, since one is lost in the noise. */
const STAGES = 8;

function cpuS(since?: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1e6;
}

async function townRow(
  count: number,
  peer: Pick<BenchRow, "peer" | "peerMs"> | null,
): Promise<BenchRow> {
  const town = seededTown(count, SEED);
  const bytes = townRaster(town.sideM, town.heightAt);
  const folder = mkdtempSync(join(tmpdir(), "drystead-bench-"));
  const path = join(folder, "town.tif");
  writeFileSync(path, bytes);
  const engine = await engineOn(bytes);
  const pool = threadPool(THREADS, { paths: [path], verticalUnit: "metre", marks: [] });
  try {
    const question = { plan: townPlan(town.waterM), buildings: town.buildings };
    const memory: number[] = [];
    let done = 0;
    const before = process.cpuUsage();
    const startedAt = performance.now();
    const found = await checkBuildings(
      {
        traceBuildings: engine.traceBuildings,
        checkBuilding: (request) => pool.run("checkBuilding", request),
        checkGroup: (request) => pool.run("checkGroup", request),
      },
      THREADS,
      question,
      {
        onChecked: () => {
          done++;
          if (done === Math.ceil(count / 4) || done === count) memory.push(memoryMB());
        },
      },
    );
    const ms = performance.now() - startedAt;
    const searched = found.buildings.filter(({ line }) => line !== null).length;
    const perBuilding = Math.round((1000 * cpuS(before)) / count);
    return {
      name: `${count} buildings of seed ${SEED}, ${searched} with a line, ${found.groupsTried.tried} groups tried, ${THREADS} threads (${cpuS(before).toFixed(0)} s of processors, ${perBuilding} ms a building; ${memory.join(" and ")} MB)`,
      ms,
      promisedMs: count === 1000 ? PROMISED_MS : null,
      peer: peer?.peer ?? null,
      peerMs: peer?.peerMs ?? null,
    };
  } finally {
    await pool.close();
    rmSync(folder, { recursive: true });
  }
}

function memoryMB(): number {
  return Math.round(process.memoryUsage().rss / 1e6);
}

/** Processor time of a line with a second stage and without, one after the other for each building. */
async function stageRows(): Promise<BenchRow[]> {
  const town = seededTown(STAGED);
  const engine = await engineOn(townRaster(town.sideM, town.heightAt));
  const requests: CheckBuildingRequest[] = [];
  const noGroups = { ...engine, checkGroup: async () => null };
  await checkBuildings(
    {
      ...noGroups,
      checkBuilding: (request) => {
        requests.push(request);
        return engine.checkBuilding(request);
      },
    },
    1,
    { plan: townPlan(town.waterM), buildings: town.buildings },
  );
  const levelsM = Array.from({ length: STAGES }, (_, k) => town.waterM + 0.05 * (k + 1));
  let [plain, staged] = [0, 0];
  for (const request of requests) await engine.checkBuilding(request);
  for (const request of requests) {
    const before = process.cpuUsage();
    await engine.checkBuilding(request);
    const between = process.cpuUsage();
    await engine.checkBuilding({ ...request, levelsM });
    staged += cpuS(between);
    plain += cpuS(before) - cpuS(between);
  }
  const each = (seconds: number) => (1000 * seconds) / requests.length;
  const row = { peer: null, peerMs: null };
  return [
    { ...row, name: "one building, processor time", ms: each(plain), promisedMs: null },
    {
      ...row,
      name: "each further stage of it, processor time",
      ms: each(staged - plain) / STAGES,
      promisedMs: each(plain) / 5,
    },
  ];
}

const SKIMAGE = `
import sys, time, numpy
from skimage.graph import MCP_Geometric
side, count = int(sys.argv[1]), int(sys.argv[2])
prices = 0.1 + numpy.random.default_rng(1).random((side, side))
begun = time.perf_counter()
for _ in range(count): MCP_Geometric(prices).find_costs([(0, 0)])
print((time.perf_counter() - begun) * 1000)
`;
/** Nodes along a side of the grid near a building of 12 m, half a meter apart. */
const NODES = 124;

function skimage(count: number): Pick<BenchRow, "peer" | "peerMs"> {
  const words = ["-c", SKIMAGE, String(NODES), String(count)];
  const { status, stdout } = spawnSync("/usr/bin/python3", words);
  const peer = "scikit-image MCP_Geometric, one Dijkstra a building, one thread";
  if (status !== 0) return { peer: `${peer}: not installed`, peerMs: null };
  return { peer, peerMs: Number(stdout.toString()) };
}

/** Rows of the bench. */
export async function rows(): Promise<readonly BenchRow[]> {
  const counts = (process.env.DRYSTEAD_BUILDINGS ?? "100,1000").split(",").map(Number);
  const found = await stageRows();
  for (const count of counts)
    found.push(await townRow(count, count === 1000 ? skimage(count) : null));
  return found;
}

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { connectedWater } from "../../workers/water/connected-water.ts";
import { buildWall, type LeveeWall, removeWall } from "../../workers/water/levee-wall.ts";
import { sillSearch } from "../../workers/water/sill-search.ts";
import { cellIndex, type WaterGrid } from "../../workers/water/water-grid.ts";
import { EDGE, gridFrom, type Heights } from "../helpers/water-grids.ts";
import type { BenchRow } from "./row.ts";

const SIDES = [1024, 2048, 4096];
const LEVEL_M = 100;
const RUNS = 9;
const PROMISED_MS: ReadonlyMap<number, number> = new Map([[2048, 100]]);
/** On 16 million cells: this many times what the labeller takes in the same run. */
const PROMISED_TIMES = 5;

const LABELLER = `
import sys, time, json
import numpy as np, scipy
from scipy.ndimage import label
side, level, runs, path = int(sys.argv[1]), float(sys.argv[2]), int(sys.argv[3]), sys.argv[4]
low = np.fromfile(path, dtype="<f4").reshape(side, side) < level
eight = np.ones((3, 3))
times = []
for _ in range(runs):
    start = time.perf_counter()
    found, count = label(low, structure=eight)
    times.append(1000 * (time.perf_counter() - start))
edge = np.unique(np.concatenate([found[0], found[-1], found[:, 0], found[:, -1]]))
wet = int(np.isin(found, edge[edge > 0]).sum())
print(json.dumps({"ms": sorted(times)[runs // 2], "wet": wet, "version": scipy.__version__}))
`;

/**
 * Connected water and sills on 1, 4 and 16 million cells of rolling ground about half under water; the growth
 * is in the names, in nanoseconds a cell. The peer labels the same cells with scipy.ndimage.label, 8-connected,
 * where python3 with scipy is installed: it is given which cells are low and tells all pools apart, ours starts
 * from heights and tells connected water from low ground. Both must agree on the number of wet cells.
 */
export async function rows(): Promise<BenchRow[]> {
  return SIDES.flatMap((side) => {
    const heights = rolling(side);
    const peer = labeller(heights);
    const grid = gridFrom(heights);
    let codes = connectedWater(grid, EDGE, LEVEL_M);
    const wet = codes.reduce((count, code) => count + (code === 2 ? 1 : 0), 0);
    if (peer && peer.wet !== wet) throw new Error(`Ours has ${wet} wet cells, scipy ${peer.wet}.`);
    const tracedMs = median(() => {
      codes = connectedWater(grid, EDGE, LEVEL_M);
    });
    const middle = cellIndex(grid, side / 2, side / 2);
    const sillMs = median(() => {
      sillSearch(grid, EDGE, null).find([middle]);
    });
    const wall = ringAbout(grid);
    const leveeMs = median(() => {
      buildWall(grid, wall, LEVEL_M + 0.3);
      const water = { codes: connectedWater(grid, EDGE, LEVEL_M), levelM: LEVEL_M };
      sillSearch(grid, EDGE, water).find([middle]);
      removeWall(grid, wall);
    });
    const cells = `${Math.round(side ** 2 / 2 ** 20)} M cells`;
    const named = (what: string, ms: number) =>
      `${what}, ${cells} (${((1e6 * ms) / side ** 2).toFixed(1)} ns a cell)`;
    const promisedMs =
      PROMISED_MS.get(side) ?? (peer && side === 4096 ? PROMISED_TIMES * peer.ms : null);
    const alone = { peer: null, peerMs: null, promisedMs: null };
    return [
      {
        name: named("connected water", tracedMs),
        ms: tracedMs,
        peer: peer && `scipy.ndimage.label ${peer.version}`,
        peerMs: peer?.ms ?? null,
        promisedMs,
      },
      { name: named("sill of one place", sillMs), ms: sillMs, ...alone },
      { name: named("a levee built, water and sill with it", leveeMs), ms: leveeMs, ...alone },
    ];
  });
}

/** Hills and hollows of three sizes; no random numbers. */
function rolling(side: number): Heights {
  const heightM = new Float32Array(side * side);
  for (let row = 0, cell = 0; row < side; row++) {
    const [a, b, c] = [Math.sin(row / 170), Math.cos(row / 23), Math.sin(row / 2.9)];
    for (let column = 0; column < side; column++, cell++) {
      const broad = 0.8 * a * Math.cos(column / 210) + 0.3 * Math.sin((row + column) / 330);
      heightM[cell] =
        LEVEL_M + broad + 0.3 * b * Math.sin(column / 19) + 0.05 * c * Math.cos(column / 2.3);
    }
  }
  return { columns: side, rows: side, heightM };
}

/** A square levee of 100 cells a side round the middle. */
function ringAbout(grid: WaterGrid): LeveeWall {
  const middle = grid.columns / 2;
  const around = Array.from({ length: 400 }, (_, k) => {
    const [side, along] = [Math.floor(k / 100), (k % 100) - 50];
    const [x, y] = [
      [along, -50],
      [50, along],
      [-along, 50],
      [-50, -along],
    ][side]!;
    return cellIndex(grid, middle + x!, middle + y!);
  });
  const cells = Int32Array.from(new Set(around));
  return {
    cells,
    chainageM: Float64Array.from(cells.keys()),
    groundM: Float32Array.from(cells, (cell) => grid.heightM[cell]!),
    runsOff: false,
  };
}

function median(work: () => void): number {
  work();
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[RUNS >> 1]!;
}

interface Labelled {
  readonly ms: number;
  readonly wet: number;
  readonly version: string;
}

/** The same grid labelled in the same run; null where python3 with scipy is not installed. */
function labeller({ columns, heightM }: Heights): Labelled | null {
  if (spawnSync("python3", ["-c", "import scipy.ndimage"]).status !== 0) return null;
  const folder = mkdtempSync(join(tmpdir(), "drystead-bench-"));
  try {
    const path = join(folder, "heights.f32");
    writeFileSync(path, new Uint8Array(heightM.buffer));
    const words = ["-c", LABELLER, `${columns}`, `${LEVEL_M}`, `${RUNS}`, path];
    const done = spawnSync("python3", words, { encoding: "utf8" });
    if (done.status !== 0) throw new Error(done.stderr);
    return JSON.parse(done.stdout) as Labelled;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

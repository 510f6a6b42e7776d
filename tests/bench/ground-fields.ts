import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { simulateGround } from "../../shared/ground-uncertainty/simulate-ground.ts";
import type { LineOnGround } from "../../shared/walk-line.ts";
import { type Corner, gridGround, PLANE, planWith, ring, size } from "../helpers/grounds.ts";
import type { BenchRow } from "./row.ts";

const RUNS = 5;
const PROMISED_MS = 1000;
const PEER = fileURLToPath(new URL("ground-fields.py", import.meta.url));

/** Ground of 1 m cells that makes heights from about 1 to 6 ft; no random numbers. */
const ground = gridGround(
  600,
  1,
  (x, y) => 100 + 0.5 * Math.sin(x / 30) + 0.4 * Math.cos(y / 23) + 0.05 * Math.sin(3.1 * x),
);

function ringOf(lengthM: number, corners: number): LineOnGround {
  const radiusM = lengthM / (2 * corners * Math.sin(Math.PI / corners));
  const places = Array.from({ length: corners }, (_, k): Corner => {
    const angle = (2 * Math.PI * k) / corners;
    return [radiusM * Math.cos(angle), radiusM * Math.sin(angle)];
  });
  const alignment = ring(places);
  const plan = { ...planWith(100.6, { ground: { rmseM: 0.1 } }), alignments: [alignment] };
  return { plan, alignment, plane: PLANE, ground };
}

/**
 * One line sized on 500 grounds, and on 100 more for what surveying it would leave open: by the clock, and in
 * processor time, which other work on the machine does not change as much. The peer is numpy with scipy, in processor
 * time: the same number of errors drawn on the same walk by one Cholesky factor, with level-ground sections.
 */
export async function rows(): Promise<BenchRow[]> {
  return [["860 ft", ringOf(262, 7)] as const, ["1 km", ringOf(1000, 24)] as const].flatMap(
    ([name, inputs]) => rowsOf(`size a ring of ${name} on 500 grounds`, inputs),
  );
}

function rowsOf(name: string, inputs: LineOnGround): BenchRow[] {
  simulateGround(inputs);
  const runs = Array.from({ length: RUNS }, () => {
    const [cpu, began] = [process.cpuUsage(), performance.now()];
    simulateGround(inputs);
    const { user, system } = process.cpuUsage(cpu);
    return { ms: performance.now() - began, cpuMs: (user + system) / 1000 };
  });
  const peer = peerOf(inputs);
  return [
    { name, ms: median(runs.map(({ ms }) => ms)), promisedMs: PROMISED_MS, ...NO_PEER },
    {
      name: `${name}, processor time`,
      ms: median(runs.map(({ cpuMs }) => cpuMs)),
      promisedMs: PROMISED_MS,
      ...peer,
    },
  ];
}

const NO_PEER = { peer: null, peerMs: null };

function peerOf({ plan, alignment, ground: sampler }: LineOnGround) {
  const { walk } = size(plan, alignment, sampler, true);
  const { section, practice } = plan;
  const { rmseM, biasShare, correlatedShare, rangeM } = plan.ground;
  const xy = Array.from(walk.chainageM, (_, i) =>
    PLANE.toPlane([walk.lonLat[2 * i]!, walk.lonLat[2 * i + 1]!]),
  );
  const done = spawnSync("python3", [PEER], {
    encoding: "utf8",
    input: JSON.stringify({
      ...{ x: xy.map(([x]) => x), y: xy.map(([, y]) => y) },
      height: Array.from(walk.crestM, (crestM, i) => crestM - walk.groundM[i]!),
      chainage: Array.from(walk.chainageM),
      ...{ rmse: rmseM, biasShare, correlatedShare, range: rangeM },
      ...{ baseRatio: section.baseRatio, crown: section.crownM, bag: section.bag.placedVolumeM3 },
      spareShare: practice.spareShare,
    }),
  });
  if (done.status !== 0) return { peer: "python3 has no numpy and scipy here", peerMs: null };
  return { peer: "numpy and scipy, level ground", peerMs: JSON.parse(done.stdout).ms as number };
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

import { along, lineString } from "@turf/turf";
import proj4 from "proj4";
import { Bench } from "tinybench";
import { layLine } from "../../shared/alignment.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { sizeLine } from "../../shared/size-line.ts";
import { type Corner, gridGround, PLANE, planWith, ring, structure } from "../helpers/grounds.ts";
import type { BenchRow } from "./row.ts";

const RING_M = 1000;
const CELLS = 1200;
const CORNERS = 24;
const STEP_M = 0.5;

/** Ground of 1 m cells that makes heights from about 1 to 6 ft; no random numbers. */
const ground = gridGround(
  CELLS,
  1,
  (x, y) =>
    100 + 0.5 * Math.sin(x / 30) + 0.4 * Math.cos(y / 23) + 0.05 * Math.sin(3.1 * x + 1.7 * y),
);

/** A ring of 24 corners and 1 km round a house, with a barn beside its line. */
function ringOfOneKilometre(): readonly Corner[] {
  const radiusM = RING_M / (2 * CORNERS * Math.sin(Math.PI / CORNERS));
  return Array.from({ length: CORNERS }, (_, k): Corner => {
    const angle = (2 * Math.PI * k) / CORNERS;
    return [radiusM * Math.cos(angle), radiusM * Math.sin(angle)];
  });
}

/**
 * One sizing of a 1 km ring on 1 m ground: transects, stations, quantities and checks, as while a corner is
 * dragged and as at rest. The peer does the smallest part of it the way general tools do: the elevation
 * profile along the same ring at the same step, each point found with Turf's `along`, taken to the ground's
 * UTM zone with proj4 (a converter made once) and read from the same grid; no transects and no quantities.
 */
export async function rows(): Promise<BenchRow[]> {
  const alignment = ring(ringOfOneKilometre());
  const plan = planWith(100.6, {
    structures: [
      structure("House", [
        [10, 0],
        [30, 0],
        [30, 20],
        [10, 20],
      ]),
      structure("Barn", [
        [125, -12],
        [149, -12],
        [149, 12],
        [125, 12],
      ]),
    ],
  });
  const plane = planPlane(PLANE.origin);
  const lengthKm = layLine(alignment, plane).lengthM / 1000;
  const path = lineString([...alignment.corners, alignment.corners[0]!].map((at) => [...at]));
  const zone = Math.floor((PLANE.origin[0] + 180) / 6) + 1;
  const utm = proj4(`+proj=utm +zone=${zone} +datum=WGS84 +units=m +no_defs`);
  const [eastM, northM] = utm.forward([...PLANE.origin]) as [number, number];
  const heights = new Float64Array(Math.ceil(RING_M / STEP_M));

  const bench = new Bench({ time: 1500, warmupTime: 500 });
  bench
    .add("dragged", () => sizeLine({ plan, alignment, plane, ground, live: true }))
    .add("at rest", () => sizeLine({ plan, alignment, plane, ground, live: false }))
    .add("peer", () => {
      for (let i = 0; i < heights.length; i++) {
        const at = along(path, Math.min(i * 0.001 * STEP_M, lengthKm), { units: "kilometers" });
        const [x, y] = utm.forward(at.geometry.coordinates) as [number, number];
        heights[i] = ground.heightAt(x - eastM, y - northM);
      }
    });
  await bench.run();

  const medianOf = (name: string): number => {
    const result = bench.getTask(name)?.result;
    if (result?.state !== "completed") throw new Error(`The bench "${name}" did not complete.`);
    return result.latency.p50;
  };
  const peer = {
    peer: "profile alone, Turf along + proj4",
    peerMs: medianOf("peer"),
  };
  return [
    {
      name: "size a 1 km ring on 1 m ground, while dragged",
      ms: medianOf("dragged"),
      promisedMs: 10,
      ...peer,
    },
    {
      name: "size a 1 km ring on 1 m ground, with plus and minus RMSE",
      ms: medianOf("at rest"),
      promisedMs: null,
      ...peer,
    },
  ];
}

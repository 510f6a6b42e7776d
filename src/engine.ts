import { signal } from "@preact/signals";
import type {
  BuildingsCheck,
  BuildingsOptions,
  BuildingsQuestion,
} from "../shared/buildings/check-types.ts";
import type { Failure } from "../shared/failure.ts";
import type { LoneValue } from "../shared/ground-marks.ts";
import { loadPart } from "../shared/load-part.ts";
import type { Engine, OpenTerrainRequest } from "../shared/messages.ts";
import terrainWorker from "../workers/terrain.worker.ts?worker&url";
import { giveRange } from "./browser/address-ranges.ts";
import { underPagePolicy } from "./browser/page-policy.ts";
import { enginePool } from "./engine/pool.ts";
import { makeRemoteEngine } from "./engine/remote.ts";
import { splitEngine } from "./engine/split.ts";

/** How often to look whether a working engine has said anything, milliseconds. */
const SILENCE_MS = 10_000;
const CHECK = () => import("../shared/buildings/check-buildings.ts");
const WORKER = underPagePolicy(terrainWorker);

/** The last restart of a worker, with what broke it if anything did; null before the first. */
export const restarted = signal<{ readonly failure: Failure | null } | null>(null);
/** The last call that failed by an error in the program; null before the first. */
export const broken = signal<Failure | null>(null);
/** The last height met in reading that may mark missing data; null before the first. */
export const metMark = signal<LoneValue | null>(null);

function inWorker() {
  return makeRemoteEngine(() => new Worker(WORKER, { type: "module" }), {
    silenceMs: SILENCE_MS,
    onRestart: (failure) => {
      restarted.value = { failure };
    },
    onMark: (mark) => {
      metMark.value = mark;
    },
    onRange: giveRange,
    onBug: (failure) => {
      broken.value = failure;
    },
  });
}

let opened: OpenTerrainRequest | null = null;

const split = splitEngine(inWorker(), inWorker());

/** The engine in its two workers. The only place that knows where they are. */
export const engine: Engine = {
  ...split,
  async openTerrain(request, options) {
    const summary = await split.openTerrain(request, options);
    opened = request;
    return summary;
  },
};

/** Most workers that check buildings at the same time; each keeps elevation data of its own. */
const MOST_CHECKERS = 4;
/** One processor is left to the page. */
const checkers = Math.max(1, Math.min(MOST_CHECKERS, (navigator.hardwareConcurrency || 2) - 1));
/** Further workers start with the first check of many buildings. */
const pool = enginePool(engine, inWorker, checkers - 1, () => opened);

/**
 * Checks many buildings on the elevation data that is open. Each is told as soon as it is checked
 * (`options.onChecked`), then each group of neighbors that is worth it (`onGroup`); `options.signal` ends the check,
 * and `options.known` takes the answers of one that was cut off, so that only the rest is searched.
 * @throws Refusal `cancelled`, `buildings/no-water`, `ground/...`
 */
export async function checkBuildings(
  question: BuildingsQuestion,
  options?: BuildingsOptions,
): Promise<BuildingsCheck> {
  const check = await loadPart("the check of many buildings", CHECK);
  return check.checkBuildings(pool.engine, pool.atOnce, question, options);
}

import type { BuildingsEngine } from "../../shared/buildings/check-buildings.ts";
import type { Engine, OpenTerrainRequest } from "../../shared/messages.ts";

/** Several engines that share the tasks of a check of many buildings. */
interface EnginePool {
  readonly engine: BuildingsEngine;
  /** Tasks to give out at the same time. */
  readonly atOnce: number;
}

type OpenedFiles = () => OpenTerrainRequest | null;

/**
 * A pool of the first engine, which has the elevation data open, and of extra ones, each made when there is first a
 * task for it: it opens the same files before that. Where an extra one cannot open them the first does its task.
 * @param opened what is open in the first; null before anything is
 */
export function enginePool(
  first: Engine,
  spawn: () => Engine,
  extras: number,
  opened: OpenedFiles,
): EnginePool {
  const extra = () => onSameFiles(first, spawn, opened);
  const idle = [async () => first, ...Array.from({ length: extras }, extra)];
  const withOne = async <T>(work: (engine: Engine) => Promise<T>): Promise<T> => {
    const member = idle.shift();
    if (!member) return work(first);
    try {
      return await work(await member());
    } finally {
      idle.push(member);
    }
  };
  return {
    atOnce: idle.length,
    engine: {
      traceBuildings: (request, options) => first.traceBuildings(request, options),
      checkBuilding: (request, options) =>
        withOne((engine) => engine.checkBuilding(request, options)),
      checkGroup: (request, options) => withOne((engine) => engine.checkGroup(request, options)),
    },
  };
}

/** One extra engine with the files open that the first has, or the first where it cannot open them. */
function onSameFiles(first: Engine, spawn: () => Engine, opened: OpenedFiles) {
  let own: Engine | null = null;
  let last: { readonly files: OpenTerrainRequest; readonly ready: Promise<Engine> } | null = null;
  return (): Promise<Engine> => {
    const files = opened();
    if (!files) return Promise.resolve(first);
    if (last?.files === files) return last.ready;
    own ??= spawn();
    const engine = own;
    const ready = engine.openTerrain(files).then(
      () => engine,
      () => {
        last = null;
        return first;
      },
    );
    last = { files, ready };
    return ready;
  };
}

import { workerData } from "node:worker_threads";
import { asFailure, type Outcome } from "../../shared/failure.ts";
import type { Engine, RequestOf, ResponseOf } from "../../shared/messages.ts";
import { makeEngine } from "../engine.ts";
import { terrainFiles } from "./files.ts";
import type { PoolGround, SweepVerb } from "./thread-pool.ts";

/** A task of the pool. */
export interface ThreadTask<V extends SweepVerb = SweepVerb> {
  readonly verb: V;
  readonly request: RequestOf<V>;
}

let opened: Promise<Engine> | null = null;

/** The thread's own engine with the elevation data open; an opening that failed is tried again. */
function engine(): Promise<Engine> {
  if (opened) return opened;
  const opening = open(workerData as PoolGround);
  opening.catch(() => {
    opened = null;
  });
  opened = opening;
  return opening;
}

async function open({ paths, verticalUnit, marks }: PoolGround): Promise<Engine> {
  const made = makeEngine();
  await made.openTerrain({ files: await terrainFiles(paths), verticalUnit, marks });
  return made;
}

/** Does one task; a refusal comes back as a value, since threads copy errors without their code. */
export async function work<V extends SweepVerb>({
  verb,
  request,
}: ThreadTask<V>): Promise<Outcome<ResponseOf<V>>> {
  try {
    const answer = (await engine())[verb] as (of: RequestOf<V>) => Promise<ResponseOf<V>>;
    return { ok: true, value: await answer(request) };
  } catch (thrown) {
    return { ok: false, failure: asFailure(thrown) };
  }
}

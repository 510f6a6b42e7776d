import { asFailure, type Outcome } from "../../shared/failure.ts";
import type { Engine, RequestOf, ResponseOf } from "../../shared/messages.ts";
import { makeEngine } from "../engine.ts";
import { terrainFiles } from "./files.ts";
import type { PoolGround, SweepVerb } from "./thread-pool.ts";

/** A task of the pool. */
export interface ThreadTask<V extends SweepVerb = SweepVerb> {
  readonly ground: PoolGround;
  readonly verb: V;
  readonly request: RequestOf<V>;
}

/** Elevation data that a thread has open at a time. */
const MOST_OPEN = 3;
/** By what they have open, the one used last at the end. */
const opened = new Map<string, Promise<Engine>>();

/** The thread's own engine with the elevation data open; an opening that failed is tried again. */
function engineOn(ground: PoolGround): Promise<Engine> {
  const key = JSON.stringify(ground);
  const engine = opened.get(key) ?? open(ground);
  engine.catch(() => opened.delete(key));
  opened.delete(key);
  opened.set(key, engine);
  for (const oldest of [...opened.keys()].slice(0, -MOST_OPEN)) opened.delete(oldest);
  return engine;
}

async function open({ paths, verticalUnit, marks }: PoolGround): Promise<Engine> {
  const made = makeEngine();
  await made.openTerrain({ files: await terrainFiles(paths), verticalUnit, marks });
  return made;
}

/** Does one task; a refusal comes back as a value, since threads copy errors without their code. */
export async function work<V extends SweepVerb>({
  ground,
  verb,
  request,
}: ThreadTask<V>): Promise<Outcome<ResponseOf<V>>> {
  try {
    const answer = (await engineOn(ground))[verb] as (of: RequestOf<V>) => Promise<ResponseOf<V>>;
    return { ok: true, value: await answer(request) };
  } catch (thrown) {
    return { ok: false, failure: asFailure(thrown) };
  }
}

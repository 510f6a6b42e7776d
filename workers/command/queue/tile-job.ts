import { createHash } from "node:crypto";
import type { Building } from "../../../shared/buildings/types.ts";
import type { Failure, Outcome } from "../../../shared/failure.ts";
import type { PoolGround, SweepVerb } from "../thread-pool.ts";

/**
 * Name of the queue in Redis: one for each version of the program, so that workers of another never see the jobs.
 * @param version as of `programVersion`
 */
export function queueOf(version: string): string {
  return `drystead-sweep-${version}`;
}

/** Buildings of a job: about a second of work for one thread, so that handing over costs little and a loss too. */
const TILE = 16;

/** The elevation data as the submitter found it; workers look whether theirs is the same. */
export interface SharedGround extends PoolGround {
  readonly files: readonly { readonly name: string; readonly bytes: number }[];
}

/** A job of the queue: neighbors, each with its own task. */
export interface TileJob {
  /** Names the run that submitted it. */
  readonly by: string;
  readonly ground: SharedGround;
  readonly verb: SweepVerb;
  /** Parts that are the same in all requests. */
  readonly common: object;
  /** The rest of each request, by the key of its task. */
  readonly requests: Readonly<Record<string, object>>;
}

/** What a worker gives back: an outcome for each task, or why it takes no such job at all. */
export interface TileAnswer {
  /** Name of the worker's machine. */
  readonly host: string;
  readonly refused: Failure | null;
  readonly outcomes: Readonly<Record<string, Outcome<unknown>>>;
}

/**
 * For each building the number of its tile: neighbors along a curve that fills the plane, so many at a time. It
 * follows from the whole list, whichever of the buildings are still to be done.
 */
export function tilesOf(buildings: readonly Building[]): ReadonlyMap<string, number> {
  const places = buildings.map(({ id, parts }) => ({ id, key: curveKey(parts[0]![0]!) }));
  places.sort((a, b) => a.key - b.key || (a.id < b.id ? -1 : 1));
  return new Map(places.map(({ id }, k) => [id, Math.floor(k / TILE)]));
}

/** Whole parts of a degree along either axis of the curve: about 2 m. */
const STEPS = 2 ** 24;

/** Place along a Z-order curve. */
function curveKey([lon, lat]: readonly [number, number]): number {
  const [x, y] = [(lon + 180) / 360, (lat + 90) / 360].map((share) => Math.floor(share * STEPS));
  let key = 0;
  for (let bit = STEPS / 2; bit >= 1; bit /= 2) {
    key = 4 * key + 2 * (Math.floor(y! / bit) % 2) + (Math.floor(x! / bit) % 2);
  }
  return key;
}

/** Cuts a list into tiles in its order. */
export function cutIntoTiles<T>(all: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(all.length / TILE) }, (_, k) =>
    all.slice(k * TILE, (k + 1) * TILE),
  );
}

/** Name of a job: the same for the same tasks of the same check, so that none is in the queue twice. */
export function jobId(check: string, verb: SweepVerb, name: string): string {
  const digest = createHash("sha256").update(`${verb} ${name}`).digest("hex");
  return `${check}-${digest.slice(0, 16)}`;
}

/** Requests without what is the same object or value in all of them, and that once. */
export function withoutCommon(
  requests: ReadonlyMap<string, object>,
): Pick<TileJob, "common" | "requests"> {
  const [first, ...others] = [...requests.values()] as Record<string, unknown>[];
  const isCommon = ([name, value]: [string, unknown]) =>
    others.length > 0 && others.every((each) => each[name] === value);
  const common = Object.fromEntries(Object.entries(first ?? {}).filter(isCommon));
  const rest = [...requests].map(([key, request]) => [
    key,
    Object.fromEntries(Object.entries(request).filter(([name]) => !(name in common))),
  ]);
  return { common, requests: Object.fromEntries(rest) };
}

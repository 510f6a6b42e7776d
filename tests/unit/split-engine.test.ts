import { Worker } from "node:worker_threads";
import { afterEach, describe, expect, it, vi } from "vitest";
import { refusal } from "../../shared/failure.ts";
import type { Engine } from "../../shared/messages.ts";
import type { FromWorker } from "../../shared/wire.ts";
import { makeRemoteEngine, type WorkerLike } from "../../src/engine/remote.ts";
import { splitEngine } from "../../src/engine/split.ts";

const SUMMARY = { name: "site" } as never;
const FILES = { files: [], verticalUnit: null };
const PROBE = { at: [0, 0] } as const;
const TRACE = { plan: {} } as never;
const settle = () => new Promise((resolve) => setTimeout(resolve, 5));

describe("an engine in two workers", () => {
  it("opens the same files in both, and lets long calls wait for theirs alone", async () => {
    let openLong: (summary: never) => void = () => {};
    const traceWater = vi.fn(async () => "traced" as never);
    const quick = { openTerrain: async () => SUMMARY, probe: async () => ({ groundM: 1 }) };
    const openTerrain = vi.fn(() => new Promise<never>((resolve) => (openLong = resolve)));
    const engine = splitEngine(quick as never, { openTerrain, traceWater } as never);
    expect(await engine.openTerrain(FILES)).toBe(SUMMARY);
    expect(openTerrain).toHaveBeenCalledWith(FILES);
    const traced = engine.traceWater(TRACE);
    expect(await engine.probe(PROBE)).toEqual({ groundM: 1 });
    await settle();
    expect(traceWater).not.toHaveBeenCalled();
    openLong(SUMMARY);
    expect(await traced).toBe("traced");
  });

  it("never follows water over the former ground when the new one cannot be opened; tries again", async () => {
    const refuse = async () => Promise.reject(refusal("raster/none"));
    const openTerrain = vi.fn<Engine["openTerrain"]>(async () => SUMMARY);
    const traceWater = vi.fn(async () => "traced" as never);
    const quick = { openTerrain: async () => SUMMARY };
    const engine = splitEngine(quick as never, { openTerrain, traceWater } as never);
    await engine.openTerrain(FILES);
    openTerrain.mockImplementationOnce(refuse);
    await engine.openTerrain(FILES);
    await expect(engine.traceWater(TRACE)).rejects.toMatchObject({ code: "raster/none" });
    expect(traceWater).not.toHaveBeenCalled();
    expect(await engine.traceWater(TRACE)).toBe("traced");
    expect(openTerrain).toHaveBeenCalledTimes(3);
  });
});

/** Serves stand-ins for the verbs in a thread of its own; `findRing` keeps that thread for 2 s without a pause. */
const BLOCKING = `
  const { parentPort } = require("node:worker_threads");
  const verbs = {
    openTerrain: () => ({ name: "site" }),
    probe: () => ({ groundM: 7 }),
    findRing: () => {
      parentPort.postMessage({ kind: "progress", id: 0, share: 0, doing: "begun" });
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2000);
      return "found";
    },
  };
  parentPort.on("message", ({ kind, id, verb }) => {
    if (kind === "call") parentPort.postMessage({ kind: "done", id, verb, response: verbs[verb]() });
  });
`;

const threads: Worker[] = [];
afterEach(async () => {
  await Promise.all(threads.splice(0).map((thread) => thread.terminate()));
});

function inThread(): Engine {
  const spawn = (): WorkerLike => {
    const thread = new Worker(BLOCKING, { eval: true });
    threads.push(thread);
    const like: WorkerLike = {
      postMessage: (message) => thread.postMessage(message),
      terminate: () => void thread.terminate(),
      onmessage: null,
      onerror: null,
    };
    thread.on("message", (data: FromWorker) => like.onmessage?.({ data } as MessageEvent));
    return like;
  };
  return makeRemoteEngine(spawn, { silenceMs: 60_000, onRestart: () => {} });
}

describe("a search that never pauses", () => {
  it("is still under way when the quick half answers", async () => {
    const engine = splitEngine(inThread(), inThread());
    await engine.openTerrain(FILES);
    let isFound = false;
    const search = engine.findRing({} as never).then((answer) => {
      isFound = true;
      return answer;
    });
    for (let i = 0; i < 5; i++) expect(await engine.probe(PROBE)).toEqual({ groundM: 7 });
    expect(isFound).toBe(false);
    expect(await search).toBe("found");
  });
});

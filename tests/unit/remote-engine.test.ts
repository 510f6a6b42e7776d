import { describe, expect, it, vi } from "vitest";
import { asFailure, Refusal, refusal } from "../../shared/failure.ts";
import type { Engine, Verb } from "../../shared/messages.ts";
import type { Call, Done, FromWorker, ToWorker } from "../../shared/wire.ts";
import { failureWords } from "../../shared/words/failure.ts";
import { makeRemoteEngine, type RemoteOptions, type WorkerLike } from "../../src/engine/remote.ts";
import { serveEngine } from "../../workers/serve.ts";

/** A worker that runs the real server over a stand-in engine, with structured clones in between. */
class StandInWorker implements WorkerLike {
  onmessage: WorkerLike["onmessage"] = null;
  onerror: WorkerLike["onerror"] = null;
  dead = false;
  readonly seen: ToWorker["kind"][] = [];
  private readonly answer: ReturnType<typeof serveEngine>;

  constructor(engine: Partial<Engine>) {
    this.answer = serveEngine(engine as Engine, (message, transfer) => {
      const copy = structuredClone(message, { transfer }) as FromWorker;
      queueMicrotask(() => {
        if (!this.dead) this.onmessage?.({ data: copy } as MessageEvent<FromWorker>);
      });
    });
  }

  postMessage<V extends Verb>(message: ToWorker<V>): void {
    this.seen.push(message.kind);
    if (!this.dead) void this.answer(structuredClone(message));
  }

  terminate(): void {
    this.dead = true;
  }
}

const SUMMARY = { name: "site" } as never;
const PROBE = { at: [0, 0] } as const;
const quiet = { silenceMs: 60_000, onRestart: () => {} };

function remote(engines: Partial<Engine>[], options: RemoteOptions = quiet) {
  const workers: StandInWorker[] = [];
  const engine = makeRemoteEngine(() => {
    const worker = new StandInWorker(engines[Math.min(workers.length, engines.length - 1)] ?? {});
    workers.push(worker);
    return worker;
  }, options);
  return { engine, workers };
}

describe("the engine behind a worker", () => {
  it("carries a request there and the answer back", async () => {
    const { engine } = remote([{ probe: async ({ at }) => ({ groundM: at[0] + 1 }) }]);
    expect(await engine.probe({ at: [41, 0] })).toEqual({ groundM: 42 });
  });

  it("takes no answer of another verb for its own", async () => {
    const { engine, workers } = remote([{ probe: () => new Promise<never>(() => {}) }]);
    const call = engine.probe(PROBE);
    const data: Done = { kind: "done", id: 1, verb: "heightRange", response: null };
    workers[0]?.onmessage?.({ data } as MessageEvent<FromWorker>);
    await expect(call).rejects.toThrow("A call of probe was answered with heightRange.");
  });

  it("does not compile with a request, or an answer, of another verb", () => {
    // @ts-expect-error `probe` asks for a place
    const call: Call = { kind: "call", id: 1, verb: "probe", request: { files: [] } };
    // @ts-expect-error `probe` answers with a height
    const done: Done = { kind: "done", id: 1, verb: "probe", response: { lines: [] } };
    // @ts-expect-error every verb has an answer
    const engine: Engine = { probe: async () => ({ groundM: 1 }) };
    expect([call.kind, done.kind, typeof engine.probe]).toEqual(["call", "done", "function"]);
  });

  it("moves the pixels of a tile instead of copying them", async () => {
    const rgba = new Uint8ClampedArray(4) as Uint8ClampedArray<ArrayBuffer>;
    const { engine } = remote([{ heightTile: async () => ({ rgba, holes: false }) }]);
    const answer = await engine.heightTile({ z: 0, x: 0, y: 0, fall: null });
    expect(answer.rgba?.length).toBe(4);
    expect(rgba.length).toBe(0);
  });

  it("keeps the figures of a refusal, and has its text fetched before it is told", async () => {
    const refuse = async () => {
      throw refusal("raster/cell-size", { name: "dem.tif", xM: 30_000, yM: 40 });
    };
    const { engine } = remote([{ openTerrain: refuse }]);
    const opening = engine.openTerrain({ files: [], verticalUnit: null });
    const failure = await opening.then(() => null, asFailure);
    expect(failure).toEqual({
      code: "raster/cell-size",
      given: { name: "dem.tif", xM: 30_000, yM: 40 },
    });
    expect(failureWords(failure!, "metric").message).toMatch(/measure 30 km by 40 m on the ground/);
  });

  it("says a refusal whose text did not come by its code", () => {
    const unknown = { code: "raster/new-kind", given: {} };
    expect(failureWords(unknown, "us").message).toMatch(/\(raster\/new-kind\).*not be loaded/);
  });

  it("keeps where an error in the program was thrown and why, and tells of it", async () => {
    const broken = async () => {
      throw new TypeError("No such corner", { cause: new RangeError("Corner 9 of 4") });
    };
    const onBug = vi.fn();
    const { engine } = remote([{ probe: broken }], { ...quiet, onBug });
    const bug = {
      name: "TypeError",
      message: "No such corner",
      stack: expect.stringMatching(/at .*broken/),
      cause: {
        name: "RangeError",
        message: "Corner 9 of 4",
        stack: expect.any(String),
        cause: null,
      },
    };
    await expect(engine.probe(PROBE)).rejects.toMatchObject({
      code: "unexpected",
      failure: { bug },
    });
    expect(onBug).toHaveBeenCalledWith(expect.objectContaining({ bug }));
  });

  it("says of a worker that stopped by an error what the browser says of it", async () => {
    const { engine, workers } = remote([{ probe: () => new Promise<never>(() => {}) }]);
    const call = engine.probe(PROBE);
    const event = { message: "out of memory", filename: "worker.js", lineno: 3, colno: 7 };
    workers[0]?.onerror?.(event as ErrorEvent);
    await expect(call).rejects.toMatchObject({
      code: "engine/crashed",
      failure: { bug: { message: "out of memory", stack: "worker.js:3:7" } },
    });
  });

  it("rejects a cancelled call at once, tells the worker, and drops its late answer", async () => {
    let finish: (answer: { groundM: number }) => void = () => {};
    const slow = () => new Promise<{ groundM: number }>((resolve) => (finish = resolve));
    const { engine, workers } = remote([{ probe: slow }]);
    const abort = new AbortController();
    const call = engine.probe(PROBE, { signal: abort.signal });
    abort.abort();
    await expect(call).rejects.toMatchObject({ code: "cancelled" });
    expect(workers[0]?.seen.at(-1)).toBe("cancel");
    finish({ groundM: 1 });
    await new Promise((resolve) => setTimeout(resolve, 5));
    await expect(call).rejects.toMatchObject({ code: "cancelled" });
  });

  it("restarts a crashed worker, fails what waited, and opens the terrain again", async () => {
    const opened = vi.fn(async () => SUMMARY);
    const onRestart = vi.fn();
    const stuck = { openTerrain: async () => SUMMARY, probe: () => new Promise<never>(() => {}) };
    const sound = { openTerrain: opened, probe: async () => ({ groundM: 7 }) };
    const { engine, workers } = remote([stuck, sound], { silenceMs: 60_000, onRestart });
    await engine.openTerrain({ files: [], verticalUnit: "foot" });
    const waiting = engine.probe(PROBE);
    workers[0]?.onerror?.({} as ErrorEvent);
    await expect(waiting).rejects.toMatchObject({ code: "engine/crashed" });
    await vi.waitFor(() => expect(onRestart).toHaveBeenCalledWith(null));
    expect(opened).toHaveBeenCalledWith({ files: [], verticalUnit: "foot" }, expect.anything());
    expect(workers[0]?.dead).toBe(true);
    expect(await engine.probe(PROBE)).toEqual({ groundM: 7 });
  });

  /** Refuses with a reason whose text is not loaded yet. */
  const refuses = () =>
    Promise.reject(new Refusal({ code: "raster/text-not-loaded", given: { name: "a.tif" } }));

  it("refuses without a text that the network does not bring", async () => {
    vi.useFakeTimers();
    try {
      const fetchTexts = vi.fn(() => new Promise<never>(() => {}));
      const { engine } = remote([{ probe: refuses }], { ...quiet, fetchTexts });
      const outcome = expect(engine.probe(PROBE)).rejects.toMatchObject({
        code: "raster/text-not-loaded",
      });
      await vi.advanceTimersByTimeAsync(10_000);
      await outcome;
      expect(fetchTexts).toHaveBeenCalledOnce();
    } finally {
      vi.useRealTimers();
    }
  }, 2000);

  it("rejects a call that is cancelled while its text is fetched as cancelled", async () => {
    const fetchTexts = vi.fn(() => new Promise<never>(() => {}));
    const { engine } = remote([{ probe: refuses }], { ...quiet, fetchTexts });
    const stop = new AbortController();
    const call = engine.probe(PROBE, { signal: stop.signal });
    const outcome = expect(call).rejects.toMatchObject({ code: "cancelled" });
    await vi.waitFor(() => expect(fetchTexts).toHaveBeenCalledOnce());
    stop.abort();
    await outcome;
  }, 2000);

  it("finds out that a worker died without a word", async () => {
    vi.useFakeTimers();
    try {
      const { engine, workers } = remote([{ probe: () => new Promise<never>(() => {}) }], {
        ...quiet,
        silenceMs: 1000,
      });
      const waiting = engine.probe(PROBE);
      const outcome = expect(waiting).rejects.toMatchObject({ code: "engine/crashed" });
      if (workers[0]) workers[0].dead = true;
      await vi.advanceTimersByTimeAsync(6000);
      await outcome;
      expect(workers.length).toBe(2);
    } finally {
      vi.useRealTimers();
    }
  });

  it("leaves a slow worker alone as long as it answers the ping", async () => {
    vi.useFakeTimers();
    try {
      const { engine, workers } = remote([{ probe: () => new Promise<never>(() => {}) }], {
        ...quiet,
        silenceMs: 1000,
      });
      void engine.probe(PROBE).catch(() => {});
      await vi.advanceTimersByTimeAsync(20_000);
      expect(workers.length).toBe(1);
    } finally {
      vi.useRealTimers();
    }
  });

  it("never restarts a worker that reports progress, even when it cannot answer the ping", async () => {
    vi.useFakeTimers();
    try {
      const { engine, workers } = remote([{ findRing: () => new Promise<never>(() => {}) }], {
        ...quiet,
        silenceMs: 1000,
      });
      engine.findRing({} as never).catch(() => {});
      const worker = workers[0]!;
      worker.postMessage = () => {};
      const data: FromWorker = { kind: "progress", id: 1, share: 0.5, doing: "Searching" };
      for (let i = 0; i < 60; i++) {
        await vi.advanceTimersByTimeAsync(900);
        worker.onmessage?.({ data } as MessageEvent<FromWorker>);
      }
      expect(workers.length).toBe(1);
      await vi.advanceTimersByTimeAsync(6000);
      expect(workers.length).toBe(2);
    } finally {
      vi.useRealTimers();
    }
  });

  it("does not take a machine that slept for a dead worker", async () => {
    vi.useFakeTimers();
    try {
      const { engine, workers } = remote([{ probe: () => new Promise<never>(() => {}) }], {
        ...quiet,
        silenceMs: 1000,
      });
      engine.probe(PROBE).catch(() => {});
      vi.setSystemTime(Date.now() + 3_600_000);
      await vi.advanceTimersByTimeAsync(3500);
      expect(workers.length).toBe(1);
    } finally {
      vi.useRealTimers();
    }
  });

  it("finds a dead worker also while calls keep coming", async () => {
    vi.useFakeTimers();
    try {
      const { engine, workers } = remote([{ probe: () => new Promise<never>(() => {}) }], {
        ...quiet,
        silenceMs: 1000,
      });
      workers[0]!.dead = true;
      for (let i = 0; i < 100; i++) {
        engine.probe(PROBE).catch(() => {});
        await vi.advanceTimersByTimeAsync(100);
      }
      expect(workers.length).toBeGreaterThan(1);
    } finally {
      vi.useRealTimers();
    }
  });

  it("lets calls made during a restart wait until the terrain is open again", async () => {
    let finish: (summary: never) => void = () => {};
    const stuck = { openTerrain: async () => SUMMARY };
    const fresh = {
      openTerrain: () => new Promise<never>((resolve) => (finish = resolve)),
      probe: vi.fn(async () => ({ groundM: 7 })),
    };
    const { engine, workers } = remote([stuck, fresh]);
    await engine.openTerrain({ files: [], verticalUnit: null });
    workers[0]?.onerror?.({} as ErrorEvent);
    const call = engine.probe(PROBE);
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(fresh.probe).not.toHaveBeenCalled();
    finish(SUMMARY);
    expect(await call).toEqual({ groundM: 7 });
  });
});

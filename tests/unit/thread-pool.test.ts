import { afterEach, describe, expect, it } from "vitest";
import { type ThreadPool, threadPool } from "../../workers/command/thread-pool.ts";

const SCRIPT = new URL("../fixtures/dying-thread.mjs", import.meta.url);
const GROUND = { paths: [], verticalUnit: null, marks: [] };

let pool: ThreadPool;
afterEach(() => pool.close());

function run(request: string, signal?: AbortSignal): Promise<unknown> {
  return pool.run("checkBuilding", request as never, signal);
}

describe("threads that search", () => {
  it("are replaced where one ends in mid-task, whose task says so; all others are answered", async () => {
    pool = threadPool(2, GROUND, SCRIPT);
    const tasks = ["a", "die", "b", "c", "die", "d", "e"];
    const ended = await Promise.allSettled(tasks.map((task) => run(task)));
    for (const [k, task] of tasks.entries()) {
      const found = ended[k]!;
      if (task !== "die") expect(found).toEqual({ status: "fulfilled", value: task });
      else expect(found).toMatchObject({ reason: { code: "engine/thread-ended" } });
    }
  });

  it("stop when the work is cancelled, those that wait and those at work, and take other work then", async () => {
    pool = threadPool(1, GROUND, SCRIPT);
    const stop = new AbortController();
    const tasks = ["wait", "a", "b"].map((task) => run(task, stop.signal));
    setTimeout(() => stop.abort(), 200);
    for (const ended of await Promise.allSettled(tasks)) {
      expect(ended).toMatchObject({ reason: { code: "cancelled" } });
    }
    expect(await run("c")).toBe("c");
    expect(stop.signal.aborted).toBe(true);
    await expect(run("d", stop.signal)).rejects.toMatchObject({ code: "cancelled" });
  });
});

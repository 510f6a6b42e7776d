import { describe, expect, it, vi } from "vitest";
import { refusal } from "../../shared/failure.ts";
import type { Engine, OpenTerrainRequest } from "../../shared/messages.ts";
import { enginePool } from "../../src/engine/pool.ts";

const FILES: OpenTerrainRequest = { files: [], verticalUnit: null };
const TASK = {} as never;

/** Answers tasks with its name, once it is let go on. */
function engineNamed(name: string, opens = true) {
  const waiting: (() => void)[] = [];
  const openTerrain = vi.fn(async () => {
    if (!opens) throw new Error("no room");
    return {};
  });
  const checkBuilding = () => new Promise((done) => waiting.push(() => done(name)));
  const goOn = () => {
    for (const each of waiting.splice(0)) each();
  };
  return { engine: { openTerrain, checkBuilding } as unknown as Engine, openTerrain, goOn };
}

const settle = () => new Promise((resolve) => setTimeout(resolve, 5));

describe("a pool of engines", () => {
  it("gives tasks to whoever is free, each extra one made for its first and opened on the same files", async () => {
    const first = engineNamed("first");
    const more = engineNamed("more");
    const spawn = vi.fn(() => more.engine);
    let files: OpenTerrainRequest | null = FILES;
    const { engine, atOnce } = enginePool(first.engine, spawn, 1, () => files);
    expect(atOnce).toBe(2);
    expect(spawn).not.toHaveBeenCalled();
    const two = [engine.checkBuilding(TASK), engine.checkBuilding(TASK)];
    await settle();
    first.goOn();
    more.goOn();
    expect((await Promise.all(two)).sort()).toEqual(["first", "more"]);
    expect(more.openTerrain).toHaveBeenCalledExactlyOnceWith(FILES);
    files = { ...FILES };
    const again = [engine.checkBuilding(TASK), engine.checkBuilding(TASK)];
    await settle();
    first.goOn();
    more.goOn();
    await Promise.all(again);
    expect(more.openTerrain).toHaveBeenCalledTimes(2);
    expect(spawn).toHaveBeenCalledTimes(1);
  });

  it("has the first do what an extra one cannot open the files for", async () => {
    const first = engineNamed("first");
    const { engine } = enginePool(
      first.engine,
      () => engineNamed("more", false).engine,
      1,
      () => FILES,
    );
    const two = [engine.checkBuilding(TASK), engine.checkBuilding(TASK)];
    await settle();
    first.goOn();
    expect(await Promise.all(two)).toEqual(["first", "first"]);
  });

  it("gives the next task to one that broke in the last, whose failure is told", async () => {
    const fails = vi.fn(() => Promise.reject(refusal("engine/crashed")));
    const first = engineNamed("first");
    const broken = { ...first.engine, checkBuilding: fails } as unknown as Engine;
    const { engine } = enginePool(
      broken,
      () => broken,
      1,
      () => FILES,
    );
    const two = await Promise.allSettled([engine.checkBuilding(TASK), engine.checkBuilding(TASK)]);
    for (const each of two) expect(each).toMatchObject({ reason: { code: "engine/crashed" } });
    fails.mockResolvedValue("mended" as never);
    const again = [engine.checkBuilding(TASK), engine.checkBuilding(TASK)];
    expect(await Promise.all(again)).toEqual(["mended", "mended"]);
  });
});

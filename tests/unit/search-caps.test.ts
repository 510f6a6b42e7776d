import { openAsBlob, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import type { Engine } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { makeEngine } from "../../workers/engine.ts";
import { deadlineIn } from "../../workers/search/deadline.ts";
import { findRing } from "../../workers/search/find-ring.ts";
import { driven } from "../../workers/search/progress.ts";
import { ringSteps } from "../../workers/search/search-ring.ts";
import { searchTerms } from "../../workers/search/search-terms.ts";
import type { SearchRequest, SearchStep } from "../../workers/search/types.ts";
import { said } from "../helpers/said.ts";
import {
  LEVEL_SECTION,
  rectangle,
  requestFor,
  roughTerrain,
  SETBACK_M,
} from "../helpers/search-terrain.ts";

/** Time of this process's own work: other work on the machine does not count, milliseconds. */
function workedMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Houses in rows, 26 m apart. */
function village(count: number, heightAt: (x: number, y: number) => number): SearchRequest {
  const wide = Math.ceil(Math.sqrt(count));
  const structures = Array.from({ length: count }, (_, k) =>
    rectangle(9, 8, 10 * k, [26 * (k % wide) - 13 * wide, 26 * Math.floor(k / wide) - 13 * wide]),
  );
  return requestFor({ heightAt, cellM: 1 }, structures[0]!, 0.9, {
    structures,
    window: { reachM: 40 },
  });
}

/** Longest work between two steps, and all of it, milliseconds. */
function paced<T>(steps: Generator<SearchStep, T>) {
  const startedMs = workedMs();
  let lastMs = startedMs;
  let longestMs = 0;
  for (;;) {
    const step = steps.next();
    const atMs = workedMs();
    longestMs = Math.max(longestMs, atMs - lastMs);
    lastMs = atMs;
    if (step.done) return { value: step.value, longestMs, allMs: atMs - startedMs };
  }
}

describe("a search with a cap on its time", () => {
  it.each([5, 200])("ends in time with an answer for %i structures", (count) => {
    const request = village(count, roughTerrain(3, 300));
    const steps = ringSteps(request, { timeCapMs: 1500, now: workedMs });
    const { value, longestMs, allMs } = paced(steps);
    expect(allMs).toBeLessThan(1500 + 1000);
    expect(longestMs).toBeLessThan(250);
    expect(value.rings.flatMap(({ encloses }) => encloses)).toHaveLength(count);
    if (count > 5) {
      expect(value.cutShort).toBe(true);
      expect(value.notes).toContainEqual({ kind: "cut-short" });
    }
  });

  it("goes round the last of 33 houses as well as round the first, no shorter than it can", () => {
    const structures = Array.from({ length: 33 }, (_, k) => rectangle(8, 8, 0, [57 * k, 0]));
    const flat = { heightAt: () => 0, cellM: 1 };
    const request = requestFor(flat, structures[0]!, 0.8, { structures, window: { reachM: 20 } });
    const deadline = deadlineIn(60_000, workedMs);
    const line = { cornerShare: 0.001, maxCorners: 24 };
    const search = findRing(searchTerms(request), [32], { line, deadline, wholeWindow: false });
    const price = driven(search).ring!.priceM3;
    /** A hull lengthened by one circle of the clearance (Steiner). */
    const shortest = (32 + 2 * Math.PI * (SETBACK_M + 1.5 * 0.8)) * LEVEL_SECTION.areaAt(0.8);
    expect(price / shortest).toBeGreaterThan(0.999);
    expect(price / shortest).toBeLessThan(1.03);
  });
});

describe("the demo's site with more houses", () => {
  let plan: Plan;
  let engine: Engine;
  beforeAll(async () => {
    const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
    const text = readFileSync(here("../fixtures/plans/five-houses.geojson"), "utf8");
    const read = readPlanFile(text);
    if (!read.ok) throw new Error(said(read.failure).message);
    plan = read.value.plan;
    engine = makeEngine();
    const blob = await openAsBlob(here("../../sample-terrain/demo.tif"));
    await engine.openTerrain({ files: [{ name: "demo.tif", blob }], verticalUnit: null });
  });

  it("is searched within the cap, says that it was cut short, and claims no proof", async () => {
    const startedMs = workedMs();
    const { lines, cutShort, notes } = await engine.findRing({
      ...{ plan, window: { reachM: 60 }, timeCapMs: 300, judge: "proof" },
    });
    expect(workedMs() - startedMs).toBeLessThan(300 + 1500 + 3000);
    expect(cutShort).toBe(true);
    expect(notes).toContainEqual({ kind: "cut-short" });
    expect(lines.flatMap(({ encloses }) => encloses)).toHaveLength(5);
    for (const { howGood } of lines) expect(howGood?.kind).not.toBe("proof");
  });

  it("is given up at once when it is cancelled", async () => {
    const abort = new AbortController();
    let cancelledMs = 0;
    const search = engine.findRing(
      { plan, window: { reachM: 60 }, timeCapMs: 60_000 },
      {
        signal: abort.signal,
        onProgress: () => {
          cancelledMs ||= workedMs();
          abort.abort();
        },
      },
    );
    await expect(search).rejects.toMatchObject({ code: "cancelled" });
    expect(workedMs() - cancelledMs).toBeLessThan(250);
  });
});

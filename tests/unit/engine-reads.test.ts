import { openAsBlob, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import type { Engine } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { type Reads, SIDEWAYS, SIZING, WATER } from "../../src/live/parts.ts";
import { makeEngine } from "../../workers/engine.ts";
import { said } from "../helpers/said.ts";

const SAMPLES = fileURLToPath(new URL("../../sample-terrain/", import.meta.url));
const engine: Engine = makeEngine();
let demo: Plan;

beforeAll(async () => {
  const read = readPlanFile(readFileSync(`${SAMPLES}demo.geojson`, "utf8"));
  if (!read.ok) throw new Error(said(read.failure).message);
  demo = read.value.plan;
  const files = [{ name: "demo.tif", blob: await openAsBlob(`${SAMPLES}demo.tif`) }];
  await engine.openTerrain({ files, verticalUnit: null });
});

/** An object whose other keys than those given cannot be read. A copy of it does not have them. */
function readable(whole: object, keys: readonly PropertyKey[], name: string): object {
  const hidden = Object.keys(whole).filter((key) => !keys.includes(key));
  const shown = Object.fromEntries(Object.entries(whole).filter(([key]) => keys.includes(key)));
  for (const key of hidden) {
    Object.defineProperty(shown, key, {
      configurable: true,
      get: () => {
        throw new Error(`reads ${name}${key}`);
      },
    });
  }
  return shown;
}

/** The demo plan, of which only what is declared can be read. */
function guarded(reads: Reads): Plan {
  const keys = (Object.keys(reads) as (keyof Plan)[]).filter((key) => reads[key] !== false);
  const parts = keys
    .filter((key) => demo[key])
    .map((key) => {
      const figures: unknown = reads[key];
      const part = demo[key];
      return [
        key,
        Array.isArray(figures) ? readable(part as object, figures, `${key}.`) : part,
      ] as const;
    });
  return readable({ ...demo, ...Object.fromEntries(parts) }, keys, "") as Plan;
}

/** A guarded plan with a part that its request does not declare, for a reason that stands where it is used. */
function withPart(key: keyof Plan, reads: Reads): Plan {
  return Object.defineProperty(guarded(reads), key, { value: demo[key] });
}

describe("the engine reads no part of a plan that its request does not declare", () => {
  const id = () => demo.alignments[0]!.id;
  /** Which line is chosen is asked beside the plan. */
  const forWater = (reads: Reads) => withPart("chosenId", reads);
  it.each<[string, () => Promise<unknown>]>([
    ["sizes", () => engine.size({ plan: guarded(SIZING), live: false })],
    [
      "cross-sections",
      () => engine.crossSection({ plan: guarded(SIZING), id: id(), chainageM: 40, marginM: 3 }),
    ],
    ["simulated ground", () => engine.simulateGround({ plan: guarded(SIZING), id: id() })],
    ["water", () => engine.traceWater({ plan: forWater(WATER) })],
    ["sideways costs", () => engine.sidewaysCost({ plan: guarded(SIDEWAYS), id: id() })],
  ])("%s", async (_, ask) => {
    await expect(ask()).resolves.toBeDefined();
  });

  it("which this test would notice", async () => {
    const without = { ...WATER, ground: false } as const;
    await expect(engine.traceWater({ plan: forWater(without) })).rejects.toThrow(/reads ground/);
  });
});

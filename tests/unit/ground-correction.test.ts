import { openAsBlob, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import type { Engine } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { makeEngine } from "../../workers/engine.ts";
import { said } from "../helpers/said.ts";

const SAMPLES = fileURLToPath(new URL("../../sample-terrain/", import.meta.url));
const RAISED_M = 0.25;
const engine: Engine = makeEngine();
let demo: Plan;
/** The ground a quarter of a meter higher, and the water so much lower: all that is counted is the same. */
let higher: Plan;
let lower: Plan;

beforeAll(async () => {
  const read = readPlanFile(readFileSync(`${SAMPLES}demo.geojson`, "utf8"));
  if (!read.ok) throw new Error(said(read.failure).message);
  demo = read.value.plan;
  higher = { ...demo, ground: { ...demo.ground, correctionM: RAISED_M } };
  const { gaugeZeroM } = demo.water;
  lower = { ...demo, water: { ...demo.water, gaugeZeroM: gaugeZeroM - RAISED_M } };
  const files = [{ name: "demo.tif", blob: await openAsBlob(`${SAMPLES}demo.tif`) }];
  await engine.openTerrain({ files, verticalUnit: null });
});

describe("a correction of the elevation data", () => {
  it("counts for the bags of every line", async () => {
    const [raised, lowered, plain] = await Promise.all(
      [higher, lower, demo].map(async (plan) =>
        (await engine.size({ plan, live: true })).lines.map(({ totals }) => totals.bags),
      ),
    );
    for (const [k, bags] of raised!.entries()) {
      expect(Math.abs(bags - lowered![k]!)).toBeLessThanOrEqual(1);
      expect(bags).toBeLessThan(0.8 * plain![k]!);
    }
  });

  it("counts for the cross-section and its ground", async () => {
    const at = { id: demo.alignments[0]!.id, chainageM: 40, marginM: 3 };
    const raised = await engine.crossSection({ plan: higher, ...at });
    const plain = await engine.crossSection({ plan: demo, ...at });
    expect(raised.crestM).toBe(plain.crestM);
    expect(raised.heightM).toBeCloseTo(plain.heightM! - RAISED_M, 6);
  });

  it("counts for where the water goes", async () => {
    const id = demo.alignments[0]!.id;
    const plans = [higher, lower, demo].map((plan) => ({ ...plan, chosenId: id }));
    const areas: number[] = [];
    for (const plan of plans) areas.push((await engine.traceWater({ plan })).water.areaM2);
    expect(areas[0]! / areas[1]!).toBeCloseTo(1, 2);
    expect(areas[0]! / areas[2]!).toBeLessThan(0.99);
  });

  it("is no part of the pictures of the elevation data", async () => {
    const at = demo.structures[0]!.outline[0]!;
    const before = await engine.probe({ at });
    await engine.size({ plan: higher, live: true });
    expect(await engine.probe({ at })).toEqual(before);
  });
});

import { describe, expect, it } from "vitest";
import { allChecks } from "../../shared/all-checks.ts";
import type { Culvert, Drain, Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { BEHIND_LINE, type WaterTrace } from "../../shared/water-types.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { pipeCasesWords } from "../../shared/words/pipes.ts";
import { traceWater } from "../../workers/water/trace-water.ts";
import {
  type Corner,
  groundOf,
  openLine,
  PLANE,
  planWith,
  ring,
  size,
  structure,
} from "../helpers/grounds.ts";
import { byFormula, type Heights, terrainOf } from "../helpers/water-grids.ts";

const RIVER_M = 100;
const FIELD_M = 100.2;
const BANK_M = 104;
const HIGH_M = 108;
const WATER_M = 102;

/** The river's side to the west, a road bank at x = 20 to 23, a field behind it, high ground all round the two. */
const heightAt = (xM: number, southM: number): number => {
  if (southM < 5 || southM > 35 || xM > 50) return HIGH_M;
  if (xM < 20) return RIVER_M;
  return xM < 24 ? BANK_M : FIELD_M;
};
const FIELD = byFormula(60, 41, heightAt);
const at = (xM: number, southM: number) => PLANE.toLonLat(xM, -southM);
const box = (left: number, top: number, right: number, bottom: number): Corner[] => [
  [left, -top],
  [right, -top],
  [right, -bottom],
  [left, -bottom],
];
const BARN = structure("Barn", box(34.2, 16.2, 39.8, 23.8));
const RING = ring(box(30.2, 12.2, 43.8, 27.8));
/** The levee is higher than the limit there, which is not what these tests are about. */
const HIGH_ENOUGH = { limitM: 5 };

const culvert = (changes: Partial<Culvert> = {}): Culvert => ({
  ...{ id: "c", name: "North road", path: [at(17, 20), at(27, 20)], sizeM: null, gate: null },
  ...{ invertsM: [null, null], plugged: false },
  ...changes,
});
const drain = (changes: Partial<Drain> = {}): Drain => ({
  ...{ id: "d", name: "Laundry", at: at(37, 20), kind: "floor-drain" },
  ...{ joinsOutside: true, plugged: false },
  ...changes,
});

const plan = (changes: Partial<Plan> = {}): Plan =>
  planWith(WATER_M, { structures: [BARN], practice: HIGH_ENOUGH, ...changes });
const trace = (changes: Partial<Plan>, ground: Heights = FIELD): Promise<WaterTrace> =>
  traceWater(terrainOf(ground), { plan: plan(changes) });
const idsOf = ({ checks }: { readonly checks: readonly { readonly id: string }[] }) =>
  checks.map(({ id }) => id);

describe("a field behind a road bank", () => {
  it("is dry to the top of the bank without a culvert", async () => {
    const { structures, pipes } = await trace({});
    expect(pipes).toEqual([]);
    expect(structures[0]).toMatchObject({ wet: false, throughPipe: null });
    expect(structures[0]!.sillM).toBe(BANK_M);
  });

  it("is wet through an open culvert from the higher of its two ends on, and through it alone", async () => {
    const traced = await trace({ culverts: [culvert()] });
    const [barn] = traced.structures;
    expect(barn!.wet).toBe(true);
    expect(barn!.sillM).toBeCloseTo(FIELD_M, 4);
    expect(barn!.depthM).toBeCloseTo(WATER_M - FIELD_M, 4);
    expect(barn!.throughPipe).toEqual({
      ...{ ids: ["c"], alone: true, isKnown: true, pluggedSillM: BANK_M },
    });
    expect(traced.pipes[0]!.passesAboveM).toBeCloseTo(FIELD_M, 4);
    expect(idsOf(traced)).toContain("reached-by-pipe");
  });

  it("is dry at a water no higher than a typed invert, and wet above it", async () => {
    const invertsM = [100, 102.5] as const;
    const culverts = [culvert({ invertsM })];
    const traced = await trace({ culverts });
    expect(traced.structures[0]).toMatchObject({ wet: false });
    expect(traced.structures[0]!.sillM).toBeCloseTo(102.5, 5);
    const above = await traceWater(terrainOf(FIELD), {
      plan: planWith(102.51, { structures: [BARN], culverts }),
    });
    expect(above.structures[0]!.wet).toBe(true);
  });

  it("has the water of no culvert at all when it is plugged", async () => {
    const none = await trace({ alignments: [RING] });
    const plugged = await trace({ alignments: [RING], culverts: [culvert({ plugged: true })] });
    expect(plugged.mask).toEqual(none.mask);
    expect(plugged.water).toEqual(none.water);
    expect(plugged.structures).toEqual(none.structures);
    const [without] = none.alternatives;
    const [{ pipes, ...withPlug }] = plugged.alternatives as [WaterTrace["alternatives"][number]];
    expect({ ...withPlug, pipes: null }).toEqual(without);
    expect(pipes!.plugged).toMatchObject({ dry: true });
  });

  it("is not known where an end of the culvert lies in a gap of the data", async () => {
    const holed = byFormula(60, 41, (x, south) =>
      Math.abs(x - 27) < 2 && Math.abs(south - 20) < 2 ? Number.NaN : heightAt(x, south),
    );
    const line = openLine(box(26, 12, 29, 28).slice(0, 2));
    const traced = await trace({ culverts: [culvert()], alignments: [line] }, holed);
    expect(traced.pipes[0]).toMatchObject({ isKnown: false, passesAboveM: null });
    expect(traced.structures[0]!.throughPipe).toMatchObject({ alone: true, isKnown: false });
    expect(traced.alternatives[0]).toMatchObject({
      ...{ dry: null, notKnown: { because: "pipe-not-known" } },
    });
  });

  it("names both of two culverts, since plugging one leaves the other", async () => {
    const second = culvert({ id: "e", name: "South road", path: [at(17, 30), at(27, 30)] });
    const { structures } = await trace({ culverts: [culvert(), second] });
    expect([...structures[0]!.throughPipe!.ids].sort()).toEqual(["c", "e"]);
  });
});

describe("a tied-in line that leaves the bank to keep the water back", () => {
  const line = openLine(box(30.2, 3, 30.4, 4).slice(0, 2));

  it("must be fixed where an open culvert goes through the bank, in both cases", async () => {
    const traced = await trace({ culverts: [culvert()], alignments: [line] });
    const [found] = traced.alternatives;
    expect(found!.dry).toBe(false);
    expect(found!.pipes!.plugged.dry).toBe(true);
    expect(found!.pipes!.open.dry).toBe(false);
    expect(found!.pipes!.plugged.firstOverM).toBeCloseTo(BANK_M, 4);
    expect(found!.wayIn!.through).toEqual(["c"]);
    const stops = found!.checks.filter(({ severity }) => severity === "stop");
    expect(stops.map(({ id }) => id)).toEqual(["let-in-by-pipe"]);
    expect(checkWords(stops[0]!, "metric").message).toBe(
      'The water reaches "Barn" with the levee built, only through culvert "North road".',
    );
    const alone = traced.checks.find(({ id }) => id === "reached-by-pipe")!;
    expect(checkWords(alone, "metric").message).toBe(
      'With nothing built the water reaches "Barn" only through culvert "North road".',
    );
    expect(pipeCasesWords(found!, found!.checks, plan({}), "metric")).toEqual([
      { name: "All culverts and drains open", words: "water gets in above 100.19 m" },
      { name: "All of them plugged", words: "overtops above 104.00 m" },
    ]);
  });
});

describe("a ring with a drain inside", () => {
  const ground = groundOf((x, y) => heightAt(x, -y));
  const sized = (changes: Partial<Plan>) => {
    const whole = plan({ alignments: [RING], ...changes });
    return { whole, line: size(whole, RING, ground) };
  };

  it("is wet through the drain when it joins outside and is open", async () => {
    const changes = { culverts: [culvert()], drains: [drain()] };
    const { whole, line } = sized(changes);
    const traced = await traceWater(terrainOf(FIELD), { plan: whole });
    const [found] = traced.alternatives;
    expect(found).toMatchObject({ dry: false, pipes: { plugged: { dry: true } } });
    expect(found!.structures[0]!.throughPipe!.ids).toEqual(["d"]);
    const checks = allChecks(line, traced).filter(({ severity }) => severity === "stop");
    expect(checks.map(({ id }) => id)).toEqual(["drain"]);
  });

  it("is dry when the drain is plugged, with a caution; and when it joins nothing, without", async () => {
    const plugged = sized({ culverts: [culvert()], drains: [drain({ plugged: true })] });
    const traced = await traceWater(terrainOf(FIELD), { plan: plugged.whole });
    expect(traced.alternatives[0]).toMatchObject({ dry: true, pipes: { open: { dry: false } } });
    expect(plugged.line.checks.find(({ id }) => id === "drain")).toMatchObject({
      severity: "caution",
    });
    const closed = sized({ drains: [drain({ joinsOutside: false })] });
    expect(idsOf(closed.line)).not.toContain("drain");
  });

  it("is not known when nobody said where the drain leads", async () => {
    const { whole, line } = sized({
      culverts: [culvert()],
      drains: [drain({ joinsOutside: null })],
    });
    const traced = await traceWater(terrainOf(FIELD), { plan: whole });
    expect(traced.alternatives[0]).toMatchObject({ dry: null });
    expect(line.checks.find(({ id }) => id === "drain")).toMatchObject({
      ...{ severity: "caution", finding: { kind: "drain-not-known" } },
    });
  });
});

describe("a culvert that ends under the levee itself", () => {
  const under = culvert({ path: [at(25, 20), at(30.4, 20)], invertsM: [100, 100] });
  const isBehind = ({ mask }: WaterTrace) => mask.codes.includes(BEHIND_LINE);
  const rings = { alignments: [RING], chosenId: RING.id };
  const wet = culvert({ path: [at(17, 20), at(27, 20)] });

  it("leaves it not known whether water gets in, and nothing behind the line shown as free of water", async () => {
    const traced = await trace({ ...rings, culverts: [wet, under] });
    expect(traced.alternatives[0]!.notKnown).toMatchObject({ because: "pipe-not-known" });
    expect(isBehind(traced)).toBe(false);
    const plugged = await trace({ ...rings, culverts: [wet, { ...under, plugged: true }] });
    expect(plugged.alternatives[0]).toMatchObject({ dry: true });
    expect(isBehind(plugged)).toBe(true);
  });
});

describe("a line across a culvert", () => {
  const ground = groundOf((x, y) => heightAt(x, -y));
  const line = openLine([
    [26, -3],
    [26, -37],
  ]);
  const found = (changes: Partial<Culvert>) =>
    size(
      plan({
        alignments: [line],
        culverts: [culvert({ path: [at(17, 20), at(30, 20)], ...changes })],
      }),
      line,
      ground,
    ).checks.filter(({ id }) => id === "culvert");

  it("must be fixed, at the station where it crosses", () => {
    const checks = found({});
    expect(checks).toHaveLength(1);
    expect(checks[0]).toMatchObject({ severity: "stop", finding: { kind: "culvert-open" } });
    expect(checks[0]!.fromM).toBeCloseTo(17, 0);
  });

  it("is a caution when plugged, or with both inverts typed over the top of levee", () => {
    expect(found({ plugged: true })[0]).toMatchObject({ severity: "caution" });
    expect(found({ invertsM: [103, 103] })[0]).toMatchObject({
      ...{ severity: "caution", finding: { kind: "culvert-above" } },
    });
    expect(found({ invertsM: [103, null] })[0]).toMatchObject({ severity: "stop" });
    expect(found({ invertsM: [101, 101] })[0]).toMatchObject({ severity: "stop" });
  });

  it("says nothing of a culvert elsewhere", () => {
    expect(found({ path: [at(2, 20), at(12, 20)] })).toEqual([]);
  });
});

describe("a culvert that makes no sense", () => {
  it("counts as not known with both ends off the elevation data", async () => {
    const off = culvert({ path: [at(-400, 20), at(-380, 20)] });
    const traced = await trace({ culverts: [off], alignments: [RING] });
    expect(traced.pipes[0]).toMatchObject({ isKnown: false, passesAboveM: null });
    expect(traced.structures[0]).toMatchObject({ wet: false });
  });

  it("is as low as the ground at its end in the field, with one end off the data, and never known", async () => {
    const half = culvert({ path: [at(-400, 20), at(27, 20)] });
    const traced = await trace({ culverts: [half] });
    expect(traced.pipes[0]).toMatchObject({ isKnown: false, passesAboveM: null });
    expect(traced.structures[0]!.throughPipe).toMatchObject({ alone: true, isKnown: false });
  });

  it("lets water through above the higher invert, however it runs: uphill, or above the ground", async () => {
    for (const invertsM of [
      [100, 101.5],
      [101.5, 100],
    ] as const) {
      const { structures } = await trace({ culverts: [culvert({ invertsM })] });
      expect(structures[0]!.sillM).toBeCloseTo(101.5, 5);
    }
    const over = await trace({ culverts: [culvert({ invertsM: [103, 103] })] });
    expect(over.structures[0]).toMatchObject({ wet: false });
    expect(over.structures[0]!.sillM).toBeCloseTo(103, 5);
  });

  it("leads nowhere when both ends lie in one cell, and is refused in a plan with no length", async () => {
    const short = culvert({ path: [at(21.1, 20.1), at(21.2, 20.1)] });
    const traced = await trace({ culverts: [short] });
    expect(traced.structures[0]).toMatchObject({ wet: false, throughPipe: null });
    const none = plan({ culverts: [culvert({ path: [at(21, 20), at(21, 20)] })] });
    expect(validatePlan(none)).toMatchObject({ ok: false });
  });
});

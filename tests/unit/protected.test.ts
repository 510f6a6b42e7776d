import { describe, expect, it } from "vitest";
import type { Plan, Structure } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { floorWords, leftOutsideWords } from "../../shared/words/buildings.ts";
import { goneRound, ringOptionsOf, ringSettings } from "../../src/live/search/ring-settings.ts";
import { searchSetup } from "../../workers/lines/search-setup.ts";
import { traceWater } from "../../workers/water/trace-water.ts";
import { messageOf } from "../helpers/check-text.ts";
import {
  type Corner,
  flat,
  openLine,
  planWith,
  ring,
  size,
  structure,
} from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";
import { byFormula, terrainOf } from "../helpers/water-grids.ts";

const box = (left: number, top: number, right: number, bottom: number): Corner[] => [
  [left, -top],
  [right, -top],
  [right, -bottom],
  [left, -bottom],
];

/** Rises 1 in 100 to the east; at 101 m water stands on the western hundred columns. */
const SLOPE = byFormula(160, 80, (x) => 100 + 0.01 * x);
const HOUSE = structure("House", box(60.2, 36.2, 69.8, 43.8));
const SHED = structure("Shed", box(20.2, 36.2, 29.8, 43.8));
const ROUND_HOUSE = ring(box(50, 25, 80, 55));
const leaving = (protect: boolean | undefined): Structure => ({ ...SHED, protect });

const planOf = (shed: Structure, alignment = ROUND_HOUSE): Plan =>
  planWith(101, { structures: [HOUSE, shed], alignments: [alignment], chosenId: alignment.id });

const traced = (plan: Plan) => traceWater(terrainOf(SLOPE, 1), { plan });
const checksOf = (plan: Plan, id: string) =>
  size(plan, plan.alignments[0]!, flat(100)).checks.filter((check) => check.id === id);

describe("a building that is left outside on purpose", () => {
  it("does not make an open line past it not dry; one to be protected does", async () => {
    const round = openLine([
      [140, -10],
      [45, -10],
      [45, -70],
      [140, -70],
    ]);
    const lineOf = async (protect: boolean | undefined) =>
      (await traced(planOf(leaving(protect), round))).alternatives[0]!;
    expect((await lineOf(undefined)).dry).toBe(false);
    const left = await lineOf(false);
    expect(left.dry).toBe(true);
    expect(left.structures.map(({ name }) => name)).toEqual(["House"]);
    expect(left.leftWet).toEqual(["Shed"]);
  });

  it("a ring is for it when it must be protected, wherever it lies", async () => {
    const lineOf = async (protect: boolean | undefined) =>
      (await traced(planOf(leaving(protect)))).alternatives[0]!;
    expect(await lineOf(undefined)).toMatchObject({ dry: true, leftWet: ["Shed"] });
    expect(await lineOf(false)).toMatchObject({ dry: true, leftWet: ["Shed"] });
    const kept = await lineOf(true);
    expect(kept).toMatchObject({ dry: false, leftWet: [] });
    expect(kept.structures.map(({ name }) => name)).toEqual(["House", "Shed"]);
  });

  it("is said to be flooded, with its depth, as a note and not as a fault", async () => {
    const { alternatives, structures } = await traced(planOf(leaving(false)));
    const [check] = alternatives[0]!.checks.filter(({ id }) => id === "building-wet");
    expect(check).toMatchObject({ severity: "note" });
    expect(messageOf(check)).toMatch(/^"Shed" is left outside and will be flooded, 2\.6 ft/);
    expect(leftOutsideWords(structures[1]!, alternatives[0]!, "us")).toBe(
      "left outside, will be flooded 2.6 ft deep",
    );
    expect(leftOutsideWords(structures[1]!, null, "metric")).toContain("0.80 m deep");
  });

  it("inside the ring is not called flooded: the ring keeps the water from it, and may be smaller", async () => {
    const both = ring(box(10, 25, 80, 55));
    const { alternatives, structures } = await traced(planOf(leaving(false), both));
    expect(alternatives[0]).toMatchObject({ dry: true, leftWet: [] });
    expect(alternatives[0]!.structures.map(({ name }) => name)).toEqual(["House"]);
    expect(leftOutsideWords(structures[1]!, alternatives[0]!, "us")).toContain(
      "but no overland path",
    );
    const [check] = checksOf(planOf(leaving(false), both), "enclosure");
    expect(check).toMatchObject({ severity: "note" });
    expect(messageOf(check)).toContain("the ring encloses it");
  });

  it("changes what the check of the ring asks for", () => {
    const alone = (protect: boolean | undefined) =>
      checksOf({ ...planOf(leaving(protect)), structures: [leaving(protect)] }, "enclosure")[0]!;
    expect(alone(undefined).severity).toBe("stop");
    expect(alone(false)).toMatchObject({ severity: "note" });
    expect(messageOf(alone(false))).toContain('"Shed" is left outside the ring');
    const beside = (protect: boolean) => checksOf(planOf(leaving(protect)), "enclosure")[0]!;
    expect(beside(true).severity).toBe("stop");
    expect(beside(false).severity).toBe("note");
  });

  it("is not gone round by the search, and not built over", async () => {
    const { structures, request } = await searchSetup(
      { ...terrainOf(SLOPE, 1), samplerFor: () => Promise.resolve(flat(100)) },
      planOf(leaving(false)),
      {
        window: { reachM: 40 },
      },
    );
    expect(structures.map(({ name }) => name)).toEqual(["House"]);
    expect(request.noGo).toHaveLength(1);
    expect(goneRound(ringSettings.value, planOf(leaving(false)))).toEqual(["House"]);
    expect(
      ringOptionsOf(ringSettings.value, planOf(leaving(undefined)), "us").structureIds,
    ).toEqual(["House", "Shed"]);
  });

  it("stands in the plan file as a property; a file without it reads as before", () => {
    const read = (plan: Plan) => {
      const found = readPlanFile(writePlanFile(plan));
      if (!found.ok) throw new Error(said(found.failure).message);
      return found.value.plan;
    };
    expect(read(planOf(leaving(false))).structures[1]!.protect).toBe(false);
    expect(read(planOf(leaving(true))).structures[1]!.protect).toBe(true);
    expect(read(planOf(SHED)).structures[1]).not.toHaveProperty("protect");
    expect(writePlanFile(planOf(SHED))).not.toContain("protect");
    const bad = writePlanFile(planOf(leaving(true))).replace('"protect":true', '"protect":"yes"');
    expect(readPlanFile(bad)).toMatchObject({ ok: false, failure: { code: "plan/bad-value" } });
  });
});

describe("the sized-for water against a floor, without the levee", () => {
  const floorAt = async (floorM: number | null, waterM = 101) => {
    const plan = planWith(waterM, { structures: [{ ...HOUSE, floorM }] });
    return (await traced(plan)).structures[0]!;
  };

  it.each([
    [100.75, 0.25, "water 0.8 ft above the floor", "water 0.25 m above the floor"],
    [101.274, -0.274, "water 0.9 ft below the floor", "water 0.27 m below the floor"],
    [101, 0, "water at the floor", "water at the floor"],
  ] as const)("floor at %f m", async (floorM, overM, us, metric) => {
    const found = await floorAt(floorM);
    expect(found.overFloorM).toBeCloseTo(overM, 6);
    expect(floorWords(found, "us")).toBe(us);
    expect(floorWords(found, "metric")).toBe(metric);
  });

  it("says nothing without a floor, and that the water does not reach a dry one", async () => {
    expect(floorWords(await floorAt(null), "us")).toBeNull();
    const dry = await floorAt(100.8, 100.5);
    expect(dry.wet).toBe(false);
    expect(floorWords(dry, "us")).toBe(
      "water does not reach it; its level is 1.0 ft below the floor",
    );
    const off = { ...dry, wet: null };
    expect(floorWords(off, "us")).toBeNull();
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_HOLDING, DEFAULT_SECTION, DEFAULT_TIME } from "../../shared/defaults.ts";
import { basinInside, levelFor, storedM3 } from "../../shared/holding/basin.ts";
import { seepageThrough } from "../../shared/holding/seepage.ts";
import type { HoldingSettings, Plan } from "../../shared/plan.ts";
import { messageOf, remedyOf, withWords } from "../helpers/check-text.ts";
import {
  flat,
  groundOf,
  openLine,
  PLANE,
  planWith,
  rectangle,
  ring,
  size,
  structure,
} from "../helpers/grounds.ts";

const RING = ring(rectangle(20, 15));
const HOUSE = structure("House", rectangle(6, 5));

function planAt(heightFt: number, holding: Partial<HoldingSettings> = {}): Plan {
  const plan = planWith(100 + (heightFt - 1) * FOOT_M, {
    structures: [HOUSE],
    practice: { raiseM: 0 },
  });
  return { ...plan, holding: { ...DEFAULT_HOLDING, ...holding } };
}

describe("seepage along a line", () => {
  const lengthM = 140;

  it("is the rate of one section times the length, at both ends of the conductivity", () => {
    const { seepage } = size(planAt(4), RING, flat(100)).holding!;
    const run = (12 - DEFAULT_SECTION.crownM / FOOT_M) / 8;
    const one = seepageThrough({
      headM: 3 * FOOT_M,
      baseM: 12 * FOOT_M,
      waterRun: run,
      landRun: run,
    });
    const bare = one.rateM * lengthM;
    expect(seepage.throughBareM3PerS.low / (1e-5 * bare)).toBeCloseTo(1, 4);
    expect(seepage.throughBareM3PerS.high / (1e-3 * bare)).toBeCloseTo(1, 4);
    expect(seepage.throughSheetM3PerS.low / (0.3 * 1e-5 * bare)).toBeCloseTo(1, 4);
    expect(seepage.throughSheetM3PerS.high / (0.4 * 1e-3 * bare)).toBeCloseTo(1, 4);
    expect(seepage.totalM3PerS).toEqual(seepage.throughSheetM3PerS);
    expect(seepage.underM3PerS.high).toBe(0);
  });

  it("counts what passes under when depth and conductivity are given; the sheet takes nothing off it", () => {
    const under = { underDepthM: 2, underLowMPerS: 1e-4, underHighMPerS: 1e-3, sheetLaid: false };
    const { seepage } = size(planAt(4, under), RING, flat(100)).holding!;
    const slab = ((3 * FOOT_M * 2) / (12 * FOOT_M)) * lengthM;
    expect(seepage.underM3PerS.low / (1e-4 * slab)).toBeCloseTo(1, 4);
    expect(seepage.totalM3PerS.high).toBeCloseTo(
      seepage.throughBareM3PerS.high + seepage.underM3PerS.high,
      9,
    );
  });

  it("leaves holes out of the total and says how long they are", () => {
    const hole = groundOf((x, y) => (y < 0 && Math.abs(x) < 5 ? Number.NaN : 100));
    const whole = size(planAt(4), RING, flat(100)).holding!.seepage;
    const { seepage } = size(planAt(4), RING, hole).holding!;
    expect(seepage.lengthNoDataM).toBeGreaterThan(9);
    const share = 1 - seepage.lengthNoDataM / lengthM;
    const found = seepage.throughBareM3PerS.high / whole.throughBareM3PerS.high;
    expect(found).toBeGreaterThan(share - 0.03);
    expect(found).toBeLessThanOrEqual(share + 1e-9);
  });
});

describe("ground under the levee", () => {
  const checks = (plan: Plan, id: string) =>
    size(plan, RING, flat(100))
      .checks.filter((check) => check.id === id)
      .map((check) => withWords(check));

  it("not stated: gradient and creep are told as notes", () => {
    expect(checks(planAt(4), "exit-gradient")).toMatchObject([
      { severity: "note", message: expect.stringContaining("if the soil is sand or silt") },
    ]);
    expect(checks(planAt(4), "creep")).toMatchObject([{ severity: "note" }]);
    expect(checks(planAt(1), "creep")).toEqual([]);
  });

  it("sand: cautions, with what the tables ask", () => {
    const sand = planAt(4, { soil: "fine-sand" });
    const [gradient] = checks(sand, "exit-gradient");
    expect(gradient).toMatchObject({ severity: "caution" });
    expect(messageOf(gradient)).toContain("sand boils");
    expect(remedyOf(gradient)).toContain("Never plug or cap a boil");
    const [creep] = checks(sand, "creep");
    expect(messageOf(creep)).toContain("Lane 7, Bligh 15");
  });

  it("hard clay under a foot of water: nothing", () => {
    const clay = planAt(2, { soil: "hard-clay" });
    expect(checks(clay, "exit-gradient")).toEqual([]);
    expect(checks(clay, "creep")).toEqual([]);
  });
});

const square = (half: number) => ({
  xM: [-half, half, half, -half],
  yM: [-half, -half, half, half],
});

describe("the basin inside", () => {
  it("of a cone fills as the closed form does", () => {
    const cone = groundOf((x, y) => 100 + 0.1 * Math.hypot(x - 2, y + 1), 0.5);
    const basin = basinInside(cone, square(20), [], 0.25)!;
    expect(basin.lowestX).toBeCloseTo(2, 0);
    expect(basin.lowestY).toBeCloseTo(-1, 0);
    expect(basin.areaM2).toBeCloseTo(1600, 0);
    for (const depthM of [0.5, 1, 1.5]) {
      const closed = (Math.PI * (depthM / 0.1) ** 2 * depthM) / 3;
      expect(storedM3(basin, 100 + depthM) / closed).toBeCloseTo(1, 2);
    }
  });

  it("gives back the level for the volume it holds", () => {
    const rough = groundOf((x, y) => 100 + Math.sin(x) + Math.cos(1.7 * y), 1);
    const basin = basinInside(rough, square(10), [], 0.5)!;
    fc.assert(
      fc.property(fc.double({ min: 98.05, max: 105, noNaN: true }), (levelM) => {
        expect(levelFor(basin, storedM3(basin, levelM))).toBeCloseTo(
          Math.max(levelM, basin.lowestM),
          6,
        );
      }),
      { seed: 7, numRuns: 50 },
    );
  });

  it("leaves out structures, holes and the loops of an inward offset", () => {
    const house = { xM: [-5, 5, 5, -5], yM: [-5, -5, 5, 5] };
    expect(basinInside(flat(100), square(10), [house], 0.5)!.areaM2).toBeCloseTo(300, 0);
    const half = groundOf((x) => (x < 0 ? Number.NaN : 100));
    const holed = basinInside(half, square(10), [], 0.5)!;
    expect(holed.holeShare).toBeCloseTo(0.5, 2);
    expect(holed.areaM2).toBeCloseTo(200, 0);
    // A square of 10 m shrunk by 1 m leg by leg: at each corner the two offset legs cross.
    const looped = {
      xM: [0, 10, 9, 9, 10, 0, 1, 1],
      yM: [1, 1, 0, 10, 9, 9, 10, 0],
    };
    expect(basinInside(flat(100), looped, [], 0.05)!.areaM2).toBeCloseTo(64, 0);
    expect(basinInside(flat(Number.NaN), square(10), [], 1)).toBeNull();
  });
});

describe("inside a sized ring", () => {
  const tilted = groundOf((x, y) => 100 + 0.01 * x + 0.002 * y);

  it.each(["counter-clockwise", "clockwise"])("walked %s: the lowest place is the sump", (way) => {
    const corners = way === "clockwise" ? [...rectangle(20, 15)].reverse() : rectangle(20, 15);
    const { inside } = size(planAt(3), ring(corners), tilted).holding!;
    const [x, y] = PLANE.toPlane(inside!.lowestAt);
    expect(x).toBeLessThan(-14);
    expect(x).toBeGreaterThan(-20 + 1);
    expect(y).toBeLessThan(-8);
    expect(inside!.lowestM).toBeCloseTo(tilted.heightAt(x, y), 6);
    const landsideToeM = 1.5 * 3 * FOOT_M;
    const withoutToes = (40 - 2 * landsideToeM) * (30 - 2 * landsideToeM) - 120;
    expect(inside!.areaM2 / withoutToes).toBeCloseTo(1, 1);
    expect(inside!.structureBy).toBe("ground");
    expect(inside!.structureM).toBeCloseTo(100 - 0.06 - 0.01, 3);
    const { storage } = inside!;
    expect(storage[0]).toEqual({ levelM: inside!.lowestM, volumeM3: 0 });
    expect(storage.at(-1)!.levelM).toBeCloseTo(100 + 2 * FOOT_M, 6);
  });

  it("a known floor above the ground is what gets wet", () => {
    const house = { ...HOUSE, floorM: 100.2 };
    const cellar = { ...HOUSE, floorM: 97 };
    const barn = structure("Barn", [
      [100, 0],
      [110, 0],
      [110, 10],
    ]);
    const found = (structures: Plan["structures"]) =>
      size({ ...planAt(3), structures }, RING, tilted).holding!.inside!;
    expect(found([house, barn])).toMatchObject({ structureM: 100.2, structureBy: "floor" });
    expect(found([cellar])).toMatchObject({ structureBy: "ground" });
    expect(found([barn]).structureM).toBeNull();
  });

  it("is never fuller than the water outside, nor wets a building that stands above it", () => {
    const waterM = 100 + FOOT_M;
    const high = { ...HOUSE, floorM: waterM + 0.1 };
    const wetPlan = planAt(2);
    const above = size({ ...wetPlan, structures: [high] }, RING, tilted).holding!.pumping;
    expect(above.hoursToStructure).toEqual({ soonest: null, latest: null });
    expect(above.oneFails?.hoursToStructure ?? null).toBeNull();
    const below = size(
      { ...wetPlan, structures: [{ ...HOUSE, floorM: waterM - 0.1 }] },
      RING,
      tilted,
    );
    expect(below.holding!.pumping.hoursToStructure.soonest).toBeGreaterThan(0);
  });

  it("follows the forecast down after its crest", () => {
    const waterM = 100 + FOOT_M;
    const rows = [0, 6, 12, 18, 24].map((hour, k) => ({
      at: `2026-04-0${hour === 24 ? 4 : 3}T${String(hour % 24).padStart(2, "0")}:00-05:00`,
      levelM: waterM - 0.1 * k,
      lowM: null,
      highM: null,
    }));
    const forecast = { levels: "elevation" as const, rows, note: "" };
    const steady = size(planAt(2), RING, tilted).holding!.pumping.withoutPumps;
    const plan = { ...planAt(2), time: { ...DEFAULT_TIME, forecast } };
    const falling = size(plan, RING, tilted).holding!.pumping.withoutPumps;
    for (const [k, row] of falling.entries()) {
      expect(row.outsideM).toBeCloseTo(waterM - (0.4 * row.hours) / 24, 6);
      expect(steady[k]!.outsideM).toBeCloseTo(waterM, 6);
      for (const levelM of [row.lowM, row.highM]) {
        if (levelM !== null) expect(levelM).toBeLessThan(row.outsideM);
      }
    }
  });

  it("fills without pumps: hours follow from the storage and the inflow", () => {
    const { pumping, inside } = size(planAt(3), RING, tilted).holding!;
    const { demandM3PerS, rainM3PerS } = pumping;
    expect(rainM3PerS!.high).toBeCloseTo(0.95 * (0.0254 / 3600) * 1200, 6);
    expect(pumping.capacityM3PerS).toBeCloseTo(1.5 * demandM3PerS.high, 12);
    const levels = pumping.withoutPumps.map(({ highM }) => highM ?? Number.POSITIVE_INFINITY);
    expect(levels).toEqual([...levels].sort((a, b) => a - b));
    expect(pumping.withoutPumps[0]!.lowM).toBeLessThan(pumping.withoutPumps[0]!.highM!);
    const { soonest, latest } = pumping.hoursToStructure;
    expect(soonest).toBeGreaterThan(0);
    expect(latest).toBeGreaterThan(soonest!);
    const near = inside!.storage.findLast(({ levelM }) => levelM <= inside!.structureM!)!;
    expect(soonest! * 3600 * demandM3PerS.high).toBeGreaterThanOrEqual(near.volumeM3);
  });

  it("one pump that fails: what comes in beyond the rest, and how long that leaves", () => {
    const holding = { pumpMargin: 1, rainMPerS: 50 / 3.6e6 };
    const line = size(planAt(3, holding), RING, tilted);
    const { proposed, oneFails, demandM3PerS } = line.holding!.pumping;
    const left = (proposed!.working - 1) * proposed!.eachM3PerS;
    expect(oneFails!.excessM3PerS).toBeCloseTo(demandM3PerS.high - left, 12);
    expect(oneFails!.hoursToStructure).toBeLessThan(2);
    expect(line.checks.map((check) => check.id)).toContain("pump-failure");
    expect(oneFails!.levels[5]!.highM).not.toBe(oneFails!.levels[5]!.lowM);
  });
});

describe("checks of pumping", () => {
  const messages = (plan: Plan, alignment = RING) =>
    size(plan, alignment, flat(100)).checks.filter((check) => check.id === "pumps");

  it("say what is to be pumped, with what, where from, and what is not counted", () => {
    const [check] = messages(planAt(3));
    expect(check).toMatchObject({ severity: "note", at: expect.anything() });
    expect(messageOf(check)).toMatch(/^To be pumped: \d+ to \d+ gpm\. Pumps for \d+ gpm/);
    expect(messageOf(check)).toContain("1 spare");
    expect(messageOf(check)).toContain("seepage under the levee");
    const line = openLine([
      [-20, 0],
      [20, 0],
    ]);
    expect(messageOf(messages(planAt(3), line)[0])).toContain("is not known");
  });

  it("ground inside that is missing", () => {
    const hole = groundOf((x, y) => (Math.hypot(x - 10, y) < 3 ? Number.NaN : 100));
    const ids = size(planAt(3), RING, hole).checks.map((check) => check.id);
    expect(ids).toContain("inside-holes");
    expect(size(planAt(3), RING, flat(100)).checks.map((check) => check.id)).not.toContain(
      "inside-holes",
    );
  });
});

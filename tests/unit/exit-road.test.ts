import { describe, expect, it } from "vitest";
import { timeOf } from "../../shared/defaults.ts";
import type { ExitRoad, LeaveLevel, Plan } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { roadFloodWords } from "../../shared/words/roads.ts";
import { traceWater } from "../../workers/water/trace-water.ts";
import { PLANE, planWith, structure } from "../helpers/grounds.ts";
import { byFormula, type Heights, terrainOf } from "../helpers/water-grids.ts";

const at = (xM: number, southM: number) => PLANE.toLonLat(xM, -southM);
const HOUSE = structure("House", [
  [90, -10],
  [99, -10],
  [99, -19],
  [90, -19],
]);
/** Rises 1 in 100 to the east, where the house is. */
const SLOPE = byFormula(120, 60, (x) => 100 + 0.01 * x);
const ROAD: ExitRoad = { id: "r", name: "Mill road", path: [at(92, 40), at(40, 40)] };

/** 1 m higher in 10 hours: 100.0 m at 06:00, 101.0 m at 16:00. */
const FORECAST = {
  ...{ levels: "elevation" as const, note: "" },
  rows: [
    { at: "2026-04-08T06:00-05:00", levelM: 100, lowM: null, highM: null },
    { at: "2026-04-08T16:00-05:00", levelM: 101, lowM: null, highM: null },
  ],
};

const leaveAt = (levelM: number | null, hour: string | null = null): LeaveLevel => ({
  ...{ by: "elevation", levelM, at: hour, note: "" },
});

function plan(changes: Partial<Plan> = {}): Plan {
  const base = planWith(101, { structures: [HOUSE], roads: [ROAD] });
  return { ...base, time: { ...timeOf(base), forecast: FORECAST }, ...changes };
}

async function traced(changes: Partial<Plan> = {}, ground: Heights = SLOPE) {
  const { roads, checks } = await traceWater(terrainOf(ground), { plan: plan(changes) });
  return { road: roads[0]!, check: checks.find(({ id }) => id === "exit-road") };
}

describe("an exit road that leads down to the river", () => {
  it("floods at its lowest place, at the hour the likely forecast passes that", async () => {
    const { road, check } = await traced();
    expect(road.isKnown).toBe(true);
    expect(road.floodsAboveM).toBeCloseTo(100.4, 5);
    expect(road.hour).toBe("2026-04-08T10:00-05:00");
    expect(road.at![0]).toBeCloseTo(at(40, 40)[0], 5);
    expect(check).toMatchObject({ severity: "caution", finding: { leavesBefore: null } });
  });

  it("must be fixed when people are set to leave later, by level or by hour", async () => {
    const late = [leaveAt(100.6), leaveAt(null, "2026-04-08T11:00-05:00")];
    for (const leave of late) {
      expect((await traced({ leave })).check).toMatchObject({ severity: "stop" });
    }
    const early = [
      leaveAt(100.4),
      leaveAt(null, "2026-04-08T09:00-05:00"),
      leaveAt(100.6, "2026-04-08T09:00-05:00"),
    ];
    for (const leave of early) {
      expect((await traced({ leave })).check).toMatchObject({ severity: "note" });
    }
  });

  it("is under water from the start of a forecast that begins above it, whatever people are set to leave at", async () => {
    const rows = FORECAST.rows.map((row) => ({ ...row, levelM: row.levelM + 0.5 }));
    const time = { ...timeOf(plan()), forecast: { ...FORECAST, rows } };
    for (const leave of [leaveAt(100.4), leaveAt(null, "2026-04-08T05:00-05:00"), null]) {
      const { road, check } = await traced({ time, leave });
      expect(road).toMatchObject({ fromStart: true, hour: "2026-04-08T06:00-05:00" });
      expect(check).toMatchObject({ severity: "stop", finding: { fromStart: true } });
    }
    expect((await traced()).road.fromStart).toBe(false);
  });

  it("has a level and no hour without a forecast, and where the forecast never gets there", async () => {
    const without = await traced({ time: { ...timeOf(plan()), forecast: null } });
    expect(without.road).toMatchObject({ hour: null });
    expect(without.road.floodsAboveM).toBeCloseTo(100.4, 5);
    const high: ExitRoad = { ...ROAD, path: [at(105, 40), at(110, 40)] };
    expect((await traced({ roads: [high] })).road.hour).toBeNull();
  });

  it("is not known over a gap in the data or off it", async () => {
    const holed = byFormula(120, 60, (x, south) =>
      Math.hypot(x - 70, south - 40) < 2 ? Number.NaN : 100 + 0.01 * x,
    );
    const gap = await traced({}, holed);
    expect(gap.road).toMatchObject({ isKnown: false, floodsAboveM: null, hour: null });
    expect(gap.check).toMatchObject({ finding: { kind: "road-not-known" } });
    const off: ExitRoad = { ...ROAD, path: [at(92, 40), at(92, 90)] };
    expect((await traced({ roads: [off] })).road.isKnown).toBe(false);
  });

  it("behind a bank floods over the bank, or through an open culvert earlier", async () => {
    const banked = byFormula(120, 60, (x, south) => {
      if (south < 5 || south > 55 || x > 110) return 108;
      if (Math.abs(x - 30) <= 2) return 100.8;
      return x < 30 ? 100 : 100.2;
    });
    expect((await traced({}, banked)).road.floodsAboveM).toBeCloseTo(100.8, 5);
    const culverts = [
      {
        ...{ id: "c", name: "Bank", path: [at(26, 30), at(34, 30)], sizeM: null, gate: null },
        ...{ invertsM: [null, null] as const, plugged: false },
      },
    ];
    expect((await traced({ culverts }, banked)).road.floodsAboveM).toBeCloseTo(100.2, 5);
  });
});

describe("an exit road in words and in the plan file", () => {
  it("is said with its stage and hour", () => {
    const hour = "2026-04-08T10:00-05:00";
    const flood = { road: "Mill road", elevationM: 265, stageM: 9, hour, fromStart: false };
    expect(roadFloodWords(flood, "us")).toContain(
      'Exit road "Mill road" floods above stage 29.5 ft',
    );
    expect(roadFloodWords({ ...flood, stageM: null, hour: null }, "metric")).toBe(
      'Exit road "Mill road" floods above 265.00 m',
    );
    expect(roadFloodWords({ ...flood, fromStart: true }, "us")).toMatch(
      /^Exit road "Mill road" is under water from the forecast's start on, Wed Apr 8, .*: it floods above stage 29\.5 ft$/,
    );
  });

  it("is kept in the file as a line of the role road", () => {
    const file = writePlanFile(plan());
    expect(JSON.parse(file).features.at(-1)).toMatchObject({
      properties: { role: "road", name: "Mill road" },
      geometry: { type: "LineString" },
    });
    const read = readPlanFile(file);
    expect(read.ok && read.value.plan.roads).toMatchObject([{ id: "r", name: "Mill road" }]);
  });
});

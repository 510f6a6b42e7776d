import { beforeAll, describe, expect, it } from "vitest";
import { checkBuildings } from "../../shared/buildings/check-buildings.ts";
import type { BuildingsCheck } from "../../shared/buildings/check-types.ts";
import { planOfLine } from "../../shared/buildings/line-plan.ts";
import { lowBehindBanks } from "../../shared/buildings/shown-states.ts";
import type { BuildingState } from "../../shared/buildings/types.ts";
import { listedOnce } from "../../shared/completeness.ts";
import { DEFAULT_TIME } from "../../shared/defaults.ts";
import { Refusal } from "../../shared/failure.ts";
import type { Engine } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import {
  buildingAt,
  engineOn,
  outlineAt,
  placeOf,
  townPlan,
  townRaster,
} from "../helpers/sweep-town.ts";

/*
 * A plain at 100 m that falls to the river at its west edge, a mound at 103 m, a basin at 98.5 m, a pit that no water
 * reaches, and a strip without data. Water at 100.8 m; a bank at 100.6 m between river and plain is its only way in.
 */
const SIDE = 520;
const WATER_M = 100.8;
const BANK_M = 100.6;

function heightAt(x: number, y: number): number {
  if (x < -220) return 97;
  if (x < -200) return BANK_M;
  if (Math.hypot(x + 120, y - 120) < 40) return 103;
  if (Math.hypot(x - 120, y - 120) < 45) return 98.5;
  if (Math.hypot(x - 120, y + 120) < 45) return Math.hypot(x - 120, y + 120) < 30 ? 100 : 102;
  if (x > 236 && y < 0) return Number.NaN;
  return 100;
}

const noGo: Plan["noGo"] = [
  { id: "track", name: "Track", outline: outlineAt(-120, -131, 200, 6) },
  { id: "street", name: "Street", outline: outlineAt(-120, -109, 200, 6) },
  { id: "lane", name: "Lane", outline: outlineAt(-104, -120, 6, 200) },
  { id: "alley", name: "Alley", outline: outlineAt(-136, -120, 6, 200) },
];
const BUILDINGS = [
  buildingAt("plain", 0, 0),
  buildingAt("mound", -120, 120),
  buildingAt("basin", 120, 120),
  buildingAt("pit", 120, -120),
  buildingAt("between", -120, -120),
  buildingAt("edge", 238, -120),
  buildingAt("off", 400, 0),
];
const RIVER = { id: "river", name: "River", at: placeOf(-240, 0) };
const FORECAST = {
  levels: "elevation" as const,
  note: "",
  rows: [
    { at: "2026-04-01T00:00Z", levelM: 99, lowM: null, highM: null },
    { at: "2026-04-03T00:00Z", levelM: 101, lowM: null, highM: null },
  ],
};
const hour = (text: string) => Date.parse(text) / 1000;

let engine: Engine;
beforeAll(async () => {
  engine = await engineOn(townRaster(SIDE, heightAt));
});

function plan(changes: Partial<Plan> = {}): Plan {
  const time = {
    ...DEFAULT_TIME,
    forecast: FORECAST,
    startAt: "2026-04-01T00:00Z",
    shifts: 2,
    lit: true,
  };
  return townPlan(WATER_M, { noGo, time, sources: [RIVER], ...changes });
}

function states({ buildings }: BuildingsCheck): Record<string, BuildingState> {
  return Object.fromEntries(buildings.map(({ id, state }) => [id, state]));
}

describe("a plain with a mound, a basin and a pit", () => {
  it("gives each building its one state", async () => {
    const found = await checkBuildings(engine, 1, { plan: plan(), buildings: BUILDINGS });
    expect(states(found)).toEqual({
      plain: "can-be-ringed",
      mound: "dry",
      basin: "over-limit",
      pit: "dry",
      between: "no-room",
      edge: "no-data",
      off: "no-data",
    });
    const [plain, mound, , pit, , edge] = found.buildings;
    expect(plain!.depthM).toBeCloseTo(0.8, 4);
    expect(plain!.sillM).toBeCloseTo(BANK_M, 4);
    expect(plain!.line!.kind).toBe("ring");
    expect(plain!.line!.greatestHeightM).toBeCloseTo(WATER_M + plan().water.freeboardM - 100, 3);
    expect(mound).toMatchObject({ depthM: 0, line: null, firstWetAtS: null });
    expect(pit!.sillM).toBeCloseTo(102, 4);
    expect(pit!.lowM).toBeCloseTo(100, 4);
    expect(mound!.lowM).toBeCloseTo(103, 4);
    const checked = new Map(found.buildings.map((each) => [each.id, each]));
    expect(lowBehindBanks({ checked }, WATER_M)).toEqual(["pit"]);
    expect(lowBehindBanks({ checked }, 99.9)).toEqual(["basin"]);
    expect(edge).toMatchObject({ depthM: null, sillM: null, line: null });
  });

  it("floods what an open culvert of the plan leads to, and says what must be plugged first", async () => {
    const culvert = {
      ...{ id: "c", name: "Mill culvert", path: [placeOf(120, -60), placeOf(120, -100)] },
      ...{ invertsM: [null, null] as const, sizeM: null, gate: null, plugged: false },
    };
    const drain = {
      ...{ id: "d", name: "Laundry", at: placeOf(0, 0), kind: "floor-drain" as const },
      ...{ joinsOutside: true, plugged: false },
    };
    const listed = BUILDINGS.filter(({ id }) => id === "plain" || id === "pit");
    const check = (changes: Partial<Plan>) =>
      checkBuildings(engine, 1, { plan: plan(changes), buildings: listed });
    const [, pit] = (await check({ culverts: [culvert] })).buildings;
    expect(pit!.state).not.toBe("dry");
    expect(pit!.sillM).toBeCloseTo(BANK_M, 4);
    const plugged = { culverts: [{ ...culvert, plugged: true }] };
    expect((await check(plugged)).buildings[1]!.state).toBe("dry");
    const [plain] = (await check({ drains: [drain] })).buildings;
    expect(plain!.sillM).toBeCloseTo(100, 4);
    expect(plain!.line!.mustFix.map(({ id }) => id)).toEqual(["drain"]);
  });

  it("says of each line what the plan opened from it says must be fixed", async () => {
    const known = plan();
    const listed = BUILDINGS.filter(({ id }) => id === "plain" || id === "basin");
    const found = await checkBuildings(engine, 1, { plan: known, buildings: listed });
    expect(found.buildings[1]!.line!.mustFix.map(({ id }) => id)).toContain("over-limit");
    for (const [k, { line }] of found.buildings.entries()) {
      const own = planOfLine(known, [listed[k]!], line!, "line");
      const { lines } = await engine.size({ plan: own });
      const { checks } = lines[0]!;
      const stops = listedOnce(checks).filter(({ severity }) => severity === "stop");
      expect(line!.mustFix).toEqual(
        stops.map(({ id, fromM, toM, finding }) => ({ id, fromM, toM, finding })),
      );
    }
  });

  it("says when each is first wet: when the river passes the bank", async () => {
    const { buildings } = await checkBuildings(engine, 1, { plan: plan(), buildings: BUILDINGS });
    const passed = hour("2026-04-01T00:00Z") + ((BANK_M - 99) / 2) * 48 * 3600;
    expect(Math.abs(buildings[0]!.firstWetAtS! - passed)).toBeLessThan(5);
  });

  it("is too late where the start leaves too little time, and not known without people", async () => {
    const [only] = BUILDINGS;
    const late = { ...plan().time!, startAt: "2026-04-02T10:00Z" };
    const asked = async (changes: Partial<Plan>) =>
      (await checkBuildings(engine, 1, { plan: plan(changes), buildings: [only!] })).buildings[0]!;
    const early = await asked({});
    expect(early.state).toBe("can-be-ringed");
    // Closed a foot of water before the bank is passed.
    const closedByS = hour("2026-04-01T00:00Z") + ((BANK_M - 0.3048 - 99) / 2) * 48 * 3600;
    const bags = early.line!.personHours * plan().practice.jobRate;
    const workedH = 2 + bags / (60 * plan().practice.jobRate);
    expect(early.latestStartAtS!).toBeLessThanOrEqual(closedByS - workedH * 3600 + 1);
    expect(early.latestStartAtS!).toBeGreaterThan(closedByS - (workedH + 0.25) * 3600 - 5);
    expect((await asked({ time: late })).state).toBe("too-late");
    const nobody = await asked({ practice: { ...plan().practice, people: null }, time: late });
    expect(nobody).toMatchObject({ state: "can-be-ringed", latestStartAtS: null });
  });

  it("refuses water that covers nothing at all", async () => {
    const low = checkBuildings(engine, 1, { plan: townPlan(50), buildings: BUILDINGS });
    await expect(low).rejects.toMatchObject({ code: "buildings/no-water" });
  });

  it("tells a building that fails, and goes on with the others", async () => {
    const flat = {
      ...buildingAt("flat", 30, 30),
      parts: [[placeOf(30, 30), placeOf(40, 30), placeOf(35, 30)]],
    };
    const { buildings } = await checkBuildings(engine, 1, {
      plan: plan(),
      buildings: [flat, BUILDINGS[0]!],
    });
    expect(buildings[0]).toMatchObject({ state: "no-data", failed: "site/flat-structure" });
    expect(buildings[1]!.state).toBe("can-be-ringed");
  });

  it("ends when it is cancelled", async () => {
    const stop = new AbortController();
    const running = checkBuildings(
      engine,
      1,
      { plan: plan(), buildings: BUILDINGS },
      { signal: stop.signal, onChecked: () => stop.abort() },
    );
    await expect(running).rejects.toMatchObject({ code: "cancelled" });
    await expect(running).rejects.toBeInstanceOf(Refusal);
  });
});

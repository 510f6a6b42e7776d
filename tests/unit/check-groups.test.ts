import { describe, expect, it } from "vitest";
import { type BuildingsEngine, checkBuildings } from "../../shared/buildings/check-buildings.ts";
import type { BuildingsOptions, BuildingWater } from "../../shared/buildings/check-types.ts";
import { groupId } from "../../shared/buildings/group-id.ts";
import { refusal } from "../../shared/failure.ts";
import { checkedBuilding, checkedGroup, lineOf } from "../helpers/checked-buildings.ts";
import { buildingAt, townPlan } from "../helpers/sweep-town.ts";

/** A dense block: each group takes a fifth less than its members' own rings, so that all are worth it. */
const ACROSS = 6;
const BLOCK = Array.from({ length: ACROSS * ACROSS }, (_, k) =>
  buildingAt(`b${k}`, 16 * (k % ACROSS), 16 * Math.floor(k / ACROSS)),
);
const OWN_BAGS = 1000;
const NOT_WORTH = 2 * OWN_BAGS;

const flooded = (id: string): BuildingWater => ({
  ...{
    id,
    state: "flooded",
    depthM: 0.5,
    sillM: 99,
    lowM: 98,
    firstWetAtS: null,
    aroundM: null,
    at: null,
  },
  river: [],
});

function engineOf(bagsEach: number) {
  const tried: string[] = [];
  const engine: BuildingsEngine = {
    traceBuildings: async ({ buildings }) => ({
      waters: buildings.map(({ id }) => flooded(id)),
      trace: { cellM: 1, everyCell: true },
    }),
    checkBuilding: async ({ building: { id } }) =>
      checkedBuilding(id, { line: lineOf(OWN_BAGS, { lengthM: 72 }) }),
    checkGroup: async ({ members }, options) => {
      if (options?.signal?.aborted) throw refusal("cancelled", { overtaken: false });
      const ids = members.map(({ id }) => id);
      tried.push(ids.join());
      return checkedGroup(groupId(members), ids, { line: lineOf(bagsEach * ids.length) });
    },
  };
  return { engine, tried };
}

function checked(engine: BuildingsEngine, atOnce: number, options?: BuildingsOptions) {
  return checkBuildings(engine, atOnce, { plan: townPlan(100), buildings: BLOCK }, options);
}

describe("rings around neighbors in a dense block", () => {
  it("are looked for around no more groups than buildings, of all sizes, and those left are counted", async () => {
    const { engine, tried } = engineOf(0.8 * OWN_BAGS);
    const { groups, groupsTried } = await checked(engine, 1);
    expect(groupsTried.tried).toBe(tried.length);
    expect(new Set(tried).size).toBe(tried.length);
    expect(tried.length).toBeLessThanOrEqual(BLOCK.length);
    expect(groupsTried.left).toBeGreaterThan(BLOCK.length);
    expect(new Set(groups.map(({ members }) => members.length))).toEqual(new Set([2, 3, 4]));
    const other = engineOf(0.8 * OWN_BAGS);
    expect((await checked(other.engine, 3)).groups).toEqual(groups);
  });

  it("are looked for around pairs alone where none is worth it", async () => {
    const { engine, tried } = engineOf(NOT_WORTH);
    const { groups } = await checked(engine, 2);
    expect(groups).toEqual([]);
    expect(tried.every((ids) => ids.split(",").length === 2)).toBe(true);
  });

  it("are tasks of the progress, which never goes back, and end with it", async () => {
    const shares: number[] = [];
    const { engine, tried } = engineOf(0.8 * OWN_BAGS);
    await checked(engine, 1, { onProgress: (share) => shares.push(share) });
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    expect(shares[BLOCK.length - 1]).toBeLessThan(0.7);
    expect(shares.length).toBeGreaterThanOrEqual(BLOCK.length + tried.length);
  });

  it("stop when the check is cancelled", async () => {
    const stop = new AbortController();
    const { engine, tried } = engineOf(0.8 * OWN_BAGS);
    const onGroup = () => stop.abort();
    const ended = checked(engine, 1, { onGroup, signal: stop.signal });
    await expect(ended).rejects.toMatchObject({ code: "cancelled" });
    expect(tried).toHaveLength(1);
  });

  it("are counted as left where their search failed", async () => {
    const { engine } = engineOf(0.8 * OWN_BAGS);
    const failing = { ...engine, checkGroup: () => Promise.reject(new Error("broken")) };
    const { groups, groupsTried } = await checked(failing, 1);
    expect(groups).toEqual([]);
    expect(groupsTried.left).toBeGreaterThanOrEqual(groupsTried.tried);
  });
});

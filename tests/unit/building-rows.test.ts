import { describe, expect, it } from "vitest";
import { buildingRows, type Said } from "../../shared/buildings/rows.ts";
import {
  countStates,
  floodedAt,
  floodedCount,
  SHOWN_STATES,
  type Sweep,
  shownStates,
} from "../../shared/buildings/shown-states.ts";
import { sortRows } from "../../shared/buildings/sort-rows.ts";
import { checkedBuilding, checkedGroup, lineOf } from "../helpers/checked-buildings.ts";

const SWEEP: Sweep = {
  checked: new Map(
    [
      checkedBuilding("a", { name: "12 Main St", line: lineOf(4000), latestStartAtS: 300 }),
      checkedBuilding("b", { name: "9 Main St", state: "over-limit", line: lineOf(6000) }),
      checkedBuilding("c", { name: "Clinic", line: lineOf(2000), latestStartAtS: 100 }),
      checkedBuilding("d", { name: "Depot", state: "no-room", line: null, depthM: 0.4 }),
      checkedBuilding("e", { name: "Hall", state: "dry", line: null, depthM: 0 }),
      checkedBuilding("f", { name: "Mill", state: "no-data", line: null, depthM: null }),
    ].map((each) => [each.id, each]),
  ),
  groups: [
    checkedGroup("a+b", ["a", "b"], { line: lineOf(7000), latestStartAtS: 50 }),
    checkedGroup("c+d", ["c", "d"], { line: lineOf(9000), state: "over-limit" }),
  ],
};
const NOTHING_SAID: Said = new Map();

function rowsFor(chosen: readonly string[]) {
  const states = shownStates(SWEEP, { chosen });
  return buildingRows({ sweep: SWEEP, states, choice: { chosen }, said: NOTHING_SAID });
}

describe("the states of checked buildings", () => {
  it("makes the members of a group ring that can be built ringable, and of no other", () => {
    const states = shownStates(SWEEP, null);
    expect(states.get("b")).toBe("can-be-ringed");
    expect(states.get("d")).toBe("no-room");
  });

  it("says chosen of every building inside a chosen line", () => {
    const states = shownStates(SWEEP, { chosen: ["a+b", "c"] });
    expect(["a", "b", "c"].map((id) => states.get(id))).toEqual(["chosen", "chosen", "chosen"]);
  });

  it("has every building in exactly one", () => {
    const counts = countStates(shownStates(SWEEP, { chosen: ["c"] }).values());
    expect(SHOWN_STATES.reduce((sum, state) => sum + counts[state], 0)).toBe(SWEEP.checked.size);
    expect(floodedCount(counts)).toBe(4);
    expect(counts.chosen).toBe(1);
  });
});

describe("how many flood at another level", () => {
  it("counts those whose sill is below it, and none without data", () => {
    const checked = new Map(
      [
        checkedBuilding("a", { sillM: 10 }),
        checkedBuilding("b", { sillM: 12, state: "dry" }),
        checkedBuilding("c", { sillM: null, state: "dry" }),
        checkedBuilding("d", { sillM: 5, state: "no-data" }),
      ].map((each) => [each.id, each]),
    );
    expect([9, 11, 13].map((levelM) => floodedAt({ checked }, levelM))).toEqual([0, 1, 2]);
  });
});

describe("the rows of checked buildings", () => {
  it("has one row for a chosen group, with what its ring saves, and numbers by latest start", () => {
    const rows = rowsFor(["a+b", "c"]);
    expect(rows).toHaveLength(5);
    const group = rows.find(({ id }) => id === "a+b")!;
    expect(group).toMatchObject({ mark: 1, savesBags: 3000, members: ["a", "b"] });
    expect(rows.find(({ id }) => id === "c")?.mark).toBe(2);
    expect(rows.filter(({ mark }) => mark !== null)).toHaveLength(2);
  });

  it("takes name, floor and priority as the person says them now", () => {
    const said: Said = new Map([["c", { name: "New clinic", floorM: 2, priority: "first" }]]);
    const rows = buildingRows({ sweep: SWEEP, states: new Map(), choice: null, said });
    const clinic = rows.find(({ id }) => id === "c");
    expect(clinic).toMatchObject({ name: "New clinic", floorM: 2, priority: "first" });
  });

  it("sorts names as people count, and puts what is not known last either way", () => {
    const rows = rowsFor([]);
    const names = sortRows(rows, { by: "name", descending: false }).map(({ name }) => name);
    expect(names.slice(0, 2)).toEqual(["9 Main St", "12 Main St"]);
    for (const descending of [true, false]) {
      const bags = sortRows(rows, { by: "bags", descending }).map(({ line }) => line?.bags ?? null);
      expect(bags.slice(3)).toEqual([null, null, null]);
      expect(bags.slice(0, 3)).toEqual(descending ? [6000, 4000, 2000] : [2000, 4000, 6000]);
    }
  });
});

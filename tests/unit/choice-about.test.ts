import { describe, expect, it } from "vitest";
import { candidatesOf } from "../../shared/buildings/candidates.ts";
import { sameInAll } from "../../shared/buildings/same-in-all.ts";
import type { CheckedBuilding, CheckedGroup } from "../../shared/buildings/types.ts";
import { curveBags, usualMore } from "../../shared/buildings/usual-more.ts";

const FIGURES = {
  ...{ bags: 900, sandM3: 10, sheetM2: 40, personHours: 50 },
  ...{ greatestHeightM: 0.8, lengthM: 60, lengthOverLimitM: 0 },
};
const LINE = { kind: "ring", coordinates: [], leveeBags: 800, mustFix: [], ...FIGURES } as const;

function checked(id: string, rest: Partial<CheckedBuilding>): CheckedBuilding {
  return {
    ...{ id, name: id, floorM: null, weight: 2, priority: "", state: "can-be-ringed", depthM: 1 },
    ...{ sillM: null, firstWetAtS: null, latestStartAtS: null, closedByAtS: null, line: LINE },
    ...{ byStage: [], at: null, failed: null },
    ...rest,
  };
}

function group(id: string, members: string[], state: CheckedGroup["state"]): CheckedGroup {
  const times = { firstWetAtS: 100_800, latestStartAtS: null, closedByAtS: null };
  return { id, members, state, line: LINE, byStage: [], ...times };
}

describe("candidates from checked buildings", () => {
  it("are the lines that can be built in time, with the hours until their own water less the margin", () => {
    const buildings = [
      checked("a", { firstWetAtS: 86_400 }),
      checked("late", { state: "too-late", weight: 3 }),
      checked("high", { state: "over-limit" }),
      checked("dry", { state: "dry", line: null }),
    ];
    const groups = [
      group("ab", ["a", "late"], "can-be-ringed"),
      group("over", ["a", "high"], "over-limit"),
      group("gone", ["a", "elsewhere"], "can-be-ringed"),
    ];
    const found = candidatesOf(buildings, groups, { startAtS: 43_200, marginH: 2 });
    expect(found).toEqual([
      { id: "a", members: ["a"], weight: 2, closedByH: 10, ...FIGURES },
      { id: "ab", members: ["a", "late"], weight: 5, closedByH: 14, ...FIGURES },
    ]);
    const early = [checked("a", { firstWetAtS: 86_400, closedByAtS: 72_000 })];
    expect(candidatesOf(early, [], { startAtS: 43_200, marginH: 2 })[0]?.closedByH).toBe(8);
    const [open] = candidatesOf(buildings, [], { startAtS: null, marginH: 2 });
    expect(open?.closedByH).toBe(null);
  });
});

describe("beside a choice", () => {
  it("names what several choices have in common", () => {
    const choices = [
      { chosen: ["a", "bc"], buildings: ["a", "b", "c"] },
      { chosen: ["c", "a"], buildings: ["c", "a"] },
    ];
    expect(sameInAll(choices)).toEqual({ lines: ["a"], buildings: ["a", "c"] });
    expect(sameInAll([])).toEqual({ lines: [], buildings: [] });
  });

  it("steps over bags in round numbers, with today's among them", () => {
    const bags = curveBags(120_000, 90_000);
    expect([bags[0], bags[1], bags.includes(120_000)]).toEqual([0, 5000, true]);
    expect(bags.length).toBeLessThan(50);
    const odd = curveBags(7123, 0);
    expect(odd).toEqual([...odd].sort((a, b) => a - b));
    expect(odd).toContain(7123);
    expect(curveBags(null, 0).length).toBeGreaterThan(1);
  });

  it("looks at round figures of the person's own units", () => {
    expect(usualMore("us")[1]?.sandM3).toBeCloseTo(76.455, 3);
    expect(usualMore("metric")[1]).toEqual({ sandM3: 75 });
  });
});

import { describe, expect, it } from "vitest";
import { candidatesOf, tooLateOf } from "../../shared/buildings/candidates.ts";
import { timedByPlan } from "../../shared/buildings/plan-times.ts";
import type { MustFix } from "../../shared/buildings/types.ts";
import type { Plan } from "../../shared/plan.ts";
import { checkedBuilding, lineOf } from "../helpers/checked-buildings.ts";
import { townPlan } from "../helpers/sweep-town.ts";

const START = Date.parse("2026-04-01T06:00-05:00") / 1000;
const HOUR = 3600;
const bare = townPlan(100);
const MOST = 60;

/** With 10 people a line of 2,850 bags takes 15 h at 19 bags a person-hour, and 2 h of setting up; day and night. */
const LINE = lineOf(3000, { leveeBags: 2850 });
const building = checkedBuilding("a", { line: LINE, closedByAtS: START + 18 * HOUR });

function crewOf(people: number | null): Plan {
  const practice = { ...bare.practice, people };
  return { ...bare, practice, time: { ...bare.time!, shifts: 3 } };
}

describe("a line with the crew of the plan", () => {
  it("starts as late as they, and no more than fit on the line, still allow", () => {
    const ten = timedByPlan(crewOf(10), MOST, building);
    expect(ten).toMatchObject({ state: "can-be-ringed", latestStartAtS: START + HOUR });
    expect(timedByPlan(crewOf(200), 10, building)).toEqual(ten);
    expect(timedByPlan(crewOf(null), MOST, building).latestStartAtS).toBe(null);
  });

  it("is too late with fewer, and then no candidate but a reason", () => {
    const few = timedByPlan(crewOf(8), MOST, building);
    expect(few.state).toBe("too-late");
    const times = { startAtS: START, marginH: 0 };
    expect(candidatesOf([few], [], times)).toEqual([]);
    expect(tooLateOf([few], [])).toEqual(["a"]);
    const ten = timedByPlan(crewOf(10), MOST, few);
    expect(candidatesOf([ten], [], times)).toHaveLength(1);
    expect(tooLateOf([ten], [])).toEqual([]);
  });

  it("is too late where the check of its own plan says so", () => {
    const late = { id: "time", fromM: 0, toM: 0, finding: { kind: "late" } } as unknown as MustFix;
    const own = { ...building, line: { ...LINE, mustFix: [late] } };
    expect(timedByPlan(crewOf(10), MOST, own).state).toBe("too-late");
    const over = { ...own, state: "over-limit" } as const;
    expect(timedByPlan(crewOf(10), MOST, over).state).toBe("over-limit");
  });
});

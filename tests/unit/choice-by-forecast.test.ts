import { describe, expect, it } from "vitest";
import { candidatesOf } from "../../shared/buildings/candidates.ts";
import type { ChoiceQuestion } from "../../shared/buildings/choice-types.ts";
import { bandSweeps, offSweep } from "../../shared/buildings/level-choices.ts";
import { type LineCrew, leftToHours, withCrew } from "../../shared/buildings/line-times.ts";
import type { Sweep } from "../../shared/buildings/shown-states.ts";
import type { AtStage, CheckedBuilding } from "../../shared/buildings/types.ts";
import { HOUR_S } from "../../shared/constants.ts";
import { DEFAULT_TIME, EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Plan } from "../../shared/plan.ts";
import { choose } from "../../workers/choice/choose.ts";
import { choiceLine } from "../../workers/command/sweep-choice.ts";
import { checkedBuilding, checkedGroup, lineOf } from "../helpers/checked-buildings.ts";
import { NO_LIMIT } from "../helpers/choice-cases.ts";
import { seededRandom } from "../helpers/seeded-random.ts";

const [LOW_M, SIZED_M, HIGH_M] = [7, 8, 9];
const START = "2026-04-01T00:00Z";
const START_S = Date.parse(START) / 1000;
/** Rises by 1 m in 10 hours from 1 m below each crest. */
const PLAN: Plan = {
  ...EMPTY_PLAN,
  water: { ...EMPTY_PLAN.water, by: "elevation", elevationM: SIZED_M },
  time: {
    ...DEFAULT_TIME,
    startAt: START,
    forecast: {
      levels: "elevation",
      note: "",
      rows: [
        { at: START, levelM: SIZED_M - 1, lowM: LOW_M - 1, highM: HIGH_M - 1 },
        { at: "2026-04-01T10:00Z", levelM: SIZED_M, lowM: LOW_M, highM: HIGH_M },
      ],
    },
  },
};

function stage(atGaugeM: number, bags: number, lengthOverLimitM = 0): AtStage {
  const { kind: _, coordinates: __, ...figures } = lineOf(bags, { lengthOverLimitM });
  return { ...figures, atGaugeM, waterM: atGaugeM };
}

function building(id: string, sillM: number | null, more: Partial<CheckedBuilding> = {}) {
  return checkedBuilding(id, {
    ...{ sillM, line: lineOf(1000) },
    byStage: [stage(LOW_M, 500), stage(HIGH_M, 3000)],
    ...more,
  });
}

function sweepOf(buildings: readonly CheckedBuilding[], groups: Sweep["groups"] = []): Sweep {
  return { checked: new Map(buildings.map((each) => [each.id, each])), groups };
}

const SWEEP = sweepOf(
  [
    building("low", 6.5),
    building("likely", 7.5, { byStage: [stage(HIGH_M, 3000, 12)] }),
    building("high", 8.5, { state: "dry", line: null, byStage: [stage(HIGH_M, 2000)] }),
    building("high-no-line", 8.5, { state: "dry", line: null, byStage: [] }),
    building("never", null, { state: "dry", line: null, byStage: [] }),
    building("unknown", null, { state: "no-data", line: null, byStage: [] }),
    building("walled-in", 6.5, { state: "no-room", line: null, byStage: [] }),
    building("tall", 6.5, {
      state: "over-limit",
      byStage: [stage(LOW_M, 900), stage(HIGH_M, 9000)],
    }),
  ],
  [
    checkedGroup("low+likely", ["low", "likely"], {
      line: lineOf(1900),
      byStage: [stage(LOW_M, 800), stage(HIGH_M, 4000)],
    }),
  ],
);

function statesAt(sweep: Sweep) {
  return Object.fromEntries([...sweep.checked].map(([id, { state }]) => [id, state]));
}

describe("a check read at the crests of a forecast", () => {
  const bands = bandSweeps(PLAN, SWEEP)!;

  it("has the buildings that flood there, with their lines as counted there, and searches nothing", () => {
    expect(statesAt(bands.low)).toMatchObject({
      ...{ low: "can-be-ringed", likely: "dry", high: "dry", never: "dry" },
      ...{ unknown: "no-data", "walled-in": "no-room", tall: "can-be-ringed" },
    });
    expect(statesAt(bands.likely)).toMatchObject({
      ...{ low: "can-be-ringed", likely: "can-be-ringed", high: "dry", tall: "over-limit" },
    });
    expect(statesAt(bands.high)).toMatchObject({
      ...{ low: "can-be-ringed", likely: "over-limit", high: "can-be-ringed", never: "dry" },
      ...{ "high-no-line": "no-room", unknown: "no-data", tall: "over-limit" },
    });
    const bagsOf = (sweep: Sweep) => sweep.checked.get("low")!.line!.bags;
    expect([bands.low, bands.likely, bands.high].map(bagsOf)).toEqual([500, 1000, 3000]);
  });

  it("has a group only where all its members flood", () => {
    expect(bands.low.groups).toEqual([]);
    expect(bands.likely.groups.map(({ line }) => line.bags)).toEqual([1900]);
    expect(bands.high.groups.map(({ line }) => line.bags)).toEqual([4000]);
  });

  it("is wet sooner where more water comes, and closed as much sooner", () => {
    const timed = building("low", 7.4, {
      firstWetAtS: START_S + 4 * HOUR_S,
      closedByAtS: START_S + 3 * HOUR_S,
    });
    const at = bandSweeps(PLAN, sweepOf([timed]))!;
    const hours = (sweep: Sweep) => {
      const { firstWetAtS, closedByAtS } = sweep.checked.get("low")!;
      return [firstWetAtS, closedByAtS].map((atS) =>
        atS === null ? null : (atS - START_S) / HOUR_S,
      );
    };
    expect(hours(at.likely)).toEqual([4, 3].map((each) => expect.closeTo(each, 6)));
    expect(hours(at.high)).toEqual([0, 0]);
    expect(hours(at.low)).toEqual([null, null]);
    expect(hours(offSweep(PLAN, sweepOf([{ ...timed, byStage: [stage(8.2, 1)] }]), 0.2))).toEqual(
      [2, 1].map((each) => expect.closeTo(each, 6)),
    );
  });

  it("gives the terminal's choice for each, and what is the same in all three", async () => {
    const engine = { chooseLines: (of: { question: ChoiceQuestion }) => choose(of.question) };
    const found = { buildings: [...SWEEP.checked.values()], groups: SWEEP.groups };
    const line = await choiceLine(engine, PLAN, found, { ...NO_LIMIT, bags: 5000 }, 60);
    const { forecasts } = JSON.parse(line).choice;
    expect(forecasts.low).toMatchObject({ flooded: 3, chosen: ["low", "tall"], bags: 1400 });
    expect(forecasts.likely).toMatchObject({ flooded: 4, chosen: ["low+likely"], bags: 1900 });
    expect(forecasts.high).toMatchObject({ flooded: 6, chosen: ["low+likely"], bags: 4000 });
    expect(forecasts.sameInAll).toEqual({ lines: [], buildings: ["low"] });
  });
});

const CREW: LineCrew = {
  ...{ atWork: 90, mostOnOneLine: 30, setUpH: 2, closeBeforeH: 2 },
  ...{ startAtS: START_S, untilH: null },
};

describe("latest starts with the people there are", () => {
  const wet = building("wet", 7, {
    firstWetAtS: START_S + 40 * HOUR_S,
    line: lineOf(14_500, { personHours: 725 }),
  });
  const timed = (crew: Partial<LineCrew>, each = wet) =>
    withCrew(sweepOf([each]), { ...CREW, ...crew }).checked.get(each.id)!;

  it("leave set-up and the line's own person-hours before it must be closed", () => {
    const { latestStartAtS, state } = timed({});
    expect((latestStartAtS! - START_S) / HOUR_S).toBeCloseTo(40 - 2 - (2 + 725 / 30), 3);
    expect(state).toBe("can-be-ringed");
  });

  it("come sooner with fewer people, until the line is too late", () => {
    expect(timed({ atWork: 10 }).state).toBe("too-late");
    expect(timed({ atWork: 90, untilH: 26 }).state).toBe("too-late");
    expect(timed({ atWork: 90, untilH: 27 }).state).toBe("can-be-ringed");
  });

  it("are not known without people, and then no line is called too late", () => {
    const late = timed({ atWork: null }, { ...wet, state: "too-late" });
    expect(late).toMatchObject({ latestStartAtS: null, state: "can-be-ringed" });
  });

  it("never let a line be chosen that is too late", async () => {
    const chance = seededRandom(12);
    for (let round = 0; round < 12; round++) {
      const buildings = Array.from({ length: 8 }, (_, k) =>
        building(`b${k}`, 7, {
          firstWetAtS: START_S + chance() * 30 * HOUR_S,
          line: lineOf(1000, { personHours: chance() * 400 }),
        }),
      );
      const people = 1 + Math.floor(chance() * 60);
      const sweep = withCrew(sweepOf(buildings), { ...CREW, atWork: people, mostOnOneLine: 20 });
      const candidates = candidatesOf([...leftToHours(sweep).checked.values()], [], {
        startAtS: START_S,
        marginH: CREW.closeBeforeH,
      });
      const workForce = {
        ...{ people, atWorkShare: 1, setUpH: 2, moveHours: 0, mostOnOneLine: 20, untilH: null },
      };
      const { chosen } = await choose({ candidates, stock: NO_LIMIT, workForce });
      const states = chosen.map((id) => sweep.checked.get(id)!.state);
      expect(states.filter((state) => state === "too-late")).toEqual([]);
    }
  });
});

import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_TIME } from "../../shared/defaults.ts";
import type { Forecast, Plan } from "../../shared/plan.ts";
import type { BuildStep, LineTime } from "../../shared/time/types.ts";
import {
  coursesCell,
  crewsWords,
  doneWords,
  earlyWords,
  holdWords,
  neededWords,
  onHoldWords,
} from "../../shared/words/build-sequence.ts";
import { besidePeople } from "../../shared/words/checks/time.ts";
import { crewName, layToFigure, stepName } from "../../shared/words/crew-parts.ts";
import { timeWords } from "../../shared/words/time.ts";
import { liftLayout } from "../../src/pages/lift-layout.ts";
import { groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const STEP: BuildStep = {
  ...{ number: 3, fromM: 90, toM: 20, belowM: FOOT_M, bags: 300, courses: [2, 4] },
  ...{
    startH: 2,
    finishSlowH: 25.02,
    finishFastH: 20,
    neededM: 100,
    neededH: 24.98,
    earlyH: -0.04,
  },
};
const TIME = {
  startAt: "2026-04-07T07:00-05:00",
  missing: [],
  verdicts: [{}],
} as unknown as LineTime;

const rows = [0, 24, 48, 72].map((hour, k) => ({
  at: `2026-04-0${3 + hour / 24}T08:00-05:00`,
  levelM: [98, 99.8, 100.6, 100.2][k]!,
  ...{ lowM: null, highM: null },
}));
const FORECAST: Forecast = { levels: "elevation", rows, note: "" };
const START = "2026-04-03T08:00-05:00";

/** A ring on a slope with a ditch that is over the limit across its south side. */
function planOf(forecast: Forecast | null, people: number | null = 60): Plan {
  const plan = planWith(100.6, { practice: { raiseM: 0, people } });
  return { ...plan, time: { ...DEFAULT_TIME, startAt: START, shifts: 2, forecast } };
}
const RING = ring(rectangle(30, 20));
const DITCH = groundOf((x, y) => (y < 0 && Math.abs(x - 5) < 3 ? 98.9 : 100 + 0.004 * x));

describe("a step in words", () => {
  const said = { plan: planOf(FORECAST), time: TIME, system: "us" } as const;

  it("is done no sooner and needed no later than it is, and late by the hours that are shown", () => {
    expect(doneWords(STEP.finishSlowH, said)).toBe("Wed 08:15");
    expect(neededWords(STEP, said)).toBe("Wed 07:45");
    expect(earlyWords(STEP, TIME)).toBe("LATE 30 min");
    const at = (finishSlowH: number) =>
      earlyWords({ ...STEP, finishSlowH, earlyH: STEP.neededH! - finishSlowH }, TIME);
    expect(at(27)).toBe("LATE 3 h");
    expect(at(24.97)).toBe("just in time");
    expect(at(24)).toBe("45 min early");
    expect(at(20.5)).toBe("4 h early");
  });

  it("is not known without a crew, and needed at a water level without a forecast", () => {
    const nobody = { ...TIME, missing: ["people"] } as unknown as LineTime;
    expect(doneWords(null, { ...said, time: nobody })).toBe("not known");
    expect(earlyWords({ ...STEP, earlyH: null }, TIME)).toBe("");
    expect(neededWords(STEP, { ...said, plan: planOf(null) })).toBe("328.08 ft");
    expect(neededWords({ ...STEP, neededH: null }, said)).toBe("not reached");
  });

  it("goes by its crew, its mark and its courses", () => {
    expect(crewName({ crew: 2, toward: "NE" })).toBe("Northeast crew");
    expect(stepName({ crew: 2, toward: "NE" }, 4)).toBe("NE4");
    expect(crewName({ crew: 2, toward: null })).toBe("Crew 2");
    expect(stepName({ crew: 2, toward: null }, 4)).toBe("2-4");
    expect(layToFigure(STEP, "us")).toBe("1.0 below");
    expect(layToFigure({ belowM: 0 }, "metric")).toBe("the mark");
    expect(coursesCell(STEP)).toBe("2–4");
    expect(coursesCell({ ...STEP, courses: null })).toBe("–");
    const crew = {
      people: 83,
      fillers: 41,
      layers: 42,
      crews: 2,
      slowBagsPerH: 1,
      fastBagsPerH: 2,
    };
    expect(crewsWords(crew)).toBe("2 × 41–42");
  });

  it("says beside the people enough what no sequence does with, and what HOLD would take", () => {
    const ways = { people: 68, peopleDayAndNight: 31, bagsAtMost: 9000 };
    expect(besidePeople({ ...ways, peopleAtLeast: 62, peopleWithHold: 75 })).toBe(
      " (any sequence needs 62 at least; 75 if what is on HOLD is built, too)",
    );
    expect(besidePeople({ ...ways, peopleAtLeast: null, peopleWithHold: null })).toBe("");
  });
});

describe("a line with a ditch over the limit", () => {
  const plan = planOf(FORECAST);
  const line = size(plan, RING, DITCH);
  const time = line.time!;

  it("holds the ditch back as the check of the limit names it, with its hour, its bags in no step", () => {
    const over = line.checks.find(({ finding }) => finding.kind === "over-limit")!;
    const holds = time.parts.flatMap((part) => part.holds);
    expect(holds).toHaveLength(1);
    expect(holds[0]!.fromM).toBeCloseTo(over.fromM, 6);
    expect(holds[0]!.toM).toBeCloseTo(over.toM, 6);
    expect(time.bagsOnHold).toBe(holds[0]!.bags);
    expect(time.bags + time.bagsOnHold).toBe(line.totals.bags);
    const inSteps = time.parts
      .flatMap(({ steps }) => steps)
      .reduce((sum, { bags }) => sum + bags, 0);
    expect(inSteps).toBe(time.bags);
    // 98.9 m between 98 m at 0 h and 99.8 m at 24 h: 12 h, 20:00; the bank may be a little lower.
    expect(holds[0]!.decideH!).toBeCloseTo(12, 1);
    expect(holdWords(holds[0]!, { plan, time, system: "us" })).toMatch(
      /^over the height limit; an engineer decides before Fri (19:45|20:00): water is there$/,
    );
    expect(onHoldWords(time)).toMatch(
      /^[\d,]+ bags on HOLD are in the order, in no step and in no hours\.$/,
    );
  });

  it("is never said to be in time while that is not decided", () => {
    const many = size(planOf(FORECAST, 900), RING, DITCH);
    expect(many.time).toMatchObject({ inTime: null });
    expect(timeWords(many, "us")).toMatch(/^Time not known: part is on HOLD; the rest takes \d+/);
  });

  it("has nothing to build where all of it is over, and says so", () => {
    const pit = size(
      planOf(FORECAST),
      RING,
      groundOf(() => 99),
    );
    expect(pit.time).toMatchObject({ bags: 0, inTime: null });
    expect(pit.time!.bagsOnHold).toBe(pit.totals.bags);
    expect(pit.time!.parts.flatMap((part) => part.holds).length).toBeGreaterThan(0);
    expect(timeWords(pit, "us")).toBe("Time not known: all is on HOLD");
  });

  it("is drawn with every step named once, inside the picture and apart from the others", () => {
    const room = { leftPx: 90, rightPx: 700, topPx: 10, bottomPx: 150, typePx: 15 };
    const widthOf = (text: string) => 9 * text.length;
    const { labels, boxes } = liftLayout(line, time, { ...room, widthOf });
    const names = time.parts.flatMap((part) =>
      part.steps.map(({ number }) => stepName(part, number)),
    );
    expect(labels.map(({ name }) => name).sort()).toEqual([...names, "HOLD"].sort());
    for (const { fromPx, toPx } of boxes) {
      expect(fromPx).toBeGreaterThanOrEqual(room.leftPx - 1e-6);
      expect(toPx).toBeLessThanOrEqual(room.rightPx + 1e-6);
    }
    for (const [i, a] of labels.entries()) {
      for (const b of labels.slice(i + 1)) {
        if (a.name === "HOLD" || b.name === "HOLD") continue;
        const half = (widthOf(a.name) + widthOf(b.name)) / 2;
        const apart =
          Math.abs(a.yPx - b.yPx) >= room.typePx - 1e-6 || Math.abs(a.xPx - b.xPx) >= half;
        expect(apart, `${a.name} ${b.name}`).toBe(true);
      }
    }
  });

  it("names every stretch on HOLD where there is room", () => {
    const room = { leftPx: 90, rightPx: 700, topPx: 10, bottomPx: 150, typePx: 15 };
    const [first, ...rest] = time.parts;
    const one = time.parts.flatMap(({ holds }) => holds)[0]!;
    const holds = [0, 0.5, 0.52, 0.99].map((share) => ({
      ...{ ...one, fromM: share * line.totals.lengthM },
      toM: (share + 0.01) * line.totals.lengthM,
    }));
    const parts = [{ ...first!, holds }, ...rest.map((part) => ({ ...part, holds: [] }))];
    const widthOf = (text: string) => 9 * text.length;
    const { labels } = liftLayout(line, { ...time, parts }, { ...room, widthOf });
    const named = labels.filter(({ name }) => name === "HOLD");
    expect(named).toHaveLength(3);
    for (const { name, xPx } of named) {
      expect(xPx - widthOf(name) / 2).toBeGreaterThanOrEqual(room.leftPx);
      expect(xPx + widthOf(name) / 2).toBeLessThanOrEqual(room.rightPx);
    }
  });
});

import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_TIME, EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Forecast, Plan, TimeSettings } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { missingCrew } from "../../shared/time/crew-inputs.ts";
import type { LineTime } from "../../shared/time/types.ts";
import { soonerLines } from "../../shared/time/ways-out.ts";
import { timeCell } from "../../shared/words/compare.ts";
import { mustFixBand } from "../../shared/words/must-fix-band.ts";
import { nextFootWords } from "../../shared/words/stage-curve.ts";
import { doneAfter, elapsedWords, timeWords } from "../../shared/words/time.ts";
import { unitsOf } from "../../shared/words/units.ts";
import { messageOf, remedyOf, withWords } from "../helpers/check-text.ts";
import { flat, groundOf, planWith, rectangle, ring, size, structure } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";

const US = unitsOf("us");

const RING = ring(rectangle(20, 15));
const GROUND = groundOf((x) => 100 + 0.01 * x);

/** Rises evenly from 98 m to a crest, then falls; one row every six hours from 3 April 2026, 08:00. */
function river(crestM: number, crestH: number, band = 0): Forecast {
  const rows = Array.from({ length: 13 }, (_, k) => {
    const hour = 6 * k;
    const levelM = Math.max(98, crestM - (Math.abs(hour - crestH) * (crestM - 98)) / crestH);
    const bands =
      band > 0 ? { lowM: levelM - band, highM: levelM + band } : { lowM: null, highM: null };
    const day = 3 + Math.floor((8 + hour) / 24);
    const clock = String((8 + hour) % 24).padStart(2, "0");
    return { at: `2026-04-0${day}T${clock}:00-05:00`, levelM, ...bands };
  });
  return { levels: "elevation", rows, note: "" };
}

const DESIGN_M = 100.6;
const START = "2026-04-03T08:00-05:00";
const CREW: Partial<TimeSettings> = { startAt: START, shifts: 2 };

function planOf(time: Partial<TimeSettings>, people = 60): Plan {
  const plan = planWith(DESIGN_M, {
    structures: [structure("House", rectangle(6, 5))],
    practice: { raiseM: 0, people },
  });
  return { ...plan, time: { ...DEFAULT_TIME, ...CREW, ...time } };
}

const lineOf = (time: Partial<TimeSettings>, people = 60) =>
  size(planOf(time, people), RING, GROUND);
const timeOf = (time: Partial<TimeSettings>, people = 60): LineTime => lineOf(time, people).time!;
const checksOf = (id: string, time: Partial<TimeSettings>, people = 60) =>
  lineOf(time, people)
    .checks.filter((check) => check.id === id)
    .map((check) => withWords(check));

describe("a line's time without a forecast", () => {
  const line = lineOf({});
  const time = line.time!;

  it("lays every bag that is ordered, and no other", () => {
    expect(Math.abs(time.bags - line.totals.bags)).toBeLessThanOrEqual(1);
    const inStretches = time.stretches.reduce((sum, { bags }) => sum + bags, 0);
    expect(inStretches / line.totals.bags).toBeCloseTo(1, 3);
    expect(time.hours.at(-1)!.bagsLaid).toBeGreaterThanOrEqual(line.totals.bags - 1);
  });

  it("covers the line in order of chainage, each place in one crew's part", () => {
    const { stretches, parts } = time;
    expect(stretches[0]!.fromM).toBe(0);
    expect(stretches.at(-1)!.toM).toBeCloseTo(line.totals.lengthM, 6);
    for (let k = 1; k < stretches.length; k++) {
      expect(stretches[k]!.fromM).toBeCloseTo(stretches[k - 1]!.toM, 9);
    }
    expect(parts.map(({ crew }) => crew)).toEqual([1, 2]);
    expect(new Set(stretches.map(({ crew }) => crew))).toEqual(new Set([1, 2]));
  });

  it("says how long it takes and no more", () => {
    expect(time).toMatchObject({ startAt: START, inTime: null, verdicts: [], crests: [] });
    expect(time.finishSlowH!).toBeGreaterThan(time.finishFastH!);
    // Both crews lay half: no earlier than all bags at the pace of all; walking and setting up come to it.
    const workedH = 2 + line.totals.bags / (60 * 19);
    const dayAndNight = timeOf({ lit: true, shifts: 3 }).finishSlowH!;
    expect(dayAndNight).toBeGreaterThanOrEqual(workedH - 0.01);
    expect(dayAndNight).toBeLessThan(workedH + 1);
    expect(time.finishSlowH!).toBeGreaterThan(workedH + 8);
    expect(checksOf("time", {})).toMatchObject([{ severity: "note" }]);
  });

  it("is not reckoned while something is dragged", () => {
    expect(size(planOf({}), RING, GROUND, true).time).toBeNull();
  });

  it("nothing to build takes no time; nothing known is not in it", () => {
    const dry = size(
      { ...planOf({}), water: { ...planOf({}).water, elevationM: 90 } },
      RING,
      GROUND,
    );
    expect(dry.time).toMatchObject({ bags: 0, finishSlowH: 0, stretches: [] });
    expect(dry.checks.filter(({ id }) => id === "time")).toEqual([]);
    expect(size(planOf({}), RING, flat(Number.NaN)).time).toMatchObject({ bags: 0, stretches: [] });
  });
});

describe("a line's time against the river", () => {
  it("in time: every stretch is ahead of the water that wets it", () => {
    const time = timeOf({ forecast: river(DESIGN_M, 48) });
    expect(time).toMatchObject({ inTime: true, waysOut: null, startAt: "2026-04-03T08:00-05:00" });
    // The lowest ground under the base lies a little outside the line, at about 99.8 m.
    expect(time.firstWetH!).toBeGreaterThan(30);
    expect(time.firstWetH!).toBeLessThan(34);
    for (const { leastAheadM, wetH } of time.stretches) {
      if (wetH !== null) expect(leastAheadM!).toBeGreaterThanOrEqual(0.3048 - 1e-6);
    }
    expect(checksOf("time", { forecast: river(DESIGN_M, 48) })).toEqual([]);
    const hour = time.hours.find((row) => row.hour === 48)!;
    expect(hour.waterM).toBeCloseTo(DESIGN_M, 6);
    expect(hour.leastAheadM).toBeCloseTo(FOOT_M, 6);
    expect(time.hours.at(-1)!.hour).toBe(72);
  });

  it("wet times follow the ground", () => {
    const { wetH } = timeOf({ forecast: river(DESIGN_M, 48) });
    const { walk } = lineOf({});
    const ratePerH = (DESIGN_M - 98) / 48;
    for (let i = 0; i < wetH.length; i += 17) {
      expect(wetH[i]!).toBeCloseTo((walk.lowestGroundM[i]! - 98) / ratePerH, 3);
    }
    expect(timeOf({ forecast: river(99, 48) }).firstWetH).toBeNull();
  });

  const LATE = { forecast: river(DESIGN_M, 18) };

  it("late: says so plainly, from when, where, and what would make it possible", () => {
    const [check, ...more] = checksOf("time", LATE, 10);
    expect(more).toEqual([]);
    expect(check).toMatchObject({ severity: "stop" });
    expect(messageOf(check)).toMatch(/^Late: from Fri Apr 3, \d\d:\d\d the top of levee/);
    expect(mustFixBand(lineOf(LATE, 10).checks, null, "us").named).toContainEqual(
      expect.stringMatching(/^Late: behind the water from Fri \d\d:\d\d, worst at \d\+\d\d\.$/),
    );
    const { waysOut } = timeOf(LATE, 10);
    expect(remedyOf(check)).toContain(`${waysOut!.people} people instead`);
    expect(remedyOf(check)).toContain("a smaller ring of at most");
    expect(remedyOf(check)).toContain("Do not save time on freeboard.");
  });

  it("the people it asks for are enough, and one fewer is not", () => {
    const { waysOut } = timeOf(LATE, 10);
    expect(timeOf(LATE, waysOut!.people!).inTime).toBe(true);
    expect(timeOf(LATE, waysOut!.people! - 1).inTime).toBe(false);
    const nights = { ...LATE, lit: true, shifts: 3, shiftH: 8 };
    expect(timeOf(nights, waysOut!.peopleDayAndNight!).inTime).toBe(true);
    expect(timeOf(nights, waysOut!.peopleDayAndNight! - 1).inTime).toBe(false);
    expect(waysOut!.bagsAtMost!).toBeLessThan(timeOf(LATE, 10).bags);
  });

  it("between the paces: a caution", () => {
    const { waysOut } = timeOf(LATE, 10);
    const [check] = checksOf("time", LATE, waysOut!.people! - 1);
    expect(check).toMatchObject({
      severity: "caution",
      finding: { kind: "late", by: "slow-pace" },
    });
    expect(messageOf(check)).toContain("Late at slow pace");
  });

  it("unfinished when the forecast ends: a caution, for nothing is known of later", () => {
    const low = { forecast: river(99.2, 48) };
    expect(timeOf(low, 4)).toMatchObject({ inTime: true, forecastEndH: 72 });
    const [check] = checksOf("time", low, 4);
    expect(check).toMatchObject({ severity: "caution" });
    expect(messageOf(check)).toContain("the forecast ends after 72.0 h");
  });

  it("water that is there at the start: no number of people", () => {
    const standing = { forecast: river(DESIGN_M, 18), startAt: "2026-04-04T02:00-05:00" };
    const [check] = checksOf("time", standing);
    expect(check).toMatchObject({ severity: "stop" });
    expect(remedyOf(check)).toMatch(/^No number of people is enough/);
    expect(remedyOf(check)).toContain("Do not save time on freeboard.");
  });

  it("a start without an offset is on the forecast's clock", () => {
    const forecast = river(DESIGN_M, 48);
    const stated = timeOf({ forecast, startAt: "2026-04-03T10:00-05:00" });
    const plain = timeOf({ forecast, startAt: "2026-04-03T10:00" });
    expect(plain).toEqual(stated);
    expect(plain.startAt).toBe("2026-04-03T10:00-05:00");
  });

  it("a hundred people do no worse than fifty, lit no worse than by day", () => {
    const spare = (people: number, lit: boolean) =>
      timeOf({ ...LATE, lit }, people).verdicts.find(
        ({ band, pace }) => band === "likely" && pace === "slow",
      )!.leastSpareM;
    expect(spare(100, false)).toBeGreaterThanOrEqual(spare(50, false) - 1e-9);
    expect(spare(50, true)).toBeGreaterThanOrEqual(spare(50, false) - 1e-9);
  });
});

describe("low, likely and high", () => {
  const forecast = river(DESIGN_M, 48, 0.4);

  it("bags and heights for each are those of a plan sized for that crest", () => {
    const { crests } = timeOf({ forecast });
    expect(crests.map(({ band }) => band)).toEqual(["low", "likely", "high"]);
    for (const crest of crests) {
      const plan = planOf({});
      const sized = size(
        { ...plan, water: { ...plan.water, elevationM: crest.waterM } },
        RING,
        GROUND,
        true,
      );
      expect(crest.bags).toBe(sized.totals.bags);
      expect(crest.greatestHeightM).toBeCloseTo(sized.totals.greatestHeightM, 9);
      expect(crest.lengthOverLimitM).toBeCloseTo(sized.totals.lengthOverLimitM, 6);
      expect(crest.at).toBe("2026-04-05T08:00-05:00");
    }
  });

  it("each is held against the schedule; a late high band alone is a caution", () => {
    const fast = { forecast: river(DESIGN_M, 30, 0.9) };
    const people = timeOf(fast, 10).waysOut!.people!;
    const { verdicts, waysOut } = timeOf(fast, people);
    expect(verdicts).toHaveLength(6);
    const slow = (band: string) =>
      verdicts.find((each) => each.band === band && each.pace === "slow")!;
    expect(slow("likely").ahead).toBe(true);
    expect(slow("high").ahead).toBe(false);
    expect(waysOut).toBeNull();
    const [check] = checksOf("time", fast, people);
    expect(check).toMatchObject({
      severity: "caution",
      message: expect.stringMatching(/^Late if the river runs high: /),
    });
  });

  it("a crest above what the line is sized for is told, past the freeboard as a stop", () => {
    const crest = (crestM: number, band = 0) =>
      checksOf("forecast-crest", { forecast: river(crestM, 48, band) });
    expect(crest(DESIGN_M)).toEqual([]);
    expect(crest(DESIGN_M + 0.2)).toMatchObject([{ severity: "caution" }]);
    expect(crest(DESIGN_M + 0.5)).toMatchObject([{ severity: "stop" }]);
    expect(crest(DESIGN_M, 0.5)).toMatchObject([
      { severity: "caution", message: expect.stringContaining("over the levee") },
    ]);
    const byStage = { forecast: { ...river(DESIGN_M, 48), levels: "stage" as const } };
    expect(checksOf("forecast-zero", byStage)).toMatchObject([{ severity: "caution" }]);
  });

  it("by stage and without a gauge zero is at no known elevation: nothing of it is ahead of the work", () => {
    const stages = river(DESIGN_M, 48).rows.map((row) => ({ ...row, levelM: row.levelM - 97 }));
    const forecast = { levels: "stage" as const, rows: stages, note: "" };
    const line = lineOf({ forecast });
    expect(line.time).toMatchObject({ verdicts: [], crests: [], inTime: null, forecastEndH: null });
    expect(timeWords(line, "us")).toMatch(/^Time not known: no gauge zero; the work takes \d/);
    expect(line.checks.map(({ id }) => id)).not.toContain("time");
    expect(checksOf("forecast-zero", { forecast })).toMatchObject([
      { severity: "caution", message: expect.stringContaining("no gauge zero") },
    ]);
    const plan = planOf({ forecast });
    const water = { ...plan.water, gaugeZeroM: 97 };
    const known = size({ ...plan, water }, RING, GROUND);
    expect(known.time!.verdicts).toHaveLength(2);
    expect(known.time!.firstWetH).toBeCloseTo(
      lineOf({ forecast: river(DESIGN_M, 48) }).time!.firstWetH!,
      6,
    );
  });

  it("is not kept ahead of by a line that is all on HOLD, and its hours are not 0", () => {
    const plan = planOf({ forecast: river(98.5, 48) });
    const practice = { ...plan.practice, limitM: 0.2 };
    const line = size({ ...plan, practice }, RING, GROUND);
    const { time } = line;
    expect(time).toMatchObject({ bags: 0, finishSlowH: null, finishFastH: null, verdicts: [] });
    expect(time!.bagsOnHold).toBeGreaterThan(100);
    expect(timeWords(line, "us")).toBe("Time not known: all is on HOLD");
    const dry = size(
      planOf({ forecast: river(98.5, 48) }),
      RING,
      groundOf(() => 140),
    );
    expect(dry.levelDoubt).not.toBeNull();
    expect(dry.checks.map(({ id }) => id)).not.toContain("forecast-crest");
    expect([elapsedWords(time), doneAfter(time!)]).toEqual(["hours not known", "not known"]);
  });
});

describe("a line that is raised", () => {
  const raisedBy = (raiseM: number, time: Partial<TimeSettings>) => {
    const reachSections = [{ section: "raised", figures: { raiseM } }];
    return size(planOf(time), { ...RING, reachSections }, GROUND);
  };

  it("stands from the start as high as the levee that is there, and lays no bag less for it", () => {
    const wet = river(DESIGN_M - 0.2, 48);
    const startAt = "2026-04-05T06:00-05:00";
    const { time, totals } = raisedBy(0.2, { forecast: wet, startAt, marginM: 0.1 });
    const crestAheadM = FOOT_M - 0.2 + 0.2 + (DESIGN_M - 0.2 - 98) / 24;
    expect(time!.hours[0]!.leastAheadM!).toBeCloseTo(crestAheadM, 2);
    expect(time).toMatchObject({ inTime: true });
    expect(Math.abs(time!.bags - totals.bags)).toBeLessThanOrEqual(1);
    const fresh = timeOf({ forecast: wet, startAt, marginM: 0.1 });
    expect(fresh).toMatchObject({ inTime: false });
    expect(fresh.hours[0]!.leastAheadM!).toBeLessThan(0);
  });
});

describe("a start with another offset than the forecast's", () => {
  it("is worked by the daylight of the forecast's clock", () => {
    const forecast = river(DESIGN_M, 48);
    const local = timeOf({ forecast, startAt: "2026-04-04T07:00-05:00" });
    const inUtc = timeOf({ forecast, startAt: "2026-04-04T12:00Z" });
    expect(inUtc).toMatchObject({ startAt: local.startAt, finishSlowH: local.finishSlowH });
  });
});

describe("a forecast that stays below all ground under the line", () => {
  it("is doubted", () => {
    const [check] = checksOf("forecast-crest", { forecast: river(99, 48) });
    expect(check).toMatchObject({ severity: "caution" });
    expect(messageOf(check)).toContain("stays below all ground");
    expect(checksOf("forecast-crest", { forecast: river(DESIGN_M, 48) })).toEqual([]);
  });
});

describe("a forecast that is over before the work starts", () => {
  const OVER = { forecast: river(DESIGN_M, 48), startAt: "2026-04-07T08:00-05:00" };

  it("says nothing of time, and says that it does not", () => {
    expect(timeOf(OVER)).toMatchObject({ inTime: null, verdicts: [], waysOut: null });
    const [check] = checksOf("time", OVER);
    expect(check).toMatchObject({ severity: "caution" });
    expect(messageOf(check)).toContain("over before the work starts");
  });
});

describe("bags against stage", () => {
  it("the curve is what sizing at each water gives, and marks the limit", () => {
    const { curve } = timeOf({});
    const plan = planOf({});
    for (const point of curve.points) {
      const water = { ...plan.water, elevationM: point.waterM };
      const sized = size({ ...plan, water }, RING, GROUND, true).totals;
      expect(point.bags).toBe(sized.bags);
      expect(point.lengthOverLimitM).toBeCloseTo(sized.lengthOverLimitM, 6);
    }
    const bags = curve.points.map((point) => point.bags);
    expect(bags).toEqual([...bags].sort((a, b) => a - b));
    const water = { ...plan.water, elevationM: DESIGN_M + curve.limitRiseM! };
    const atLimit = size({ ...plan, water }, RING, GROUND, true).totals.greatestHeightM;
    expect(atLimit).toBeCloseTo(plan.practice.limitM, 2);
    const now = curve.points.find(({ riseM }) => riseM === 0)!;
    const next = curve.points.find(({ riseM }) => Math.abs(riseM - FOOT_M) < 1e-9)!;
    expect(curve.nextFoot!.bags).toBe(next.bags - now.bags);
  });

  it("of a line far beyond any sandbag levee has one point, and says so", () => {
    const plan = planOf({});
    const slip = size({ ...plan, water: { ...plan.water, elevationM: 130 } }, RING, GROUND).time!;
    expect(slip.curve).toMatchObject({ nextFoot: null, limitRiseM: null });
    expect(slip.curve.points).toHaveLength(1);
    expect(nextFootWords(slip.curve, US)).toContain("check the water");
    const levels = new Set(slip.stretches.map(({ crestM }) => crestM));
    expect(levels.size).toBe(1);
  });

  it("says what earth and loose sand the next foot takes", () => {
    const reachSections = [{ section: "earth-levee", figures: {} }];
    const { time } = size(planOf({}), { ...RING, reachSections }, GROUND);
    expect(time!.curve.nextFoot!.bags).toBe(0);
    expect(nextFootWords(time!.curve, US)).toMatch(/It takes [\d,]+ cu yd of earth as well\.$/);
    expect(nextFootWords(timeOf({}).curve, US)).not.toContain("as well");
  });

  it("says what the next foot costs", () => {
    const costing = (bags: number, overLimitM: number) => ({
      ...timeOf({}).curve,
      nextFoot: { bags, overLimitM, earthM3: 0, looseSandM3: 0, hasGaps: false },
    });
    expect(nextFootWords(costing(4100, 60), US)).toBe(
      "The next foot of water costs 4,100 bags and puts 197 ft over the height limit.",
    );
    expect(nextFootWords(costing(4100, 60), unitsOf("metric"))).toBe(
      "The next 0.30 m of water costs 4,100 bags and puts 60 m over the height limit.",
    );
    expect(nextFootWords(costing(900, 0), US)).toContain("nothing more over the height limit");
    const hole = groundOf((x) => (x > 10 ? Number.NaN : 100));
    expect(nextFootWords(size(planOf({}), RING, hole).time!.curve, US)).toContain(
      "without elevation data",
    );
    expect(nextFootWords(timeOf({}).curve, US)).not.toContain("without elevation data");
  });
});

describe("alternatives", () => {
  it("that are in time, with a forecast to their end, are named, fewest bags first", () => {
    const timed = (id: string, bags: number, inTime: boolean | null, finishSlowH = 20) => ({
      ...{ id, name: id, totals: { bags } },
      time: {
        ...{ inTime, finishSlowH, forecastEndH: 30, missing: [], crests: [] as LineTime["crests"] },
        verdicts: (["slow", "fast"] as const).map((pace) => ({
          ...{ band: "likely", pace, ahead: inTime === true },
        })) as unknown as LineTime["verdicts"],
      } as unknown as LineTime,
    });
    const late = timed("a", 900, false);
    const unknown = timed("e", 100, true, 31);
    const inTime = [timed("b", 800, true), timed("d", 300, true)];
    const lines = [late, ...inTime, timed("c", 700, false), unknown];
    expect(soonerLines(late, lines).map(({ line: { id } }) => id)).toEqual(["d", "b"]);
  });
});

describe("a crew that nobody has entered", () => {
  const forecast = river(99, 40);
  const nobody: Partial<TimeSettings> = { forecast, startAt: null, shifts: null };

  function unentered(time: Partial<TimeSettings>, people: number | null) {
    const plan = planOf(time);
    return size({ ...plan, practice: { ...plan.practice, people } }, RING, GROUND);
  }

  it("is what a new plan has, and no hour of work and no verdict stands for it", () => {
    expect(missingCrew(EMPTY_PLAN)).toEqual(["people", "startAt", "shifts"]);
    const { time, totals } = unentered(nobody, null);
    expect(time).toMatchObject({ missing: ["people", "startAt", "shifts"], crew: null });
    expect(time).toMatchObject({ inTime: null, verdicts: [], waysOut: null, hours: [] });
    expect(time).toMatchObject({ finishSlowH: null, finishFastH: null, daylight: null });
    expect(totals.bags).toBeGreaterThan(0);
    expect(time!.stretches.every(({ finishH }) => finishH === null)).toBe(true);
    const steps = time!.parts.flatMap((part) => part.steps);
    expect(steps.length).toBeGreaterThan(0);
    for (const step of steps) {
      expect(step).toMatchObject({ startH: null, finishSlowH: null, finishFastH: null });
      expect(step.earlyH).toBeNull();
    }
  });

  it("says what to type, on screen, side by side, and as a check", () => {
    const line = unentered(nobody, null);
    const words = "Time not known: no crew; type people, start of work and shifts";
    expect(timeWords(line, "us")).toBe(words);
    expect(timeCell(line, "us", 0)).toMatchObject({
      ...{ word: "time not known: no crew", isBad: true },
    });
    const [check] = line.checks.filter(({ id }) => id === "time");
    expect(check!.severity).toBe("caution");
    expect(messageOf(check)).toContain("nobody has entered people, start of work and shifts");
  });

  it.each([
    ["people", nobody, 60, "start of work", "start of work and shifts"],
    ["start of work", { ...nobody, startAt: START }, null, "crew", "people and shifts"],
    ["two of them", { ...nobody, startAt: START }, 60, "shifts", "shifts"],
  ] as const)("%s alone is not enough", (_, time, people, first, rest) => {
    const line = unentered(time, people);
    expect(line.time!.inTime).toBeNull();
    expect(timeWords(line, "us")).toBe(`Time not known: no ${first}; type ${rest}`);
  });

  it("once entered is timed as before", () => {
    const line = unentered({ ...nobody, startAt: START, shifts: 2 }, 60);
    expect(line.time).toMatchObject({ missing: [], inTime: true });
    expect(timeWords(line, "us")).not.toContain("ot known");
  });

  it("counts as entered where an older plan file states it, and as missing where it does not", () => {
    const text = (settings: object) =>
      JSON.stringify({
        type: "FeatureCollection",
        features: [],
        drystead: { version: 1, ...settings },
      });
    const read = (settings: object) => {
      const found = readPlanFile(text(settings));
      if (!found.ok) throw new Error(said(found.failure).message);
      return missingCrew(found.value.plan);
    };
    const older = { practice: { people: 45 }, time: { startAt: START, shifts: 2, dayFromH: 6 } };
    expect(read(older)).toEqual([]);
    expect(read({ practice: { limitM: 1 } })).toEqual(["people", "startAt", "shifts"]);
  });
});

describe("work by daylight", () => {
  it("keeps to the sun at the site, and hours stated beyond it add nothing", () => {
    const line = (time: Partial<TimeSettings>) => timeOf({ forecast: null, ...time }, 20);
    const sun = line({});
    const stated = line({ dayFromH: 2, dayToH: 23 });
    expect(stated.finishSlowH).toBeCloseTo(sun.finishSlowH!, 9);
    const short = line({ dayFromH: 9, dayToH: 15 });
    expect(short.finishSlowH!).toBeGreaterThan(sun.finishSlowH!);
    const winter = line({ startAt: "2026-12-21T08:00-06:00" });
    const summer = line({ startAt: "2026-06-21T08:00-05:00" });
    expect(winter.daylight!.toH - winter.daylight!.fromH).toBeLessThan(9);
    expect(summer.daylight!.toH - summer.daylight!.fromH).toBeGreaterThan(15);
    expect(winter.finishSlowH!).toBeGreaterThan(summer.finishSlowH!);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_TIME, EMPTY_PLAN } from "../../shared/defaults.ts";
import { outcomeOf } from "../../shared/failure.ts";
import { planForecast } from "../../shared/forecasts/understood.ts";
import type { Forecast, Plan } from "../../shared/plan.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { clockHour, momentOf, momentText } from "../../shared/time/forecast-time.ts";
import {
  firstAbove,
  type Hydrograph,
  highestBetween,
  hydrographOf,
  levelAt,
} from "../../shared/time/hydrograph.ts";
import { readText, understood } from "../helpers/read-forecast.ts";
import { said } from "../helpers/said.ts";

/** Rows as a plan holds them. */
function rowsOf(text: string): Forecast["rows"] {
  return understood(text).rows.map(({ moment, levelM, lowM, highM }) => ({
    ...{ at: momentText(moment), levelM, lowM, highM },
  }));
}

describe("a moment", () => {
  it.each([
    ["2026-04-03T14:00-05:00", Date.UTC(2026, 3, 3, 19), -300, "2026-04-03T14:00-05:00"],
    ["2026-04-03 14:00 -0500", Date.UTC(2026, 3, 3, 19), -300, "2026-04-03T14:00-05:00"],
    ["2026-04-03 9:05:30 Z", Date.UTC(2026, 3, 3, 9, 5, 30), 0, "2026-04-03T09:05:30+00:00"],
    ["2026-04-03T00:30+05:30", Date.UTC(2026, 3, 2, 19), 330, "2026-04-03T00:30+05:30"],
    ["2028-02-29 23:59", Date.UTC(2028, 1, 29, 23, 59), null, "2028-02-29T23:59"],
  ])("%s", (text, utcMs, offsetMin, written) => {
    const moment = momentOf(text)!;
    expect(moment).toEqual({ atS: utcMs / 1000, offsetMin });
    expect(momentText(moment)).toBe(written);
    expect(momentOf(written)).toEqual(moment);
  });

  it.each([
    "2026-02-29 12:00",
    "2026-13-01 12:00",
    "2026-04-03",
    "2026-04-03 24:00",
    "3 April",
    "",
  ])("is not %s", (text) => expect(momentOf(text)).toBeNull());

  it("has its hour there, not in UTC", () => {
    expect(clockHour(momentOf("2026-04-03T20:15-05:00")!)).toBe(20.25);
    expect(clockHour(momentOf("2026-04-03T02:00+05:30")!)).toBe(2);
  });
});

describe("a forecast as text", () => {
  const two = [
    { at: "2026-04-03T14:00-05:00", levelM: 31.2 * FOOT_M, lowM: null, highM: null },
    { at: "2026-04-03T20:00-05:00", levelM: 32 * FOOT_M, lowM: null, highM: null },
  ];

  it.each([
    ["commas", "2026-04-03 14:00 -05:00, 31.2\n2026-04-03 20:00 -05:00, 32"],
    ["tabs", "2026-04-03T14:00-05:00\t31.2\n2026-04-03T20:00-05:00\t32\n"],
    ["spaces", "2026-04-03 14:00 -05:00 31.2\r\n2026-04-03 20:00 -05:00 32\r\n"],
    [
      "a date apart",
      "date,time,zone,stage\n2026-04-03,14:00,-05:00,31.2\n2026-04-03,20:00,-05:00,32",
    ],
    [
      "names in another order",
      "Stage (ft);Valid time\n31,2;2026-04-03T14:00-05:00\n32;2026-04-03T20:00-05:00",
    ],
    [
      "notes and quotes",
      '\ufeff# from the gauge\n\n"2026-04-03 14:00 -05:00","31.2"\n2026-04-03 20:00 -05:00,32 ft',
    ],
  ])("with %s", (_how, text) => {
    for (const [index, row] of rowsOf(text).entries()) {
      expect(row.at).toBe(two[index]!.at);
      expect(row.levelM).toBeCloseTo(two[index]!.levelM, 9);
    }
  });

  it("takes bands, units and offsets as they stand", () => {
    const text =
      "time,stage_m,low_m,high_m,flow\n2026-03-08T00:00-06:00,9,8.5,9.5,300\n2026-03-08T03:00-05:00,9.4,8.8,10,310";
    expect(rowsOf(text)[1]).toEqual({
      ...{ at: "2026-03-08T03:00-05:00", levelM: 9.4, lowM: 8.8, highM: 10 },
    });
    expect(understood(text).notes).toContainEqual({ kind: "columns-not-used", names: ["flow"] });
  });

  it("says that it took the unit for granted, and asks for the clock", () => {
    const text = "2026-04-03 14:00,9\n2026-04-03 20:00,9.2";
    expect(readText(text)).toMatchObject({ failure: { code: "forecast/zone-needed" } });
    const { notes } = understood(text, { system: "metric", zone: "America/Chicago" });
    expect(notes).toContainEqual({ kind: "unit-assumed", unit: "metric" });
    expect(notes).toContainEqual({ kind: "zone-given", name: "America/Chicago" });
  });

  const at = (hour: string, level: string) => `2026-04-03 ${hour}:00 CDT,${level}`;

  it.each([
    ["nothing", "\n# only a note\n", "forecast/empty", "nothing came"],
    ["three columns", `${at("14", "9")},8`, "forecast/columns", "line 1"],
    ["unknown names", "when,what\n1,2", "forecast/columns", '"what"'],
    ["two units", "time,stage_ft,low_m,high_m\n1,2,3,4", "forecast/columns", "one unit"],
    ["a row too short", `${at("14", "9")}\n2026-04-03 15:00 CDT`, "forecast/columns", "line 2"],
    ["no such day", "2026-04-31 14:00Z,9\n2026-05-01 14:00Z,9", "forecast/time", "line 1"],
    ["an empty level", `time,stage\n${at("14", "9")}\n${at("15", "")}`, "forecast/level", "line 3"],
    ["a mark for missing", `${at("14", "9")}\n${at("15", "-9999")}`, "forecast/level", "line 2"],
    ["words for a level", `${at("14", "9")}\n${at("15", "high")}`, "forecast/level", '"high"'],
    ["the same time", `${at("14", "9")}\n\n${at("14", "9")}`, "forecast/duplicate", "line 3"],
    ["disorder", `${at("14", "9")}\n${at("13", "9")}`, "forecast/disorder", "line 2"],
    ["a mixed zone", `${at("14", "9")}\n2026-04-03T15:00,9`, "forecast/zone", "line 2"],
    [
      "a comma that may be a thousand's",
      "2026-04-03 14:00Z;1,012\n2026-04-03 15:00Z;1,013",
      "forecast/level",
      "line 1",
    ],
    [
      "a band upside down",
      "time,stage,low,high\n2026-04-03 14:00Z,9,8,10\n2026-04-03 15:00Z,9,10,8",
      "forecast/band",
      "line 3",
    ],
  ])("with %s is refused by its line", (_what, text, code, words) => {
    const parsed = readText(text);
    expect(parsed).toMatchObject({ ok: false, failure: { code } });
    if (parsed.ok) return;
    const { message, remedy } = said(parsed.failure);
    expect(message.toLowerCase()).toContain(words);
    expect(message).toMatch(/[Ee]xpected|Nothing is made up/);
    expect(remedy).toMatch(/\S/);
  });

  it.each([
    ["one row", at("14", "9"), "forecast/rows"],
    [
      "a first line without end",
      `time,stage${"_".repeat(400_000)}\n${at("14", "9")}`,
      "forecast/rows",
    ],
    [
      "a gap",
      [at("00", "9"), at("06", "9"), at("12", "9"), "2026-04-05 18:00 CDT,9"].join("\n"),
      "forecast/gap",
    ],
    ["rows days apart", `${at("06", "9")}\n2026-04-06 06:00 CDT,9`, "forecast/gap"],
  ])("with %s is shown, and no plan takes it", (_what, text, code) => {
    const read = understood(text);
    expect(read.notes.at(-1)!.kind).toBe(code === "forecast/gap" ? "gap" : "too-few");
    expect(outcomeOf(() => planForecast(read, ""))).toMatchObject({ failure: { code } });
  });

  it("is refused where it names elevations and stage is chosen", () => {
    const text = `time,elevation_ft\n${at("14", "9")}\n${at("15", "9")}`;
    expect(readText(text, { levels: "stage" })).toMatchObject({
      failure: { code: "forecast/columns" },
    });
    expect(understood(text).levels).toBe("elevation");
  });
});

const FORECAST: Forecast = {
  levels: "stage",
  note: "River forecast centre, 3 April",
  rows: rowsOf(
    "time,stage,low,high\n2026-04-03T14:00-05:00,20,19,21\n2026-04-03T20:00-05:00,24,22,27",
  ),
};
const PLAN: Plan = { ...EMPTY_PLAN, time: { ...DEFAULT_TIME, forecast: FORECAST } };

describe("a forecast in a plan", () => {
  it("crews are whole", () => {
    const half = { ...PLAN, time: { ...PLAN.time!, crews: 2.5 } };
    const refused = validatePlan(half);
    expect(refused.ok ? "" : said(refused.failure).message).toContain(
      "as a whole number; came 2.5",
    );
  });

  it("is written and read again as it was", () => {
    const back = readPlanFile(writePlanFile(PLAN));
    expect(back.ok && back.value.plan.time).toEqual(PLAN.time);
  });

  it("an older plan without it takes the defaults", () => {
    const old = JSON.parse(writePlanFile(EMPTY_PLAN));
    delete old.drystead.time;
    delete old.drystead.holding;
    const back = readPlanFile(JSON.stringify(old));
    expect(back.ok && back.value.plan.time).toEqual(DEFAULT_TIME);
    const { holding: _h, time: _t, ...kept } = EMPTY_PLAN;
    expect(validatePlan(kept).ok).toBe(true);
  });

  const changed = (time: object): string => {
    const checked = validatePlan({ ...PLAN, time: { ...PLAN.time, ...time } });
    return checked.ok ? "" : said(checked.failure).message;
  };

  it("is refused when it is out of order, by its row; so is a start that is no time", () => {
    const rows = [...FORECAST.rows].reverse();
    expect(changed({ forecast: { ...FORECAST, rows } })).toContain("Forecast row 2");
    expect(changed({ forecast: { ...FORECAST, rows: [{}] } })).toContain("time.forecast");
    expect(changed({ startAt: "tomorrow" })).toContain("time.startAt");
    expect(changed({ dayFromH: 20, dayToH: 6 })).toContain("time.dayFromH");
    expect(changed({ dayFromH: null, dayToH: 0 })).toContain("came 0 h");
    const holding = { ...EMPTY_PLAN.holding, frictionLow: 0.6 };
    const turned = validatePlan({ ...PLAN, holding });
    expect(turned.ok ? "" : said(turned.failure).message).toContain(
      "(holding.frictionLow) not above",
    );
  });

  it("is refused with its figures, in the meters of the file", () => {
    const withLow = (lowM: number) => ({
      rows: FORECAST.rows.map((row, k) =>
        k === 1 ? { ...row, levelM: 12, lowM, highM: null } : row,
      ),
    });
    expect(changed({ forecast: { ...FORECAST, ...withLow(15) } })).toContain(
      "expected low, likely and high in rising order; came 15.00 m, 12.00 m and none.",
    );
    expect(changed({ forecast: { ...FORECAST, ...withLow(-1e6) } })).toMatch(
      /; came -1,?000,?000\.00? m\.$/,
    );
  });

  it("stands on the gauge zero and the datum offset", () => {
    const water = { ...PLAN.water, by: "stage" as const, gaugeZeroM: 250, datumOffsetM: 0.1 };
    const river = hydrographOf({ ...PLAN, water }, FORECAST, "high")!;
    expect(river.levelM[1]).toBeCloseTo(250.1 + 27 * FOOT_M, 9);
    const byElevation = hydrographOf(PLAN, { ...FORECAST, levels: "elevation" }, "low")!;
    expect(byElevation.levelM[0]).toBeCloseTo(19 * FOOT_M, 9);
    const rows = FORECAST.rows.map((row, i) => (i === 0 ? { ...row, lowM: null } : row));
    expect(hydrographOf(PLAN, { ...FORECAST, rows }, "low")).toBeNull();
  });
});

describe("a hydrograph", () => {
  const anyRiver = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 0, max: 20 })), {
      minLength: 2,
      maxLength: 8,
    })
    .map((steps): Hydrograph => {
      let at = 0;
      const atS = steps.map(([gap]) => {
        at += gap * 100;
        return at;
      });
      return {
        atS: Float64Array.from(atS),
        levelM: Float64Array.from(steps, ([, level]) => level),
      };
    });
  const moment = fc.integer({ min: 0, max: 900 });

  it("is straight between rows, as its first row before them, unknown after them", () => {
    const river = { atS: Float64Array.of(100, 200, 400), levelM: Float64Array.of(1, 3, 2) };
    expect([0, 100, 150, 200, 300, 400].map((at) => levelAt(river, at))).toEqual([
      1, 1, 2, 3, 2.5, 2,
    ]);
    expect(levelAt(river, 401)).toBeNaN();
    expect(highestBetween(river, 401, 500).levelM).toBeNaN();
    expect(firstAbove(river, 300)(2.5)).toBeNull();
  });

  it("has the highest water and the first crossing that looking at every second finds", () => {
    fc.assert(
      fc.property(anyRiver, moment, moment, fc.nat({ max: 20 }), (river, a, b, wanted) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const seconds = Array.from({ length: to - from + 1 }, (_, k) => from + k);
        const levels = seconds.map((at) => levelAt(river, at)).filter((m) => !Number.isNaN(m));
        const highest = highestBetween(river, from, to);
        if (levels.length === 0) expect(highest.levelM).toBeNaN();
        else expect(highest.levelM).toBeCloseTo(Math.max(...levels), 9);
        const level = wanted + 0.5;
        const all = Array.from({ length: 7000 }, (_, k) => from + k);
        const first = all.find((at) => levelAt(river, at) > level);
        const crossing = firstAbove(river, from)(level);
        if (first === undefined) expect(crossing).toBeNull();
        else expect(Math.abs(crossing! - first)).toBeLessThanOrEqual(1);
      }),
      { seed: 11, numRuns: 60 },
    );
  });
});

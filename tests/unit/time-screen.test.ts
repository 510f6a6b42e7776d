import { describe, expect, it } from "vitest";
import { demoPlan } from "../../sample-terrain/plans.ts";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_TIME } from "../../shared/defaults.ts";
import { validatePlan } from "../../shared/plan-check.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import { midnights } from "../../shared/time/clock.ts";
import { momentOf, momentText } from "../../shared/time/forecast-time.ts";
import { riverClock } from "../../shared/time/river-clock.ts";
import { startOfWork } from "../../shared/time/start.ts";
import { dayWords, hourWords, zoneWords } from "../../shared/words/clock.ts";
import {
  forecastText,
  withLevel,
  withPeopleDayAndNight,
  withTime,
} from "../../src/document/edits/forecast.ts";
import { forecastFrame } from "../../src/drawing/forecast-frame.ts";
import { momentQuantity } from "../../src/worksheet/time/time-start-field.tsx";
import { understood } from "../helpers/read-forecast.ts";
import { said } from "../helpers/said.ts";

const PLAN = demoPlan(1);
const FORECAST = PLAN.time!.forecast!;
const START = "2026-04-07T07:00-05:00";

describe("clock words", () => {
  it("are on the clock of the start, rounded to a quarter of an hour, with the date when far", () => {
    expect(hourWords(START, 0, "us")).toBe("Tue 07:00");
    expect(hourWords(START, 28.1, "us")).toBe("Wed 11:00");
    expect(hourWords(START, 28.1, "us", { toMin: 1, long: true })).toBe("Wed Apr 8, 11:06");
    expect(hourWords(START, 24 * 8, "us")).toBe("Wed Apr 15, 07:00");
    expect(hourWords(START, 24 * 8, "metric")).toBe("Wed 15 Apr, 07:00");
    expect(hourWords(START, 24 * 8, "us", { isNarrow: true })).toBe("Apr 15, 07:00");
    expect(hourWords(START, 24 * 8, "metric", { isNarrow: true })).toBe("15 Apr, 07:00");
    expect(hourWords(START, 28.1, "us", { isNarrow: true })).toBe("Wed 11:00");
    expect(hourWords(null, 28, "us")).toBe("28.0 h after the start");
  });

  it("name day and zone, and find midnights there and not at UTC", () => {
    const late = momentOf("2026-04-07T23:30-05:00")!;
    expect(dayWords(late)).toBe("Tue 7");
    expect(zoneWords(late)).toBe("UTC-05:00");
    expect(zoneWords(momentOf("2026-04-07T23:30")!)).toBeNull();
    const [first, second] = midnights(late, late.atS, late.atS + 86_400 * 2, 1);
    expect(first).toBe(momentOf("2026-04-08T00:00-05:00")!.atS);
    expect(second! - first!).toBe(86_400);
  });
});

describe("the start of work", () => {
  it("without an offset is on the forecast's clock; without a start it is the first row", () => {
    const stated = { ...DEFAULT_TIME, forecast: FORECAST, startAt: "2026-04-07T07:00" };
    expect(startOfWork(stated)).toEqual(momentOf(START));
    expect(startOfWork({ ...stated, startAt: null })).toEqual(momentOf(FORECAST.rows[0]!.at));
    expect(startOfWork(DEFAULT_TIME)).toBeNull();
  });

  it("with an offset is on the local clock of a forecast that states none", () => {
    const rows = FORECAST.rows.map((row) => ({ ...row, at: row.at.slice(0, 16) }));
    const stated = { ...DEFAULT_TIME, forecast: { ...FORECAST, rows }, startAt: START };
    expect(startOfWork(stated)).toEqual(momentOf("2026-04-07T07:00"));
  });

  it("is typed as a date and a time, read back as shown, and refused with what came", () => {
    const quantity = momentQuantity(-300);
    const { atS } = momentOf(START)!;
    expect(quantity.format(atS, "us")).toBe("2026-04-07 07:00");
    for (const text of ["2026-04-07 07:00", START, "2026-04-07 12:00Z"]) {
      expect(quantity.parse(text, "us")).toEqual({ ok: true, value: atS });
    }
    const refused = quantity.parse("tomorrow at seven", "us");
    expect(refused.ok ? "" : said(refused.failure).message).toContain('"tomorrow at seven" came');
  });
});

describe("the forecast on the clock of the work", () => {
  const river = riverClock(PLAN)!;

  it("has its first row before the start, its crest at the demo's stage, and nothing after the end", () => {
    expect([river.fromH, river.crestH, river.toH]).toEqual([-24, 48, 72]);
    expect(river.crestM).toBeCloseTo(waterElevationAtGauge(PLAN.water), 9);
    const between = (river.levelAtH(0) + river.levelAtH(6)) / 2;
    expect(river.levelAtH(3)).toBeCloseTo(between, 9);
    expect(river.levelAtH(73)).toBeNaN();
    expect(riverClock(withTime(PLAN, { forecast: null }))).toBeNull();
  });

  it("is drawn with its days at local midnight and its crest on the line it is sized for", () => {
    const size = { widthPx: 300, heightPx: 170 };
    const frame = forecastFrame({ plan: PLAN, system: "us", ...size })!;
    expect(frame.days.map(({ label }) => label)).toEqual(["Tue 7", "Wed 8", "Thu 9", "Fri 10"]);
    expect(frame.days[0]!.xPx).toBeCloseTo(frame.x(-7), 6);
    expect(frame.y(river.crestM)).toBeCloseTo(frame.y(frame.designM!), 6);
    expect(frame.band).not.toBeNull();
  });
});

describe("edits of the forecast", () => {
  it("written as text, a forecast is read again as the same to a hundredth of its unit", () => {
    for (const system of ["us", "metric"] as const) {
      const { rows } = understood(forecastText(FORECAST, system), { system: "metric" });
      expect(rows.map(({ moment }) => momentText(moment))).toEqual(
        FORECAST.rows.map(({ at }) => at),
      );
      rows.forEach((row, k) => {
        expect(Math.abs(row.levelM - FORECAST.rows[k]!.levelM)).toBeLessThan(0.0051);
        expect(Math.abs(row.highM! - FORECAST.rows[k]!.highM!)).toBeLessThan(0.0051);
      });
    }
  });

  it("a level moves the stage or the elevation, whichever rules", () => {
    const byStage = withLevel(PLAN, waterElevationAtGauge(PLAN.water) - FOOT_M);
    expect(byStage.water.stageM).toBeCloseTo(30 * FOOT_M, 9);
    const elevated = { ...PLAN, water: { ...PLAN.water, by: "elevation" as const } };
    expect(withLevel(elevated, 265).water.elevationM).toBeCloseTo(265, 9);
  });

  it("people day and night fill the whole day with shifts, and the plan stays valid", () => {
    const plan = withPeopleDayAndNight(PLAN, 32);
    expect(plan.practice.people).toBe(32);
    expect(plan.time).toMatchObject({ lit: true, shifts: 3, shiftH: 8 });
    expect(validatePlan(plan).ok).toBe(true);
  });
});

import { describe, expect, it } from "vitest";
import { DEFAULT_TIME, EMPTY_PLAN } from "../../shared/defaults.ts";
import { forecastChange, withForecast } from "../../shared/forecasts/history.ts";
import { looksLikeForecast } from "../../shared/forecasts/read-forecast.ts";
import { planForecast } from "../../shared/forecasts/understood.ts";
import type { Plan, TimeSettings } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import {
  changedWorkWords,
  forecastChangeWords,
  pastForecastsWords,
} from "../../shared/words/forecast.ts";
import { refusal, rowWords, understood } from "../helpers/read-forecast.ts";

describe("a table as an agency's page gives it", () => {
  const morning = "2026-04-06T07:00-05:00 31.20";
  const evening = "2026-04-06T19:00-05:00 31.90";

  it.each([
    ["zone behind the hour", "04/06/2026 07:00 CDT\t31.2\n04/06/2026 19:00 CDT\t31.9"],
    ["AM and PM", "4/6/2026 7:00 AM CDT, 31.2 ft\n4/6/2026 7:00 p.m. CDT, 31.9 ft"],
    ["a named month", "Apr 06 2026 07:00 CDT 31.2\nApr 06 2026 19:00 CDT 31.9"],
    [
      "a comma in the date",
      "Mon, April 6, 2026 7:00 AM CDT; 31.2\nMon, April 6, 2026 7:00 PM CDT; 31.9",
    ],
    ["the day first", "6-Apr-2026 07:00 CDT,31.2\n6-Apr-2026 19:00 CDT,31.9"],
    ["the clock first", "7 AM CDT 04/06/2026\t31.2\n7 PM CDT 04/06/2026\t31.9"],
    [
      "the zone in the heading",
      "Date/Time (CDT)\tStage (ft)\n04/06/2026 07:00\t31.2\n04/06/2026 19:00\t31.9",
    ],
    [
      "date, hour and zone apart",
      "Date,Time,Zone,Stage\n04/06/2026,7:00 AM,CDT,31.2\n04/06/2026,7:00 PM,CDT,31.9",
    ],
    [
      "flow beside it",
      "Date Time Stage Flow\n04/06/2026 07:00 CDT 31.2ft 45.6kcfs\n04/06/2026 19:00 CDT 31.9ft 47.1kcfs",
    ],
    [
      "flow without a heading",
      "04/06/2026 07:00 CDT\t31.2 ft\t45,600 cfs\n04/06/2026 19:00 CDT\t31.9 ft\t47,100 cfs",
    ],
    [
      "titles above",
      "Cedar River at Weir\nForecast of the stage\n04/06/2026 07:00 CDT\t31.2\n04/06/2026 19:00 CDT\t31.9",
    ],
    ["central time", "04/06/2026 07:00 CT\t31.2\n04/06/2026 19:00 CT\t31.9"],
  ])("with %s", (_how, text) => {
    expect(rowWords(understood(text))).toEqual([morning, evening]);
  });

  it("shows zones with their offsets, across the hour that is left out in spring too", () => {
    const read = understood("03/08/2026 01:00 CST,9\n03/08/2026 03:00 CDT,9.2");
    expect(read.zones).toEqual([
      { written: "CST", offsetMin: -360 },
      { written: "CDT", offsetMin: -300 },
    ]);
    expect(read.rows[1]!.moment.atS - read.rows[0]!.moment.atS).toBe(3600);
    expect(read.notes).toContainEqual({ kind: "clock-change" });
  });

  it("is in meters where it says so, whatever the unit of the plan", () => {
    const read = understood(
      "time (CDT), stage (m)\n04/06/2026 07:00, 9.51\n04/06/2026 13:00, 9.72",
    );
    expect(read).toMatchObject({ unit: "metric", levels: "stage", from: "table" });
    expect(read.rows.map(({ levelM }) => levelM)).toEqual([9.51, 9.72]);
    const given = understood("04/06/2026 07:00 CDT, 9.51\n04/06/2026 13:00 CDT, 9.72", {
      units: "metric",
    });
    expect(given.rows[0]!.levelM).toBe(9.51);
  });

  it("leaves out rows that are marked as missing, and says which", () => {
    const read = understood(
      "04/06/2026 07:00 CDT,31.2\n04/06/2026 13:00 CDT,M\n04/06/2026 19:00 CDT,31.9",
    );
    expect(rowWords(read)).toEqual([morning, evening]);
    expect(read.leftOut).toEqual([{ place: { line: 2, column: 22 }, why: "missing", came: "M" }]);
  });

  it("takes a place's clock where times state none, and asks in the hour that comes twice", () => {
    const text = "11/01/2026 00:30,9\n11/01/2026 03:30,9.2";
    expect(refusal(text)).toMatchObject({ code: "forecast/zone-needed" });
    const { rows } = understood(text, { zone: "America/Chicago" });
    expect(rows.map(({ moment }) => moment.offsetMin)).toEqual([-300, -360]);
    const twice = refusal("11/01/2026 01:30,9\n11/01/2026 03:30,9", { zone: "America/Chicago" });
    expect(twice.code).toBe("forecast/zone-clock");
    expect(twice.words).toContain("twice");
    const never = refusal("03/08/2026 02:30,9\n03/08/2026 04:30,9", { zone: "America/Chicago" });
    expect(never.words).toContain("never");
  });

  it("keeps standard time in summer as it is written, and says so", () => {
    const read = understood("07/06/2026 07:00 CST,9\n07/06/2026 13:00 CST,9");
    expect(read.rows[0]!.moment.offsetMin).toBe(-360);
    expect(read.notes).toContainEqual({ kind: "standard-in-summer", written: "CST" });
  });

  it.each([
    ["an ambiguous zone", "04/06/2026 07:00 BST,31", "forecast/zone-needed", "british"],
    ["an unknown zone", "04/06/2026 07:00 QST,31", "forecast/zone-needed", '"qst"'],
    ["no year", "04/06 07:00 CDT,31", "forecast/time", "no year"],
    ["no hour", "04/06/2026,31", "forecast/zone-needed", "line 1, column 1"],
    ["no hour, with a clock", "Date (CDT),Stage\n04/06/2026,31", "forecast/time", "no hour"],
    [
      "day and month the other way",
      "04/13/2026 07:00 CDT,31\n13/04/2026 13:00 CDT,31",
      "forecast/time",
      "line 2, column 1",
    ],
    [
      "thirteen o'clock PM",
      "04/06/2026 13:00 PM CDT,31",
      "forecast/time",
      "not a real date and time",
    ],
    [
      "Excel serials",
      "time,stage\n46118.2917,31.2\n46118.5417,31.4",
      "forecast/time",
      "a spreadsheet's own number",
    ],
    ["a formula for a level", "04/06/2026 07:00 CDT,=B1+1", "forecast/level", "is a formula"],
    ["a formula for a time", "time,stage\n=NOW(),31", "forecast/time", "a formula"],
    [
      "wrong columns",
      "04/06/2026 07:00 CDT,31\n04/06/2026 13:00 CDT,31,4",
      "forecast/columns",
      "line 2, column 25",
    ],
    [
      "times that go back",
      "04/06/2026 13:00 CDT,31\n04/06/2026 07:00 CDT,31",
      "forecast/disorder",
      "line 2, column 1",
    ],
    ["a web page", "<!DOCTYPE html><html><body>31</body></html>", "forecast/xml", "a web page"],
  ])("with %s is refused by line and column", (_what, text, code, words) => {
    const refused = refusal(text);
    expect(refused.code).toBe(code);
    expect(refused.words).toContain(words);
  });

  it("refuses ten megabytes of anything at once", () => {
    for (const junk of ["x", "1,", "04/06/2026 07:00 CDT,31\n", ".E ", "<a>", "\t\n", "9 "]) {
      const text = junk.repeat(Math.ceil(10_000_000 / junk.length));
      expect(refusal(text).code).toBe("forecast/rows");
    }
  });
});

const RDB = [
  "# Invented values in the form of a USGS file of instantaneous values",
  "#",
  "# TS_ID       Parameter Description",
  "# 71001       00065     Gage height, feet",
  "# 71002       00060     Discharge, cubic feet per second",
  "agency_cd\tsite_no\tdatetime\ttz_cd\t71001_00065\t71001_00065_cd\t71002_00060\t71002_00060_cd",
  "5s\t15s\t20d\t6s\t14n\t10s\t14n\t10s",
  "USGS\t09999001\t2026-04-06 07:00\tCDT\t31.20\tP\t45600\tP",
  "USGS\t09999001\t2026-04-06 07:15\tCDT\tEqp\tP\t45700\tP",
  "USGS\t09999001\t2026-04-06 07:30\tCDT\t31.32\tP:e\t45800\tP",
];

describe("a USGS tab-delimited file", () => {
  it("gives the gage height, each row on its own clock, and says what was not used", () => {
    const read = understood(RDB.join("\r\n"));
    expect(read).toMatchObject({ from: "rdb", levels: "stage", unit: "us" });
    expect(rowWords(read)).toEqual([
      "2026-04-06T07:00-05:00 31.20",
      "2026-04-06T07:30-05:00 31.32",
    ]);
    expect(read.leftOut).toEqual([{ place: { line: 9, column: 36 }, why: "missing", came: "Eqp" }]);
    expect(read.zones).toEqual([{ written: "CDT", offsetMin: -300 }]);
    expect(read.notes).toContainEqual({ kind: "doubtful", code: "e", rows: 1 });
    expect(read.notes).toContainEqual({ kind: "observed" });
  });

  it("asks which of two sites, and takes the one that is named", () => {
    const other = "USGS\t09999002\t2026-04-06 07:00\tCDT\t12.20\tP\t100\tP";
    const text = [...RDB, other].join("\n");
    expect(refusal(text).code).toBe("forecast/which");
    expect(rowWords(understood(text, { series: "09999002" }))).toEqual([
      "2026-04-06T07:00-05:00 12.20",
    ]);
  });

  it.each([
    ["cut off", RDB.join("\n").slice(0, -20), "forecast/cut-off", "line 10"],
    [
      "without a level",
      RDB.join("\n").replaceAll("_00065", "_00010"),
      "forecast/no-level",
      "00060",
    ],
    [
      "with a word for a level",
      RDB.join("\n").replace("31.20", "high"),
      "forecast/level",
      "line 8, column 36",
    ],
    [
      "with days alone",
      RDB.join("\n").replace("2026-04-06 07:00", "2026-04-06"),
      "forecast/time",
      "line 8, column 15",
    ],
  ])("%s is refused", (_what, text, code, words) => {
    const refused = refusal(text);
    expect(refused.code).toBe(code);
    expect(refused.words).toContain(words);
  });
});

describe("a file that may be a forecast", () => {
  const SHEF = "SRUS53 KDMX 061200\r\nRVFDMX\r\n: a note\r\n.A CEDW4 260406 C DH07/HG 1";
  it("is told by how it begins, not by its name", () => {
    for (const name of ["msg.txt", "msg.a", "msg.dat", "msg"]) {
      for (const text of [SHEF, RDB.join("\n"), ".A CEDW4 260406 C DH07/HG 1"]) {
        expect(looksLikeForecast(text, name)).toBe(true);
      }
      for (const text of ["ncols 3\nnrows 2\n1 2 3\n4 5 6", "<GDALDataset/>", "PROJCS[]"]) {
        expect(looksLikeForecast(text, name)).toBe(false);
      }
    }
  });

  it("is no table of hours where the ending is another's, and nothing with binary in it", () => {
    const table = "04/06/2026 07:00 CDT 31.2";
    expect(looksLikeForecast(table, "page.txt")).toBe(true);
    expect(looksLikeForecast(table, "page")).toBe(true);
    expect(looksLikeForecast(table, "county.dem")).toBe(false);
    expect(looksLikeForecast(`II*\0\0\n${SHEF}`, "raster")).toBe(false);
  });
});

describe("a forecast that is replaced", () => {
  const plan = (): Plan => ({
    ...EMPTY_PLAN,
    water: { ...EMPTY_PLAN.water, by: "stage", stageM: 9.144, gaugeZeroM: 250 },
  });
  const of = (text: string) => planForecast(understood(text), "");
  const first = of("04/06/2026 07:00 CDT,28\n04/07/2026 07:00 CDT,30\n04/08/2026 07:00 CDT,29");
  const newer = of("04/06/2026 19:00 CDT,28.5\n04/07/2026 01:00 CDT,31\n04/07/2026 07:00 CDT,30");

  it("stays in the plan and its file, and says what changed", () => {
    const one = { ...DEFAULT_TIME, ...withForecast(DEFAULT_TIME, first, 1000) };
    expect(one.pastForecasts).toBeUndefined();
    const same = withForecast(one, { ...first, note: "again" }, 1500);
    expect(same.pastForecasts).toBeUndefined();
    const two = { ...one, ...withForecast(one, newer, 2000.4) };
    expect(two.pastForecasts).toEqual([{ ...first, replacedAtS: 2000 }]);
    const whole = { ...plan(), time: two };
    const back = readPlanFile(writePlanFile(whole));
    expect(back.ok && back.value.plan.time).toEqual(two);
    const change = forecastChange(whole)!;
    expect(change.riseM).toBeCloseTo(0.3048, 9);
    expect(change.laterH).toBe(-6);
    expect(forecastChangeWords(whole, change, "us")).toContain("1.00 ft higher, 6.0 h sooner");
    expect(pastForecastsWords(whole, "us")).toContain("1 earlier forecast");
  });

  it("keeps the newest eight", () => {
    const forecasts = Array.from({ length: 12 }, (_, k) => {
      const rows = first.rows.map((row) => ({ ...row, levelM: row.levelM + k / 100 }));
      return { ...first, rows };
    });
    const time = forecasts.reduce<TimeSettings>(
      (now, forecast, k) => ({ ...now, ...withForecast(now, forecast, k) }),
      DEFAULT_TIME,
    );
    expect(time.pastForecasts!.map(({ replacedAtS }) => replacedAtS)).toEqual([
      4, 5, 6, 7, 8, 9, 10, 11,
    ]);
  });

  it("says what that asks of what is built", () => {
    const work = {
      overPlanM: 0.3048,
      bags: 17879,
      bagsAtCrest: 21400,
      toHeightM: 100,
      toBuildM: 250,
    };
    const higher = changedWorkWords(work, "us").join(" ");
    expect(higher).toContain("1.00 ft over the water the line is sized for");
    expect(higher).toContain("21,400 bags, 3,521 more than now");
    expect(higher).toContain("328 ft (40 %) is built to the former height");
    expect(changedWorkWords({ ...work, overPlanM: -0.3048 }, "us").join(" ")).toContain(
      "leave it as it is",
    );
    expect(changedWorkWords({ ...work, bagsAtCrest: null }, "us").join(" ")).not.toContain("bags");
  });
});

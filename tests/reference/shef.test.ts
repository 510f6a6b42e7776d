import { describe, expect, it } from "vitest";
import { messagesIn } from "../../shared/forecasts/shef-text.ts";
import { valuesOf } from "../../shared/forecasts/shef-values.ts";
import { refusal, rowWords, understood } from "../helpers/read-forecast.ts";

/**
 * Examples of the SHEF Code Manual (NWS, July 5, 2012) by its sections 5.4.1, 5.4.2 and 7.4.7, as public decoders quote
 * them under these numbers; pages not established. Moments are worked out by hand from the zone and the hour.
 */
const valuesAt = (message: string, now: string) =>
  messagesIn(message)
    .flatMap((each) => valuesOf(each, Date.parse(now) / 1000))
    .map(({ code, moment, text }) => [
      code.slice(0, 2),
      new Date(1000 * moment!.atS).toISOString().slice(0, 16),
      text,
    ]);

describe("SHEF .A, manual 5.4.1", () => {
  it("one value, UTC where no zone is written", () => {
    expect(valuesAt(".A CSAT2 0309 DH12/HG 10.25", "2021-03-09T00:00Z")).toEqual([
      ["HG", "2021-03-09T12:00", "10.25"],
    ]);
  });

  it("a second value at another date and hour", () => {
    const message = ".A MASO1 0907 C DH22/QR .12/DM0908/DH09/QR 5.0";
    expect(valuesAt(message, "2021-09-09T00:00Z")).toEqual([
      ["QR", "2021-09-08T03:00", ".12"],
      ["QR", "2021-09-08T14:00", "5.0"],
    ]);
  });

  it("hour 24 is the end of the day, and a date override with an hour", () => {
    const message = ".A BON 810907 P DH24/QID 250./DM090806/QIQ 300./QIQ 310.";
    expect(valuesAt(message, "1981-09-09T00:00Z")).toEqual([
      ["QI", "1981-09-08T07:00", "250."],
      ["QI", "1981-09-08T13:00", "300."],
      ["QI", "1981-09-08T13:00", "310."],
    ]);
  });
});

describe("SHEF .B, manual 5.4.2", () => {
  const PDX = [
    ".B PDX 1011 P DH06/HG/DRH-12/HG",
    ":",
    ": ID 6 AM STAGE THIS MORNING, 6 PM STAGE LAST NIGHT, STATION NAME",
    ":",
    "PHIO3 9.7/6.2E :PHILOMATH, OR",
    "JFFO3 4.5/7.2  :JEFFERSON, OR",
    ".END",
  ].join("\n");

  it("two stages of each gauge, the second twelve hours before", () => {
    expect(valuesAt(PDX, "2021-10-11T00:00Z")).toEqual([
      ["HG", "2021-10-11T13:00", "9.7"],
      ["HG", "2021-10-11T01:00", "6.2E"],
      ["HG", "2021-10-11T13:00", "4.5"],
      ["HG", "2021-10-11T01:00", "7.2"],
    ]);
  });

  it("asks which gauge; the one named gives its rows in order, estimated values said", () => {
    const nowS = Date.UTC(2021, 9, 11) / 1000;
    expect(refusal(PDX, { nowS }).code).toBe("forecast/which");
    const read = understood(PDX, { nowS, series: "PHIO3" });
    expect(rowWords(read)).toEqual(["2021-10-10T18:00-07:00 6.20", "2021-10-11T06:00-07:00 9.70"]);
    expect(read.notes).toContainEqual({ kind: "doubtful", code: "E", rows: 1 });
  });

  it("an hour of its own in a line of the body", () => {
    const message =
      ".B PDR 0807 P DH05/SW/PC/DUS/TA\n: THIS IS SELECTED SNOTEL DATA\nANRO3 DH0523/0.1/ 72.4/ 7.2\n.END";
    expect(valuesAt(message, "2021-08-07T00:00Z")).toEqual([
      ["SW", "2021-08-07T12:23", "0.1"],
      ["PC", "2021-08-07T12:23", "72.4"],
      ["TA", "2021-08-07T12:23", "7.2"],
    ]);
  });

  it("a stage in feet and in meters beside it is one stage; what is between colons is a remark", () => {
    const message =
      ".B ELP 0328 M DH07/HG/DUS/HG/HI\n:\n: RIVER STAGES FEET METERS  TENDENCY\n: PRESIDIO : PRST2 4.9 / 1.49 / :STEADY: 0\n.END";
    const read = understood(message, { nowS: Date.UTC(1985, 2, 27) / 1000 });
    expect(rowWords(read)).toEqual(["1985-03-28T07:00-07:00 4.90"]);
  });

  it("rows that commas separate on one line", () => {
    const message =
      ".B LCH 0305 C DH07/HG/PP\nLKCL1 0.9/ .04 , GLML1 13.7 //, OKDL1 10.6 / 0.4\n.END";
    const nowS = Date.UTC(2021, 2, 5) / 1000;
    expect(rowWords(understood(message, { nowS, series: "GLML1" }))).toEqual([
      "2021-03-05T07:00-06:00 13.70",
    ]);
  });
});

describe("SHEF .A with an evolving time series, manual 7.4.7", () => {
  it("each hour of its own, into the next day", () => {
    const message =
      ".A COMT2 850327 C DH07/HG 1.89/DH1422/HG 2.44/DH1635/HG 8.71/DH1707/HG 7.77/DH1745/HG 11.42/DH2022/HG 4.78/DH2315/HG 12.55/DD280020/HG 17.02/DH0140/HG 12.00/DH0420/HG 27.21/DH0700/HG 10.55";
    const rows = rowWords(understood(message, { nowS: Date.UTC(1985, 2, 27) / 1000 }));
    expect(rows).toHaveLength(11);
    expect([rows[0], rows[7], rows[10]]).toEqual([
      "1985-03-27T07:00-06:00 1.89",
      "1985-03-28T00:20-06:00 17.02",
      "1985-03-28T07:00-06:00 10.55",
    ]);
  });
});

/** Messages of our own making, in the form of the manual's 4 and 5. */
describe("SHEF .E and hostile messages", () => {
  it("a forecast with continuation lines, remarks, missing and rejected values", () => {
    const text = [
      "ZCZC A HEADER THAT IS NOT READ",
      ":CEDAR RIVER AT WEIR",
      ".E CEDW4 260406 Z DC2604061548/DH18/HGIFF/DIH6",
      ":      18Z    0Z     6Z    12Z",
      ".E1 : 6.8 0406/1440Z: / 26.7/ 27.6/ M/ 29.5R",
      ".E2 : :: :/ 30.3/ 31.2Q",
    ].join("\n");
    const read = understood(text);
    expect(rowWords(read)).toEqual([
      "2026-04-06T18:00+00:00 26.70",
      "2026-04-07T00:00+00:00 27.60",
      "2026-04-07T18:00+00:00 30.30",
      "2026-04-08T00:00+00:00 31.20",
    ]);
    expect(read.leftOut.map(({ place, why }) => [place.line, why])).toEqual([
      [5, "missing"],
      [5, "rejected"],
    ]);
    expect(read).toMatchObject({
      from: "shef",
      series: "CEDW4 HGIFF",
      levels: "stage",
      unit: "us",
    });
    expect(understood(text, { zone: "America/Chicago" }).rows[0]!.moment.offsetMin).toBe(-300);
  });

  it("takes the forecast before what is observed, a revision before what it replaces, and meters", () => {
    const text = [
      ".A CEDW4 260406 CD DH07/HGIRZ 29.1",
      ".E CEDW4 260406 CD DH07/DUS/HGIFF/DIH12/9.0/9.4/9.6",
      ".ER CEDW4 260406 CD DH19/DUS/HGIFF/DIH12/9.5/9.7",
    ].join("\n");
    const read = understood(text);
    expect(rowWords(read)).toEqual([
      "2026-04-06T07:00-05:00 9.00",
      "2026-04-06T19:00-05:00 9.50",
      "2026-04-07T07:00-05:00 9.70",
    ]);
    expect(read.unit).toBe("metric");
    expect(read.leftOut.map(({ why }) => why)).toEqual(["replaced", "replaced"]);
    expect(read.notes).toContainEqual({
      kind: "series",
      taken: "CEDW4 HGIFF",
      others: ["CEDW4 HGIRZ"],
    });
  });

  it("a pool is an elevation", () => {
    expect(understood(".E DAMW4 260406 Z DH00/HPIFF/DIH6/873.1/873.4").levels).toBe("elevation");
  });

  it.each([
    [
      "a .B message without its end",
      ".B PDX 0406 C DH06/HG\nCEDW4 9.7",
      "forecast/cut-off",
      "line 2",
    ],
    [
      "a .E message cut off in its head",
      ".E CEDW4 260406 Z DH18/HGIFF",
      "forecast/cut-off",
      "without an interval",
    ],
    ["a beginning cut off", ".E1 /26.7/27.6", "forecast/shef", "line 1, column 1"],
    ["a date that is none", ".E CEDW4 261306 Z DH18/HGIFF/DIH6/1/2", "forecast/time", "line 1"],
    [
      "a word for a value",
      ".E CEDW4 260406 Z DH18/HGIFF/DIH6/26.7/2O.1",
      "forecast/level",
      "line 1, column 40",
    ],
    [
      "values without heads",
      ".B PDX 0406 C DH06/HG\nCEDW4 9.7/8.8\n.END",
      "forecast/columns",
      "line 2, column 11",
    ],
    ["flow alone", ".A CEDW4 260406 Z DH18/QRIFF 4.2", "forecast/no-level", "qriff"],
    [
      "two gauges",
      ".A AAAW4 260406 Z DH18/HG 1\n.A BBBW4 260406 Z DH18/HG 2",
      "forecast/which",
      '"aaaw4", "bbbw4"',
    ],
    ["a former zone", ".A CEDW4 260406 Y DH18/HG 1", "forecast/zone-needed", "yukon"],
  ])("refuses %s", (_what, text, code, words) => {
    const refused = refusal(
      `${text}${text.startsWith(".E1") ? "\n.E X 260406 Z DH1/HG/DIH6/1" : ""}`,
    );
    expect(refused.code).toBe(code);
    expect(refused.words).toContain(words);
  });
});

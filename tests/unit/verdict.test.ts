import { describe, expect, it } from "vitest";
import type { LevelDoubt } from "../../shared/level-doubt.ts";
import type { Check, SizedLine, Totals } from "../../shared/sizing-types.ts";
import { type TimeVerdict, timeVerdict } from "../../shared/time/time-verdict.ts";
import type { AheadVerdict, LineTime } from "../../shared/time/types.ts";
import { cureOf, type KnownLine, overallVerdict } from "../../shared/verdict.ts";
import type { TracedAlternative } from "../../shared/water-types.ts";
import { timeVerdictBrief } from "../../shared/words/time-verdict.ts";
import {
  cureWords,
  headlineWords,
  noneFoundWords,
  overallVerdictWords,
} from "../../shared/words/verdict.ts";
import { replacePlan } from "../../src/document/store.ts";
import { sized } from "../../src/live/results.ts";
import { chosenVerdict, cureNow, verdicts } from "../../src/live/verdict-now.ts";
import { flat, groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const WHOLE = size(planWith(100.3), ring(rectangle(25, 20)), flat(100));
const DOUBT: LevelDoubt = {
  ...{ kind: "far-below", waterM: 81.2, apartM: 180, lowestGroundM: 264, highestGroundM: 266 },
  ...{ causes: ["unit"], countsUnknown: true },
};
const AHEAD = { leastSpareM: 0.1, behindFromH: null, behindAtM: null };
const BEHIND = { leastSpareM: -0.2, behindFromH: 18, behindAtM: 40 };

function verdict(band: AheadVerdict["band"], pace: AheadVerdict["pace"], ahead: boolean) {
  return { band, pace, ahead, ...(ahead ? AHEAD : BEHIND) };
}

/** Finished after 27 to 49 h of a forecast of 72 h that is ahead at both paces, but for what is changed. */
function timeOf(changes: Partial<LineTime> & { slow?: boolean; fast?: boolean; high?: boolean }) {
  const { slow = true, fast = true, high, ...rest } = changes;
  const verdicts = [
    verdict("likely", "slow", slow),
    verdict("likely", "fast", fast),
    ...(high === undefined ? [] : [verdict("high", "slow", high), verdict("high", "fast", high)]),
  ];
  const time = { missing: [], verdicts, inTime: slow, crests: [], forecastEndH: 72 };
  return { ...time, finishFastH: 27, finishSlowH: 49, startAt: "2026-04-07T07:00-05:00", ...rest };
}

type Changes = {
  readonly id?: string;
  readonly time?: ReturnType<typeof timeOf> | null;
  readonly totals?: Partial<Totals>;
  readonly levelDoubt?: LevelDoubt;
  readonly checks?: readonly Check[];
  readonly dry?: boolean | null;
  readonly traced?: null;
};

function known(changes: Changes): KnownLine {
  const { totals = {}, time = timeOf({}), checks = [], dry = true, traced, ...rest } = changes;
  const line = {
    ...{ ...WHOLE, checks, time, ...rest },
    totals: { ...WHOLE.totals, bags: 17_879, ...totals },
  } as unknown as SizedLine;
  return { line, checks, traced: traced === null ? null : ({ dry } as TracedAlternative) };
}

const stretch = { at: "stretch", fromM: 124.6, toM: 133.5, overClosing: false } as const;

function check(finding: Check["finding"], changes: Partial<Check> = {}): Check {
  return {
    ...{ id: "setback", severity: "stop", finding, fromM: 124.6, toM: 133.5, at: null },
    ...{ where: stretch, ...changes },
  } as Check;
}

const OVER = check({
  ...{ kind: "over-limit", heightM: 1.3361, limitM: 1.2192, lengthM: 9.06, doubtsData: false },
});
const NO_GO = check({ kind: "no-go", area: "Garden" });
const GAP = check({ kind: "no-ground", lengthM: 12 });
const LATE = check(
  {
    ...{ kind: "late", by: "likely", startAt: "2026-04-07T07:00-05:00", behindFromH: 28 },
    ...{ behindAtM: 40, marginM: 0.3, shortM: 0.2, waysOut: null, mostWork: null },
  },
  { where: null, fromM: 0, toM: 0 },
);
const GETS_IN = check({
  ...{ kind: "water-gets-in", reaches: "House", through: [], line: "ring" },
  place: { chainageM: 12, roundEnd: false, besideM: 0, groundM: 100 },
});
const over = { totals: { lengthOverLimitM: 9.0629 }, checks: [OVER] };

const CASES: readonly (readonly [string, Changes, us: string, metric?: string])[] = [
  ["in time", {}, "in time, nothing over limit"],
  [
    "in time by a high forecast too",
    { time: timeOf({ high: true }) },
    "in time, nothing over limit",
  ],
  [
    "late by the high forecast alone",
    { time: timeOf({ high: false }) },
    "late if the river runs high",
  ],
  ["late at slow pace", { time: timeOf({ slow: false }) }, "late at slow pace"],
  ["late at both", { time: timeOf({ slow: false, fast: false }) }, "late"],
  ["over a year", { time: timeOf({ finishSlowH: null }) }, "late: over a year"],
  [
    "over the limit and late",
    { ...over, time: timeOf({ slow: false }) },
    "30 ft over limit, late at slow pace",
    "9 m over limit, late at slow pace",
  ],
  ["over the limit, in time", over, "30 ft over limit", "9 m over limit"],
  [
    "over the limit by a hair",
    { totals: { lengthOverLimitM: 0.01 }, checks: [OVER] },
    "less than 1 ft over limit",
    "less than 1 m over limit",
  ],
  [
    "over the limit, with more to fix",
    { ...over, checks: [OVER, NO_GO] },
    "30 ft over limit, 1 other Must fix",
    "9 m over limit, 1 other Must fix",
  ],
  ["other Must fix, in time", { checks: [NO_GO, NO_GO] }, "2 Must fix"],
  [
    "a gap",
    { totals: { lengthNoDataM: 12 }, checks: [GAP] },
    "39 ft without elevation data",
    "12 m without elevation data",
  ],
  ["a Must fix that nothing else names", { checks: [LATE] }, "1 Must fix"],
  ["water not traced", { traced: null }, "in time, nothing over limit, water not known"],
  ["water traced, not known", { dry: null }, "in time, nothing over limit, water not known"],
  [
    "water not traced, and no crew",
    { traced: null, time: timeOf({ missing: ["people"], verdicts: [] }) },
    "nothing over limit, time not known: no crew, water not known",
  ],
  ["water not traced, late", { traced: null, time: timeOf({ slow: false }) }, "late at slow pace"],
  ["water gets in", { dry: false, checks: [GETS_IN] }, "water gets in"],
  [
    "sized for less than the forecast crest",
    { time: timeOf({ crests: [{ band: "likely", riseM: 0.3 }] as never }) },
    "sized 1.0 ft below the forecast crest",
    "sized 0.30 m below the forecast crest",
  ],
  ["counting", { time: null }, "nothing over limit, counting the hours"],
  [
    "no crew",
    { time: timeOf({ missing: ["people", "startAt", "shifts"], verdicts: [] }) },
    "nothing over limit, time not known: no crew",
  ],
  [
    "no start",
    { time: timeOf({ missing: ["startAt"], verdicts: [] }) },
    "nothing over limit, time not known: no start of work",
  ],
  [
    "no forecast",
    { time: timeOf({ verdicts: [], forecastEndH: null }) },
    "nothing over limit, time not known: no forecast",
  ],
  [
    "a forecast that is over",
    { time: timeOf({ verdicts: [] }) },
    "nothing over limit, time not known: the forecast ends before the work starts",
  ],
  [
    "a forecast that ends first",
    { time: timeOf({ finishSlowH: 80 }) },
    "nothing over limit, time not known: the forecast ends before the work does",
  ],
  ["doubt", { levelDoubt: DOUBT }, "not known: no ground below the water"],
  ["no data", { totals: { lengthM: 90, lengthNoDataM: 90 } }, "not known: no elevation data"],
];

describe("the verdict on a line", () => {
  const cases = CASES.map(([name, changes, us, metric = us]) => ({ name, changes, us, metric }));

  it.each(cases)("$name", ({ changes, us, metric }) => {
    const verdict = overallVerdict(known(changes));
    expect(overallVerdictWords(verdict, "us")).toBe(us);
    expect(overallVerdictWords(verdict, "metric")).toBe(metric);
  });

  it("is in time only with everything it needs, and ahead of the high forecast", () => {
    const kinds = CASES.filter(([, , words]) => words.startsWith("in time"));
    expect(kinds).toHaveLength(4);
    const without: (Partial<LineTime> & { high?: boolean })[] = [
      ...[{ high: false }, { missing: ["people" as const] }, { verdicts: [] }, { inTime: null }],
      ...[{ finishSlowH: 90 }, { finishSlowH: null }],
    ];
    for (const changes of without) {
      const { kind } = timeVerdict(known({ time: timeOf(changes) }).line);
      expect(kind satisfies TimeVerdict["kind"], JSON.stringify(changes)).not.toBe("in-time");
    }
  });

  it("counts the length over the limit as the check that finds it, on real ground", () => {
    const pit = groundOf((x, y) => 100 - 0.6 * Math.exp(-((x - 25) ** 2 + y ** 2) / 20));
    const line = size(planWith(100.6), ring(rectangle(25, 20)), pit);
    const found = line.checks.filter(({ id }) => id === "over-limit");
    expect(found).toHaveLength(1);
    const { lengthM } = found[0]!.finding as { readonly lengthM: number };
    const { overLimitM } = overallVerdict({ line, checks: line.checks, traced: null });
    expect(lengthM).toBeGreaterThan(1);
    expect(overLimitM).toBeCloseTo(lengthM, 9);
  });
});

describe("what is first to fix", () => {
  it("is what is over the limit, then a gap, then time, then all else, then a caution", () => {
    const caution = check({ kind: "open-toe" }, { severity: "caution" });
    const note = check({ kind: "open-toe" }, { severity: "note" });
    const order = [OVER, GAP, LATE, GETS_IN, NO_GO, caution];
    for (let i = 0; i < order.length; i++) {
      const left = order.slice(i).reverse();
      expect(overallVerdict(known({ checks: [note, ...left] })).first).toBe(order[i]);
    }
    expect(overallVerdict(known({ checks: [note] })).first).toBeNull();
  });

  it("is the highest of several places, and where figures are no answer that", () => {
    const higher = check({ ...OVER.finding, heightM: 2 } as Check["finding"], { fromM: 200 });
    expect(overallVerdict(known({ checks: [OVER, higher] })).first).toBe(higher);
    const doubt = check({ kind: "water-level", doubt: DOUBT }, { where: null });
    expect(overallVerdict(known({ checks: [OVER, doubt] })).first).toBe(doubt);
  });

  it("is said with its place, its figures and one thing to do", () => {
    expect(headlineWords(OVER, "us")).toEqual({
      severity: "Must fix",
      headline: "Too high at 4+09 to 4+38: 4.4 ft, height limit 4.0 ft",
      remedy: "Move the line to higher ground, or ask a licensed engineer.",
    });
    expect(headlineWords(OVER, "metric")!.headline).toBe(
      "Too high at 0+125 to 0+134: 1.34 m, height limit 1.22 m",
    );
    expect(headlineWords(LATE, "us")!.headline).toBe(
      "Late: behind the water from Wed 11:00, near 1+31",
    );
    expect(headlineWords(NO_GO, "us")!.headline).toContain("no-go");
    expect(headlineWords(null, "us")).toBeNull();
  });

  it("where nothing is found, is that alone, and not known before the water is traced", () => {
    expect(noneFoundWords(overallVerdict(known({}))).severity).toBe("No Must fix");
    expect(noneFoundWords(overallVerdict(known({ traced: null }))).headline).toBe(
      "Not known whether water gets in",
    );
  });
});

describe("a line that cures it", () => {
  const a = known({ ...over, id: "a" });
  const b = known({ id: "b", totals: { bags: 14_276 } });
  const curedBy = (chosen: KnownLine, ...others: KnownLine[]) =>
    cureOf(chosen, overallVerdict(chosen), [chosen, ...others]);

  it("is the one of fewest bags without a Must fix, with the difference of the figures shown", () => {
    const fixed = known({ id: "c", totals: { bags: 9000 }, checks: [NO_GO] });
    const dear = known({ id: "d", totals: { bags: 20_000 } });
    const cure = curedBy(a, fixed, dear, b)!;
    expect(cure).toMatchObject({ id: "b", fewerBags: 3603 });
    const of = overallVerdict(a);
    expect(cureWords(cure, of, "us")).toBe("nothing over limit, 3,603 fewer bags");
    expect(cureWords(curedBy(a, dear)!, of, "us")).toBe("nothing over limit, 2,121 more bags");
  });

  it("is none that is late where this is late, nor whose water is not traced", () => {
    const late = known({ id: "a", time: timeOf({ slow: false }) });
    const lateToo = known({ id: "c", totals: { bags: 100 }, time: timeOf({ slow: false }) });
    const high = known({ id: "d", totals: { bags: 15_000 }, time: timeOf({ high: false }) });
    expect(curedBy(late, lateToo)).toBeNull();
    expect(cureWords(curedBy(late, lateToo, high)!, overallVerdict(late), "us")).toBe(
      "late if the river runs high, 2,879 fewer bags",
    );
    expect(curedBy(a, { ...b, traced: null })).toBeNull();
  });

  it("says what is still wrong with it, also if the river runs high or where its time alone is not known", () => {
    const said = (time: ReturnType<typeof timeOf>, chosen = a) =>
      cureWords(curedBy(chosen, known({ id: "b", time }))!, overallVerdict(chosen), "us");
    const ends = timeOf({ finishSlowH: 80 });
    const low = timeOf({ crests: [{ band: "likely", riseM: 0.3 }] as never });
    const better = "nothing over limit, as many bags";
    expect(said(timeOf({}))).toBe(better);
    expect(said(timeOf({ high: false }))).toBe(`${better}, late if the river runs high`);
    expect(said(low)).toBe(`${better}, sized 1.0 ft below the forecast crest`);
    expect(said(ends)).toBe(`${better}, time not known: the forecast ends before the work does`);
    expect(said(ends, known({ ...over, id: "a", time: ends }))).toBe(better);
  });

  it("is none whose time is not known where this is late", () => {
    const late = known({ id: "a", time: timeOf({ slow: false }) });
    expect(curedBy(late, known({ id: "b", time: timeOf({ finishSlowH: 80 }) }))).toBeNull();
    expect(curedBy(late, known({ id: "b", time: null }))).toBeNull();
    const high = timeOf({ high: false, finishSlowH: 80 });
    expect(curedBy(late, known({ id: "b", time: high }))).toBeNull();
  });

  it("is none where nothing is to be fixed, or where its own figures are no answer", () => {
    expect(curedBy(known({ id: "a" }), b)).toBeNull();
    expect(curedBy(known({ ...over, id: "a", levelDoubt: DOUBT }), b)).toBeNull();
    const part = known({ id: "b", totals: { bags: 10, lengthNoDataM: 5 } });
    expect(curedBy(a, part)).toBeNull();
  });
});

describe("on the screen", () => {
  it("each line has its verdict, and the chosen one the line that cures it once water is traced", () => {
    const [a, b] = [known({ ...over, id: "a" }), known({ id: "b", totals: { bags: 14_276 } })];
    const alignments = ["a", "b"].map((id) => ({ ...ring(rectangle(25, 20)), id }));
    replacePlan({ ...planWith(100.3), alignments, chosenId: "a" }, "Open");
    sized.value = new Map([a, b].map(({ line }) => [line.id, line]));
    expect(overallVerdictWords(verdicts.value.get("b")!, "us")).toBe(
      "in time, nothing over limit, water not known",
    );
    expect(chosenVerdict.value).toMatchObject({ mustFix: 1, first: OVER });
    expect(cureNow.value).toBeNull();
  });
});

describe("the verdict on time in the row of crew and time", () => {
  it("is short, and names what is missing where a person can give it", () => {
    const brief = (changes: Parameters<typeof known>[0]) =>
      timeVerdictBrief(overallVerdict(known(changes)).time, "us");
    expect(brief({})).toBe("in time");
    expect(brief({ time: timeOf({ slow: false }) })).toBe("late at slow pace");
    for (const [, changes] of CASES) expect(brief(changes).length).toBeLessThanOrEqual(34);
  });
});

import { describe, expect, it } from "vitest";
import { timeOf } from "../../shared/defaults.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Alignment, Closure, Plan } from "../../shared/plan.ts";
import { readPlanFile, writePlanFile } from "../../shared/plan-file.ts";
import { formatCount } from "../../shared/units.ts";
import { closureRows } from "../../shared/words/closure-rows.ts";
import { materialRows } from "../../shared/words/order-sheet.ts";
import { buildSequenceCsv } from "../../src/pages/build-sequence-table.ts";
import { groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";
import { readCsv } from "../helpers/read-csv.ts";
import { said } from "../helpers/said.ts";

/** Level ground at 100 m, water sized for 100.8 m, the likely forecast 1.5 m higher in 48 hours from 99.5 m. */
const GROUND = groundOf(() => 100);
const closure = (changes: Partial<Closure> = {}): Closure => ({
  ...{ fromM: 10, toM: 16, closeBy: { stageM: 99.6, at: null }, people: 10 },
  ...changes,
});

function planFor(closures: readonly Closure[], changes: Partial<Plan> = {}): Plan {
  const line: Alignment = {
    ...ring(rectangle(30, 20)),
    ...(closures.length > 0 ? { closures } : {}),
  };
  const base = planWith(100.8, { alignments: [line] });
  const forecast = {
    ...{ levels: "stage" as const, note: "" },
    rows: [
      { at: "2026-04-08T06:00-05:00", levelM: 99.5, lowM: null, highM: null },
      { at: "2026-04-09T06:00-05:00", levelM: 100.25, lowM: null, highM: null },
      { at: "2026-04-10T06:00-05:00", levelM: 101, lowM: null, highM: null },
    ],
  };
  return {
    ...base,
    water: { ...base.water, by: "stage", stageM: 100.8, gaugeZeroM: 0 },
    time: {
      ...timeOf(base),
      ...{ forecast, startAt: "2026-04-07T06:00-05:00", shifts: 2, lit: true, marginM: 0.1 },
    },
    ...changes,
  };
}

function sized(closures: readonly Closure[], changes: Partial<Plan> = {}) {
  const plan = planFor(closures, changes);
  const line = size(plan, plan.alignments[0]!, GROUND);
  return { line, check: line.checks.find(({ id }) => id === "closure"), time: line.time! };
}

describe("a way left open", () => {
  it("takes its bags out of the crews' steps and leaves the order as it was", () => {
    const [none, open] = [sized([]), sized([closure()])];
    expect(open.line.totals).toEqual(none.line.totals);
    const [found] = open.time.closures;
    expect(open.time.bags + found!.bags).toBe(none.time.bags);
    expect(found!.bags / none.time.bags).toBeCloseTo(6 / none.line.totals.lengthM, 1);
    const reach = open.time.parts.flatMap(({ steps }) => steps);
    expect(reach.some(({ fromM, toM }) => fromM < 12 && toM > 14)).toBe(false);
  });

  it("is closed in time when its people lay its bags before the water is at the margin", () => {
    const { time, check } = sized([closure()]);
    const [found] = time.closures;
    expect(found!.takesSlowH).toBeCloseTo(found!.bags / (10 * 40), 6);
    // Hours from the start of work to 99.6 m and to 99.9 m: 24, and 48 for each 1.5 m.
    expect(found!.closeH).toBeCloseTo(24 + (48 * 0.1) / 1.5, 6);
    expect(found!.neededH).toBeCloseTo(24 + (48 * 0.4) / 1.5, 6);
    expect(found!.earlyH).toBeCloseTo(found!.neededH! - found!.closeH! - found!.takesSlowH!, 6);
    expect(found!.inTime).toBe(true);
    expect(check!.severity).toBe("note");
  });

  it("must be fixed when it is closed too late: at too high a stage, or by too few", () => {
    for (const late of [
      closure({ closeBy: { stageM: 99.95, at: null } }),
      closure({ closeBy: { stageM: null, at: "2026-04-09T06:00-05:00" } }),
      closure({ closeBy: { stageM: 99.899, at: null }, people: 1 }),
    ]) {
      const { time, check } = sized([late]);
      expect(time.closures[0]!.inTime).toBe(false);
      expect(check!.severity).toBe("stop");
      expect(time.inTime).not.toBe(true);
    }
  });

  it("is not known without people, without a time to close, and without a forecast", () => {
    const whole = planFor([]);
    const cases: readonly (readonly [Closure, Partial<Plan>, string])[] = [
      [closure({ people: null }), {}, "people"],
      [closure({ closeBy: { stageM: null, at: null } }), {}, "when"],
      [closure(), { time: { ...whole.time!, forecast: null } }, "forecast"],
    ];
    for (const [open, changes, missing] of cases) {
      const { time, check } = sized([open], changes);
      expect(time.closures[0]!.inTime).toBeNull();
      expect(check).toMatchObject({ severity: "caution", finding: { missing } });
    }
  });

  it("is kept in the plan file, and refused where two lie over each other", () => {
    const plan = planFor([closure()]);
    const read = readPlanFile(writePlanFile(plan));
    if (!read.ok) throw new Error(said(read.failure).message);
    expect(read.value.plan.alignments[0]!.closures).toEqual([closure()]);
    const over = readPlanFile(writePlanFile(planFor([closure(), closure({ fromM: 12, toM: 20 })])));
    expect(over.ok ? "" : said(over.failure).message).toContain("none over another");
  });
});

describe("a way left open, for those who close it", () => {
  const { line, time } = sized([closure()]);
  const plan = planFor([closure()]);

  it("has a row of its own in the build sequence: when, how many bags, by whom, how long", () => {
    const [row] = closureRows({ plan, time, system: "metric" });
    expect(row).toMatchObject({
      ...{ name: "Way 1", stations: "0+010.0 to 0+016.0", people: "10", state: "in time" },
      ...{ closeFrom: "stage 99.60 m", isLate: false },
    });
    const [late] = closureRows({
      ...{ plan, system: "us" },
      time: sized([closure({ people: null, closeBy: { stageM: null, at: null } })]).time,
    });
    expect(late).toMatchObject({ people: "not entered", closeFrom: "not set", state: "not known" });
  });

  it("has a record in the sequence's file", () => {
    const exported: Exported = {
      ...{ plan, line, alternative: plan.alignments[0]!, system: "metric", checks: line.checks },
      ...{ isTraced: false, verticalDatum: "" },
    };
    const [head, ...records] = readCsv(buildSequenceCsv(exported, time));
    const record = records.find((cells) => cells.includes("Way 1"))!;
    const cell = (name: string) => record[head!.indexOf(name)];
    expect(cell("close_at_stage_m")).toBe("99.6");
    expect(cell("people")).toBe("10");
    expect(Number(cell("bags"))).toBe(time.closures[0]!.bags);
    expect(Number(cell("takes_slow_h"))).toBeCloseTo(time.closures[0]!.bags / 400, 2);
  });

  it("has its bags and poly sheeting set aside in the order, which stays what it was", () => {
    const rows = materialRows(plan, line, "metric");
    const none = materialRows(planFor([]), sized([]).line, "metric");
    expect(rows.slice(0, -1)).toEqual(none);
    expect(rows.at(-1)!.amount).toBe(`${formatCount(time.closures[0]!.bags)} bags`);
    const areaM2 = Math.round(6 * line.totals.sheetWidthM);
    expect(rows.at(-1)!.note).toContain(`up to ${areaM2} m²`);
  });
});

import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_TIME } from "../../shared/defaults.ts";
import type { Plan } from "../../shared/plan.ts";
import type { Totals } from "../../shared/sizing-types.ts";
import { soonerLines } from "../../shared/time/ways-out.ts";
import { against } from "../../shared/words/against.ts";
import { bagsForWords, bagsWords } from "../../shared/words/counted.ts";
import { messageOf } from "../helpers/check-text.ts";
import { flat, groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const feet = (bags: number, length: number, gap: number) =>
  ({ bags, lengthM: length * FOOT_M, lengthNoDataM: gap * FOOT_M }) as Totals;
const RING = ring(rectangle(20, 15));
const HOLED = groundOf((x, y) => (x > 19 && y > 5 ? Number.NaN : 100));
const NOTHING = flat(Number.NaN);
const PLAN = planWith(100.3);

describe("totals in words", () => {
  it("say for how much of the length they are", () => {
    const words = "11,204 bags for 820 of 1,135 ft; 315 ft have no elevation data";
    expect(bagsWords(feet(11_204, 1135, 315), "us")).toBe(words);
    expect(bagsWords(feet(11_204, 1135, 315), "metric")).toBe(
      "11,204 bags for 250 of 346 m; 96 m have no elevation data",
    );
    expect(bagsWords(feet(11_204, 1135, 0), "us")).toBe("11,204 bags");
  });

  it("write the three lengths so that they add up, and a short one not as 0", () => {
    expect(bagsForWords(feet(10, 1336.6, 14.6), "us")).toBe("10 bags for 1,322 of 1,337 ft");
    expect(bagsWords(feet(10, 100, 0.3), "us")).toBe(
      "10 bags for 99.7 of 100.0 ft; 0.3 ft have no elevation data",
    );
  });

  it("are not a number where nothing is counted", () => {
    const words = "not known: no elevation data under any of its 1,135 ft";
    expect(bagsWords(feet(0, 1135, 1135), "us")).toBe(words);
  });
});

describe("a line with a hole under it", () => {
  it("has that on top of its checks as a must fix, with how much is counted", () => {
    const [first] = size(PLAN, RING, HOLED).checks;
    expect(first).toMatchObject({ id: "incomplete-totals", severity: "stop" });
    expect(messageOf(first)).toMatch(
      /^The totals are not complete: [\d,]+ bags for \d+ of 459 ft; \d+ ft have no elevation data\.$/,
    );
    expect(messageOf(size(PLAN, RING, NOTHING).checks[0], "metric")).toBe(
      "Nothing is counted: no elevation data under any of the 140 m.",
    );
    expect(size(PLAN, RING, flat(100)).checks.map(({ id }) => id)).not.toContain(
      "incomplete-totals",
    );
  });

  /** A river that rises long after the work is done. */
  const slow: Plan = {
    ...PLAN,
    practice: { ...PLAN.practice, people: 60 },
    time: {
      ...DEFAULT_TIME,
      startAt: "2026-04-03T08:00-05:00",
      shifts: 2,
      forecast: {
        levels: "elevation",
        note: "",
        rows: ["2026-04-03T08:00-05:00", "2026-04-03T20:00-05:00", "2026-04-04T08:00-05:00"].map(
          (at) => ({ at, levelM: 99, lowM: null, highM: null }),
        ),
      },
    },
  };

  it("is never in time, nor named to another line as one that is", () => {
    const whole = { ...size(slow, RING, flat(100)), id: "whole" };
    const holed = { ...size(slow, RING, HOLED), id: "holed" };
    expect(whole.time!.inTime).toBe(true);
    expect(holed.time!.inTime).toBeNull();
    expect(soonerLines({ ...whole, id: "late" }, [whole, holed])).toMatchObject([{ line: whole }]);
  });
});

describe("found lines against those of the plan", () => {
  const named = (name: string, ground = flat(100), half = 20) => ({
    ...size(PLAN, ring(rectangle(half, 15)), ground),
    name,
    checks: [],
  });
  const found = named("Found");
  const wider = named("Wide", flat(100), 40);

  it("are compared by bags and share", () => {
    const fewer = wider.totals.bags - found.totals.bags;
    const share = ((100 * fewer) / wider.totals.bags).toFixed(0);
    expect(against([found], [wider], "us")).toEqual([
      `${fewer.toLocaleString("en-US")} bags fewer than "Wide" (${share} %).`,
    ]);
  });

  it("are never compared by totals that are not complete, on either side", () => {
    for (const ground of [HOLED, NOTHING]) {
      const [drawn] = against([found], [named("Holed", ground)], "us");
      expect(drawn).toMatch(/^"Holed" is not compared with what was found: .*no elevation data/);
      const other = against([named("Holed", ground)], [wider], "us");
      expect(other.join(" ")).toMatch(/^"Holed" is not compared .*no elevation data/);
      expect([drawn, ...other].join(" ")).not.toMatch(/%|Infinity|NaN|fewer|more/);
    }
  });

  it("are not more by a share of nothing", () => {
    const none = named("None", flat(102));
    expect(against([found], [none], "us")).toEqual([
      '"None" is not compared with what was found: no ground below the water.',
    ]);
    expect(against([found], [{ ...none, levelDoubt: null }], "us")).toEqual([
      `${found.totals.bags.toLocaleString("en-US")} bags more than "None", which needs none.`,
    ]);
  });

  it("say beside it what must be fixed", () => {
    const { checks } = size(planWith(102), RING, flat(100));
    expect(against([{ ...found, checks }], [wider], "us")[0]).toMatch(
      /; "Found" has \d Must fix\.$/,
    );
    expect(against([found], [{ ...wider, checks }], "us")[0]).toMatch(
      /; "Wide" has \d Must fix\.$/,
    );
  });
});

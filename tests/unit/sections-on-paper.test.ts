import { describe, expect, it } from "vitest";
import { FOOT_M } from "../../shared/constants.ts";
import {
  countWords,
  groupWords,
  layingSteps,
  legWords,
  stretchesWords,
} from "../../shared/words/laying.ts";
import { legFlows } from "../../src/pages/leg-flows.ts";
import { sectionGroups } from "../../src/pages/section-groups.ts";
import {
  groundOf,
  lonLats,
  openLine,
  planWith,
  rectangle,
  ring,
  size,
} from "../helpers/grounds.ts";

/** Top of levee 102 m over ground that falls 1 m in 100 m to the east: 0.5 m high in the west, 1.3 m in the east. */
const plan = planWith(101.6952);
const ground = groundOf((x) => 101.1 - x / 100);
const LIMIT_M = plan.practice.limitM;

describe("cross-sections on paper", () => {
  const line = size(
    plan,
    openLine([
      [-40, 0],
      [40, 0],
    ]),
    ground,
  );
  const groups = sectionGroups(line, LIMIT_M);

  it("are one of each height class there is, with all of its stations, and the highest", () => {
    const built = groups.filter(({ kind }) => kind === "typical");
    expect(built.length).toBeGreaterThanOrEqual(3);
    const total = built.reduce((sum, { lengthM }) => sum + lengthM, 0);
    const over = groups.find(({ kind }) => kind === "highest")!;
    expect(total + (over.isOver ? over.lengthM : 0)).toBeCloseTo(80, 0);
    built.forEach(({ lowM, highM, chainageM, stretches }) => {
      const step = LIMIT_M / 4;
      expect(Math.ceil(highM / step - 1e-6)).toBe(Math.ceil(lowM / step + 1e-6));
      expect(stretches.some(({ fromM, toM }) => chainageM > fromM && chainageM < toM)).toBe(true);
    });
  });

  it("have the highest cut where the line is highest, marked where it is over the limit", () => {
    const highest = groups.at(-1)!;
    expect(highest.kind).toBe("highest");
    expect(highest.highM).toBeCloseTo(line.totals.greatestHeightM, 9);
    expect(highest.isOver).toBe(line.totals.greatestHeightM > LIMIT_M);
  });

  it("are none of a line on which nothing is built", () => {
    const high = size(
      plan,
      openLine([
        [-40, 0],
        [40, 0],
      ]),
      groundOf(() => 200),
    );
    expect(sectionGroups(high, LIMIT_M)).toEqual([]);
  });
});

describe("which way open ends point", () => {
  const square = ring(rectangle(20, 20));
  const line = size(plan, square, ground);
  const [from, to] = lonLats([
    [-50, 0],
    [50, 0],
  ]);

  it("is downstream on the legs along the river, and across it on the others", () => {
    const legs = legFlows({ flow: { from: from!, to: to! } }, square, line);
    const opens = legs.map(({ open }) => open);
    expect(opens.filter((open) => open === "across")).toHaveLength(2);
    expect([...opens].sort()).toEqual(["across", "across", "back", "onward"]);
    const onward = legs.find(({ open }) => open === "onward")!;
    expect(onward.toM - onward.fromM).toBeCloseTo(40, 2);
    expect(legs.at(-1)!.toM).toBeCloseTo(line.totals.lengthM, 6);
  });

  it("turns about with the river, and is not known without one", () => {
    const there = legFlows({ flow: { from: from!, to: to! } }, square, line);
    const back = legFlows({ flow: { from: to!, to: from! } }, square, line);
    const turned = { onward: "back", back: "onward", across: "across" } as const;
    expect(back.map(({ open }) => open)).toEqual(there.map(({ open }) => turned[open]));
    expect(legFlows({ flow: null }, square, line)).toEqual([]);
  });

  it("is said with the station it is toward", () => {
    const leg = { fromM: 0, toM: 262 * FOOT_M };
    expect(legWords({ ...leg, open: "onward" }, "us")).toBe("0+00 to 2+62 toward 2+62");
    expect(legWords({ ...leg, open: "back" }, "us")).toBe("0+00 to 2+62 toward 0+00");
  });
});

it("a cross-section is said in a line of its column, in either system", () => {
  const group = { kind: "typical", stretches: [], isOver: false, chainageM: 143 } as const;
  const of = { ...group, lengthM: 100, lowM: 0.61, highM: 0.86 };
  expect(groupWords(of, "metric").range).toBe("100 m, 0.61–0.86 m high; cut at 0+143");
  expect(groupWords(of, "us").range).toBe("328 ft, 2.0–2.8 ft high; cut at 4+69");
  const counts = { stake: 8, toe: 14, bagsPerM: 144 };
  expect(countWords(counts, "metric")).toBe("8 courses at stake, 14 at toe, 144 bags/m");
});

describe("the steps of laying", () => {
  it("name the stretches for a bond trench, or say that there is none", () => {
    const trench = [{ fromM: 401 * FOOT_M, toM: 409 * FOOT_M }];
    expect(layingSteps(plan, trench, "us").at(-1)!.text).toContain("Here 4+01 to 4+09.");
    expect(layingSteps(plan, [], "us").at(-1)!.text).toContain(
      "No stretch of this line is over 3 ft.",
    );
  });

  it("have the published figures in either system: lap, toe, trench", () => {
    const us = JSON.stringify(layingSteps(plan, [], "us"));
    for (const figure of [
      "lap 3 ft",
      "1 ft past the water-side toe",
      "18 to 24 in",
      "4 to 6 in deep",
    ]) {
      expect(us).toContain(figure);
    }
    const metric = JSON.stringify(layingSteps(plan, [], "metric"));
    expect(metric).not.toMatch(/\d (?:ft|in|lb)\b/);
  });

  it("name a few stretches one by one, and count the rest", () => {
    const many = Array.from({ length: 9 }, (_, i) => ({
      fromM: i * 30.48,
      toM: (i + 0.5) * 30.48,
    }));
    expect(stretchesWords(many, "us")).toBe(
      "0+00 to 0+50, 1+00 to 1+50, 2+00 to 2+50 and 6 more stretches",
    );
    expect(stretchesWords(many.slice(0, 2), "us")).toBe("0+00 to 0+50 and 1+00 to 1+50");
  });
});

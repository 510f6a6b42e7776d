import { describe, expect, it } from "vitest";
import { compareLines, rivalOf } from "../../shared/compare.ts";
import { FOOT_M } from "../../shared/constants.ts";
import type { Check, Severity } from "../../shared/sizing-types.ts";
import { checksShort, lesserWords, sortedChecks } from "../../shared/words/check-list.ts";
import { againstRival } from "../../shared/words/rival.ts";
import { classWords } from "../../src/drawing/class-bar.tsx";
import { flat, groundOf, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const plan = planWith(100.5);
const small = { ...size(plan, ring(rectangle(20, 15)), flat(100)), id: "small" };
const large = { ...size(plan, ring(rectangle(40, 15)), flat(100)), id: "large" };

const none = () => 0;

describe("alternatives side by side", () => {
  it("differ by this one minus the chosen one; the chosen one has no difference", () => {
    const [first, second] = compareLines([small, large], "small", none);
    expect(first!.differences).toBeNull();
    expect(second!.differences!.lengthM).toBeCloseTo(80, 2);
    expect(second!.differences!.bags).toBe(large.totals.bags - small.totals.bags);
    expect(second!.values.jobPersonHours).toBe(large.totals.jobPersonHours);
  });

  it("the least of each measure is marked, on all that share it", () => {
    const [first, second] = compareLines([small, large], "large", none);
    expect(first!.best.has("bags")).toBe(true);
    expect(second!.best.has("bags")).toBe(false);
    expect(first!.best.has("lengthOverLimitM") && second!.best.has("lengthOverLimitM")).toBe(true);
  });

  it("a line that is counted in part is never the least, nor compared", () => {
    const holed = groundOf((x) => (x > 15 ? Number.NaN : 100));
    const part = { ...size(plan, ring(rectangle(20, 15)), holed), id: "part" };
    expect(part.totals.bags).toBeLessThan(large.totals.bags);
    const [first, second] = compareLines([part, large], "large", none);
    expect(first).toMatchObject({ isWhole: false, differences: null, best: new Set() });
    expect(second!.best.has("bags")).toBe(true);
    const [, other] = compareLines([part, large], "part", none);
    expect(other!.differences).toBeNull();
  });

  it("a line with something that must be fixed is never the least", () => {
    const mustFix = (line: { readonly id: string }) => (line.id === "small" ? 1 : 0);
    const [first, second] = compareLines([small, large], "large", mustFix);
    expect(first!.best.size).toBe(0);
    expect(first!.mustFix).toBe(1);
    expect(second!.best.has("bags")).toBe(true);
    const [none1, none2] = compareLines([small, large], "large", () => 1);
    expect(none1!.best.size + none2!.best.size).toBe(0);
  });

  it("fewer bags than another says in the same place what must be fixed", () => {
    const fewer = large.totals.bags - small.totals.bags;
    const words = (mustFix: number) =>
      againstRival(small, { line: large, letter: "A" }, ({ id }) => (id === "small" ? mustFix : 0));
    expect(words(0)).toBe(`, ${fewer.toLocaleString("en-US")} fewer than A`);
    expect(words(2)).toMatch(/ fewer than A; 2 Must fix here$/);
    const holed = size(
      plan,
      ring(rectangle(20, 15)),
      groundOf((x) => (x > 15 ? Number.NaN : 100)),
    );
    expect(againstRival(holed, { line: large, letter: "A" }, none)).toBe("");
  });

  it("the rival is the first other one that has a result", () => {
    expect(rivalOf([small, large], "small")).toBe(large);
    expect(rivalOf([small, large], "large")).toBe(small);
    expect(rivalOf([small], "small")).toBeNull();
  });
});

describe("height classes in words", () => {
  it("are quarters of the limit in the person's unit", () => {
    const words = [0, 1, 2, 3, 4].map((index) => classWords(index, 4 * FOOT_M, "us"));
    expect(words).toEqual(["to 1 ft", "to 2 ft", "to 3 ft", "to 4 ft, the limit", "over it"]);
    expect(classWords(0, 4 * FOOT_M, "metric")).toBe("to 0.3 m");
  });
});

function check(severity: Severity, fromM: number): Check {
  const finding = { kind: "open-toe" } as const;
  const where = { at: "stretch", fromM, toM: fromM + 5, overClosing: false } as const;
  return { id: "open-toe", severity, fromM, toM: fromM + 5, at: null, where, finding };
}

describe("findings", () => {
  it("come gravest first, then along the line; two halves over the closing point are one", () => {
    const [note, late, early] = [check("note", 0), check("stop", 40), check("stop", 3)];
    const half = check("caution", 90);
    const otherHalf: Check = { ...check("caution", 0), continued: true };
    const sorted = sortedChecks([note!, late!, early!, half, otherHalf]);
    expect(sorted).toEqual([early, late, half, note]);
    expect(checksShort([note!, late!, early!, half, otherHalf], true)).toBe("2 Must fix");
    expect(lesserWords([note!, late!, early!, half, otherHalf])).toBe("1 caution, 1 note");
    expect(checksShort([note!, half, otherHalf], false)).toBe("1 caution, 1 note");
    expect(checksShort([early!], true)).toBe("1 Must fix");
    expect(checksShort([], true)).toBe("nothing found");
    expect(checksShort([], false)).toBe("water not known");
  });
});

import { describe, expect, it } from "vitest";
import { rollWords, takesWords } from "../../shared/words/takes.ts";
import { flat, planWith, rectangle, ring, size } from "../helpers/grounds.ts";

const plan = planWith(100.3);
const line = size(plan, ring(rectangle(25, 20)), flat(100));
const sheeting = (sheetRolls: number) => {
  const taken = { ...line, totals: { ...line.totals, sheetRolls } };
  return takesWords({ plan, line: taken, holding: null }, "us").find(
    ({ key }) => key === "sheetRolls",
  )!.amount;
};

describe("what a line takes", () => {
  it("counts the rolls of poly sheeting; what one measures is said apart", () => {
    expect(rollWords(plan, "us")).toMatch(/^\d+ × \d+ ft$/);
    expect(sheeting(1)).toBe("1 roll");
    expect(sheeting(12)).toBe("12 rolls");
  });
});

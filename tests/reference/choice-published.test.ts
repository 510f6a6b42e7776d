import { describe, expect, it } from "vitest";
import { choose } from "../../workers/choice/choose.ts";
import { lineOf, NO_LIMIT } from "../helpers/choice-cases.ts";

/**
 * Problems 1 and 2 of H. M. Weingartner and D. N. Ness, "Methods for the Solution of the Multidimensional 0/1
 * Knapsack Problem", Operations Research 15 (1967) 83-103, as the OR-Library has them (J. E. Beasley, file mknap2,
 * WEING1 and WEING2): 28 projects, two budgets. Published optima: 141,278 and 130,883.
 */
const WORTH = [
  1898, 440, 22507, 270, 14148, 3100, 4650, 30800, 615, 4975, 1160, 4225, 510, 11880, 479, 440, 490,
  330, 110, 560, 24355, 2885, 11748, 4550, 750, 3720, 1950, 10500,
];
const FIRST = [
  45, 0, 85, 150, 65, 95, 30, 0, 170, 0, 40, 25, 20, 0, 0, 25, 0, 0, 25, 0, 165, 0, 85, 0, 0, 0, 0,
  100,
];
const SECOND = [
  30, 20, 125, 5, 80, 25, 35, 73, 12, 15, 15, 40, 5, 10, 10, 12, 10, 9, 0, 20, 60, 40, 50, 36, 49,
  40, 19, 150,
];

/** The most worth within two budgets, by a table over both. */
function byTable(first: number, second: number): number {
  const best = new Float64Array((first + 1) * (second + 1));
  WORTH.forEach((worth, item) => {
    const [a, b] = [FIRST[item]!, SECOND[item]!];
    for (let i = first; i >= a; i--) {
      for (let j = second; j >= b; j--) {
        const at = i * (second + 1) + j;
        best[at] = Math.max(best[at]!, best[at - a * (second + 1) - b]! + worth);
      }
    }
  });
  return best.at(-1)!;
}

describe("published problems of two budgets", () => {
  it.each([
    [600, 600, 141_278],
    [500, 500, 130_883],
  ])("budgets %i and %i: the published optimum, proved", async (first, second, optimum) => {
    const candidates = WORTH.map((weight, item) =>
      lineOf(`project ${item + 1}`, { weight, bags: FIRST[item]!, sandM3: SECOND[item]! }),
    );
    const stock = { ...NO_LIMIT, bags: first, sandM3: second };
    const found = await choose({ candidates, stock, workForce: null });
    expect(found).toMatchObject({ weight: optimum, bestPossible: optimum, isProved: true });
    expect(byTable(first, second)).toBe(optimum);
  });
});

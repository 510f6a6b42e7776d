import { describe, expect, it } from "vitest";
import { bestLines } from "../../workers/choice/best-lines.ts";
import { choose } from "../../workers/choice/choose.ts";
import { lineProgram } from "../../workers/choice/line-program.ts";
import { bestOfAll, smallQuestion, valueOfLines } from "../helpers/choice-cases.ts";

/**
 * The choice against every subset of the lines, with time judged by a flow of work from lines to people instead of by
 * the limits that the program has.
 */
const SEEDS = Array.from({ length: 60 }, (_, i) => i + 1);

describe("the choice on small questions", () => {
  it("rings as many First, as much weight, with as few bags as the best of all subsets", async () => {
    const sizes = new Set<number>();
    for (const seed of SEEDS) {
      const question = smallQuestion(seed);
      const best = await bestLines(lineProgram(question), 10);
      const value = valueOfLines(best.lines, question.stock);
      expect({ seed, ...value }).toEqual({ seed, ...bestOfAll(question) });
      expect(best).toMatchObject({
        isProved: true,
        bestPossible: value.weight,
        ...{ mustDo: value.mustDo },
      });
      sizes.add(best.lines.length);
    }
    expect(sizes.size).toBeGreaterThan(4);
  });

  it("chooses the same lines in whatever order they come", async () => {
    for (const seed of SEEDS.slice(0, 10)) {
      const question = smallQuestion(seed);
      const turned = { ...question, candidates: [...question.candidates].reverse() };
      expect((await choose(turned)).chosen).toEqual((await choose(question)).chosen);
    }
  });
});

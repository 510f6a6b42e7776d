import {
  type BagCurve,
  type ChoiceEffort,
  type ChoiceQuestion,
  type CurvePoint,
  MOST_SECONDS,
} from "../../shared/buildings/choice-types.ts";
import type { CallOptions } from "../../shared/messages.ts";
import { bestLines } from "./best-lines.ts";
import { type Limited, lineProgram } from "./line-program.ts";
import { betweenSolves } from "./pause.ts";
import { takesOf } from "./takes.ts";

const ELSE: ReadonlySet<Limited> = new Set(["sand", "sheet", "people"]);
const ALL_STOCK: ReadonlySet<Limited> = new Set([...ELSE, "bags"]);

/**
 * Buildings ringed against bags: solved again for each number of bags. From the bags on that the best of all takes,
 * more bags change nothing, and nothing is solved.
 * @param bags the numbers of bags, rising
 * @throws Refusal `choice/bad-figure`, `choice/same-id`, `program/part-missing`, `cancelled`
 */
export async function bagCurve(
  question: ChoiceQuestion,
  bags: readonly number[],
  effort: ChoiceEffort = {},
  options?: CallOptions,
): Promise<BagCurve> {
  const seconds = effort.seconds ?? MOST_SECONDS;
  const along = async (freed: ReadonlySet<Limited>, fromShare: number) => {
    await betweenSolves(options, fromShare);
    const most = await bestLines(lineProgram(question, new Set([...freed, "bags"])), seconds);
    const enough = most.lines.reduce((sum, line) => sum + line.bags, 0);
    const points: CurvePoint[] = [];
    for (const [index, each] of bags.entries()) {
      await betweenSolves(options, fromShare + (0.5 * index) / bags.length);
      const limited = { ...question, stock: { ...question.stock, bags: each } };
      const best =
        each >= enough ? most : await bestLines(lineProgram(limited, freed), seconds, false);
      points.push({ bags: each, ...heightOf(best) });
    }
    return points;
  };
  const today = await along(new Set(), 0);
  const matched = await along(ELSE, 0.5);
  const most = await bestLines(lineProgram(question, ALL_STOCK), seconds, false);
  const toMatch =
    question.stock.bags === null ? null : await bestLines(lineProgram(question, ELSE), seconds);
  return {
    today,
    matched,
    toMatch: toMatch && takesOf(toMatch.lines, question.workForce),
    all: heightOf(most),
  };
}

function heightOf({ weight, buildings, mustDo, isProved }: Omit<CurvePoint, "bags">) {
  return { weight, buildings, mustDo, isProved };
}

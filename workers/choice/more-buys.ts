import {
  type ChoiceEffort,
  type ChoiceQuestion,
  MOST_SECONDS,
  type More,
  type MoreBuys,
} from "../../shared/buildings/choice-types.ts";
import type { CallOptions } from "../../shared/messages.ts";
import { bestLines } from "./best-lines.ts";
import { lineProgram } from "./line-program.ts";
import { betweenSolves } from "./pause.ts";
import { runsOut } from "./runs-out.ts";

/**
 * What each of several things more would buy, each alone, by solving again.
 * @throws Refusal `choice/bad-figure`, `choice/same-id`, `program/part-missing`, `cancelled`
 */
export async function moreBuys(
  question: ChoiceQuestion,
  all: readonly More[],
  effort: ChoiceEffort = {},
  options?: CallOptions,
): Promise<MoreBuys[]> {
  const seconds = effort.seconds ?? MOST_SECONDS;
  await betweenSolves(options, 0);
  const now = await bestLines(lineProgram(question), seconds, false);
  const bought: MoreBuys[] = [];
  for (const [index, more] of all.entries()) {
    const share = (index + 1) / (all.length + 1);
    await betweenSolves(options, share);
    const enlarged = questionWith(question, more);
    const then = await bestLines(lineProgram(enlarged), seconds, false);
    const [mustDo, weight] = [then.mustDo - now.mustDo, then.weight - now.weight];
    const isSome = mustDo > 0 || weight > 0;
    const within = options && { ...options, onProgress: () => {} };
    const still = isSome ? null : await runsOut(enlarged, then, seconds, within);
    bought.push({
      more,
      weight,
      buildings: then.buildings - now.buildings,
      mustDo,
      isProved: now.isProved && then.isProved,
      runsOutFirst: still?.runsOutFirst ?? null,
    });
  }
  return bought;
}

/** The same question with more to build with; what is not limited stays so. */
function questionWith({ candidates, stock, workForce }: ChoiceQuestion, more: More) {
  const { bags = 0, sandM3 = 0, sheetM2 = 0, people = 0, hours = 0 } = more;
  const plus = (there: number | null, extra: number) => (there === null ? null : there + extra);
  return {
    candidates: candidates.map((line) => ({ ...line, closedByH: plus(line.closedByH, hours) })),
    stock: {
      ...stock,
      bags: plus(stock.bags, bags),
      sandM3: plus(stock.sandM3, sandM3),
      sheetM2: plus(stock.sheetM2, sheetM2),
    },
    workForce: workForce && {
      ...workForce,
      people: workForce.people + people,
      untilH: plus(workForce.untilH, hours),
    },
  };
}

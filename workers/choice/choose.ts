import {
  type ChoiceEffort,
  type ChoiceQuestion,
  type FoundChoice,
  MOST_SECONDS,
} from "../../shared/buildings/choice-types.ts";
import type { CallOptions } from "../../shared/messages.ts";
import { bestLines } from "./best-lines.ts";
import { closesBy } from "./hour-limits.ts";
import { lineProgram } from "./line-program.ts";
import { mustDoLeft } from "./must-do-left.ts";
import { betweenSolves } from "./pause.ts";
import { runsOut } from "./runs-out.ts";
import { takesOf } from "./takes.ts";

/**
 * Which lines to build: of all that keep within bags, sand, sheeting, people and time, with each building in one line
 * at most and none that must not be ringed, those with most of the buildings that must be ringed; of these the ones
 * with the most weight; of these the ones with the fewest bags.
 * @throws Refusal `choice/bad-figure`, `choice/same-id`, `program/part-missing`, `cancelled`
 */
export async function choose(
  question: ChoiceQuestion,
  effort: ChoiceEffort = {},
  options?: CallOptions,
): Promise<FoundChoice> {
  const seconds = effort.seconds ?? MOST_SECONDS;
  await betweenSolves(options, 0);
  const best = await bestLines(lineProgram(question), seconds);
  const { workForce } = question;
  const buildings = best.lines.flatMap(({ members }) => members);
  const { people, ...takes } = takesOf(best.lines, workForce);
  const left = await mustDoLeft(question, new Set(buildings), seconds, options);
  const notTimed = best.lines.filter(
    (line) => workForce === null || closesBy(line, workForce) === Infinity,
  );
  return {
    chosen: best.lines.map(({ id }) => id),
    buildings,
    weight: best.weight,
    ...takes,
    peopleNeeded: people,
    bestPossible: best.bestPossible,
    isProved: best.isProved,
    ...(await runsOut(question, best, seconds, options)),
    ...left,
    notTimed: notTimed.map(({ id }) => id),
  };
}

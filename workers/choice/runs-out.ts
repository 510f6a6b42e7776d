import type { ChoiceQuestion } from "../../shared/buildings/choice-types.ts";
import type { RunsOut } from "../../shared/buildings/types.ts";
import type { CallOptions } from "../../shared/messages.ts";
import { type BestLines, bestLines } from "./best-lines.ts";
import { type Limited, lineProgram } from "./line-program.ts";
import { betweenSolves } from "./pause.ts";

/** Time comes last: without its limit people are not limited either. */
const ALL: readonly Limited[] = ["bags", "sand", "sheet", "people", "time"];

/**
 * What runs out first. Solved again with each alone not limited: `shortOf` are those with which more could be ringed;
 * time only where people alone would not do. First of them runs out the one of which the greatest share is used.
 * Where none alone would let more be ringed but all together would, two are short at once, and it is the one of which
 * the greatest share is used. `nothing` where all together would not either, but `time` where a building is left
 * whose line was no candidate because it is too late.
 */
export async function runsOut(
  question: ChoiceQuestion,
  best: Pick<BestLines, "lines" | "mustDo" | "weight">,
  seconds: number,
  options?: CallOptions,
): Promise<{ readonly runsOutFirst: RunsOut; readonly shortOf: readonly RunsOut[] }> {
  const helps = async (freed: readonly Limited[], share: number): Promise<boolean> => {
    await betweenSolves(options, share);
    const more = await bestLines(lineProgram(question, new Set(freed)), seconds, false);
    return more.mustDo > best.mustDo || (more.mustDo === best.mustDo && more.weight > best.weight);
  };
  if (!(await helps(ALL, 0.3))) {
    if (isOneTooLate(question, best)) return { runsOutFirst: "time", shortOf: ["time"] };
    return { runsOutFirst: "nothing", shortOf: [] };
  }
  const shares = sharesUsed(question, best);
  const shortOf: Limited[] = [];
  for (const [index, each] of ALL.entries()) {
    const isLimited = each === "time" ? !shortOf.includes("people") : shares.has(each);
    if (isLimited && (await helps([each], 0.4 + 0.1 * index))) shortOf.push(each);
  }
  const only = shortOf.filter((each) => each !== "time");
  if (shortOf.length > 0 && only.length === 0) return { runsOutFirst: "time", shortOf };
  const among = only.length > 0 ? only : [...shares.keys()];
  const mostUsed = among.reduce((a, b) => (shares.get(b)! > shares.get(a)! ? b : a));
  return { runsOutFirst: mostUsed, shortOf };
}

/** Whether a building is left out only because its line is too late. */
function isOneTooLate(
  { tooLate = [], stock }: Pick<ChoiceQuestion, "tooLate" | "stock">,
  { lines }: Pick<BestLines, "lines">,
): boolean {
  const settled = new Set([...stock.mustNot, ...lines.flatMap(({ members }) => members)]);
  return tooLate.some((id) => !settled.has(id));
}

/** Share used of what could be exceeded, 0..1. */
function sharesUsed(question: ChoiceQuestion, { lines }: Pick<BestLines, "lines">) {
  const program = lineProgram(question);
  const taken = new Set(lines.map(({ id }) => id));
  const shares = new Map<Limited, number>();
  for (const { of, columns, values, most } of program.limits) {
    if (of === null) continue;
    const used = columns.reduce(
      (sum, column, i) => sum + (taken.has(program.lines[column]!.id) ? values[i]! : 0),
      0,
    );
    shares.set(of, Math.max(shares.get(of) ?? 0, most === 0 ? 1 : used / most));
  }
  return shares;
}

import type {
  ChoiceQuestion,
  FoundChoice,
  MustDoNeeds,
  MustDoWhy,
} from "../../shared/buildings/choice-types.ts";
import type { CallOptions } from "../../shared/messages.ts";
import { bestLines } from "./best-lines.ts";
import { fitsAlone } from "./hour-limits.ts";
import { lineProgram } from "./line-program.ts";
import { betweenSolves } from "./pause.ts";
import { takesOf } from "./takes.ts";

type Left = Pick<FoundChoice, "mustDoLeft" | "mustDoWhy" | "mustDoNeeds">;

/** The buildings that must be ringed and are not, why, and what all that must be would take. */
export async function mustDoLeft(
  question: ChoiceQuestion,
  ringed: ReadonlySet<string>,
  seconds: number,
  options?: CallOptions,
): Promise<Left> {
  const left = [...new Set(question.stock.mustDo)].filter((id) => !ringed.has(id)).sort();
  if (left.length === 0) return { mustDoLeft: [], mustDoWhy: [], mustDoNeeds: null };
  await betweenSolves(options, 0.2);
  return {
    mustDoLeft: left,
    mustDoWhy: left.map((id) => ({ id, why: whyLeft(question, id) })),
    mustDoNeeds: await needsOf(question, seconds),
  };
}

function whyLeft({ candidates, stock, workForce, tooLate }: ChoiceQuestion, id: string): MustDoWhy {
  const mustNot = new Set(stock.mustNot);
  const lines = candidates.filter(({ members }) => members.includes(id));
  const allowed = lines.filter(({ members }) => !members.some((each) => mustNot.has(each)));
  if (mustNot.has(id)) return "must-not";
  if (lines.length === 0) return tooLate?.includes(id) ? "too-late" : "no-line";
  if (allowed.length === 0) return "must-not";
  const inTime = allowed.some((line) => workForce === null || fitsAlone(line, workForce));
  return inTime ? "not-enough" : "too-late";
}

/** With nothing but the buildings that must be ringed to choose, and nothing limited but each line's own time. */
async function needsOf(question: ChoiceQuestion, seconds: number): Promise<MustDoNeeds> {
  const { stock, workForce } = question;
  const mustDo = new Set(stock.mustDo);
  const candidates = question.candidates
    .filter(({ members }) => members.some((id) => mustDo.has(id)))
    .map((line) => ({ ...line, weight: 0 }));
  const freed = new Set(["bags", "sand", "sheet", "people"] as const);
  const { lines } = await bestLines(lineProgram({ ...question, candidates }, freed), seconds);
  const takes = takesOf(lines, workForce);
  const missing = (needed: number, there: number | null) =>
    there === null ? 0 : Math.max(0, needed - there);
  return {
    takes,
    missing: {
      bags: missing(takes.bags, stock.bags),
      sandM3: missing(takes.sandM3, stock.sandM3),
      sheetM2: missing(takes.sheetM2, stock.sheetM2),
      people: workForce && takes.people !== null ? missing(takes.people, workForce.people) : 0,
    },
  };
}

import { failureOf, type Outcome } from "../../shared/failure.ts";
import { mergedProgress } from "../../shared/field/progress.ts";
import type { ProgressMark } from "../../shared/plan.ts";
import { addProgress } from "../document/edits/progress.ts";
import { plan } from "../document/store.ts";
import { chosenLine } from "../live/results.ts";
import { numberNow } from "./marking.ts";

/**
 * Adds another phone's marks where they were made by the plan as it is; those of another plan are refused
 * (`codes/other-plan`) when there are no others.
 * @returns how many stretches have another mark than before
 */
export function takeMarks(marks: readonly ProgressMark[]): Outcome<number> {
  const [line, number] = [chosenLine.peek(), numberNow.peek()];
  if (!line || number === null) return { ok: true, value: 0 };
  const own = marks
    .filter((mark) => mark.planNumber === number)
    .map((mark) => ({ ...mark, lineId: line.id }));
  const other = marks.find((mark) => mark.planNumber !== number);
  if (own.length === 0 && other) {
    const given = { ours: number, theirs: other.planNumber };
    return { ok: false, failure: failureOf("codes/other-plan", given) };
  }
  const before = plan.peek().progress ?? [];
  const changed = mergedProgress(before, own).filter((mark) => !before.includes(mark)).length;
  if (changed > 0 && !addProgress(own)) return { ok: true, value: 0 };
  return { ok: true, value: changed };
}

import { effect, untracked } from "@preact/signals";
import {
  choicesFor,
  isSaid,
  type LoneValue,
  type MarkMeaning,
  withAnswer,
} from "../../shared/ground-marks.ts";
import { tell } from "../document/notices.ts";
import { apply, plan } from "../document/store.ts";
import { ground, markMet, openFiles } from "./ground.ts";
import { openTerrainFiles, refsOf } from "./open-ground.ts";

/** Keeps what the person says of a height with the plan, for this very file; null asks again. */
export function answerMark(mark: Pick<LoneValue, "value" | "file">, is: MarkMeaning | null): void {
  const outcome = apply({
    note: is === null ? `Ask again what ${mark.value} is` : `Say what ${mark.value} is`,
    change: (now) => ({
      ...now,
      ground: { ...now.ground, marks: withAnswer(now.ground.marks, mark, is) },
    }),
  });
  if (!outcome.ok) tell("error", outcome.failure);
}

/**
 * Opens the ground again when what the plan says of its heights changes, or when a height was met that it did not
 * know: until someone says what that is, its cells have no data.
 */
export function keepMarks(): () => void {
  return effect(() => {
    const [summary, files, met] = [ground.value, openFiles.value, markMet.value];
    const said = choicesFor(plan.value.ground.marks, refsOf(files));
    if (!summary) return;
    const isKnown =
      !met || isSaid(met, said) || summary.marksAsked.some(({ value }) => value === met.value);
    if (isKnown && JSON.stringify(said) === JSON.stringify(summary.marks)) return;
    const unit = summary.verticalUnitFrom === "person" ? summary.verticalUnit : null;
    untracked(() => void openTerrainFiles(files, unit));
  });
}

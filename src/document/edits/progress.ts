import { mergedProgress } from "../../../shared/field/progress.ts";
import type { ProgressMark } from "../../../shared/plan.ts";
import type { UnitSystem } from "../../../shared/units.ts";
import { addedMarksNote, markedNote } from "../../../shared/words/field-progress.ts";
import { edit } from "./alternatives.ts";

/** Marks how far a stretch is built. @returns whether the plan took it */
export function markStretch(mark: ProgressMark, system: UnitSystem): boolean {
  return edit({
    note: markedNote(mark, system),
    change: (now) => ({ ...now, progress: mergedProgress(now.progress ?? [], [mark]) }),
  });
}

/** Adds what another plan or phone says is built; of each stretch the mark made last stays. */
export function addProgress(marks: readonly ProgressMark[]): boolean {
  return edit({
    note: addedMarksNote(marks.length),
    change: (now) => ({ ...now, progress: mergedProgress(now.progress ?? [], marks) }),
  });
}

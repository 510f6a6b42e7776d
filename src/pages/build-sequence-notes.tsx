import type { SizedLine } from "../../shared/sizing-types.ts";
import { soonerLines } from "../../shared/time/ways-out.ts";
import { formatCount } from "../../shared/units.ts";
import {
  isLateStep,
  readingWords,
  type SequenceSaid,
  workWords,
} from "../../shared/words/build-sequence.ts";
import {
  LATE_STEPS,
  NEVER_CUT_FREEBOARD,
  sequenceDoubtWords,
  toBeInTimeWords,
} from "../../shared/words/build-sequence-notes.ts";
import { butMustFix } from "../../shared/words/must-fix.ts";
import { SETTLING_NOTE } from "../../shared/words/settling.ts";
import { timeVerdictWords } from "../../shared/words/time-verdict.ts";
import { mustFixOn } from "../live/water-now.ts";

interface NotesProps {
  readonly line: SizedLine;
  readonly said: SequenceSaid;
  readonly results: readonly SizedLine[];
}

/** How the sequence is read, what it leaves out, and what would be in time. */
export function BuildSequenceNotes({ line, said, results }: NotesProps) {
  const { time, system } = said;
  const isLate = time.parts.some(({ steps }) => steps.some(isLateStep));
  const others = soonerLines(line, results).map(
    ({ line: other, verdict }) =>
      `"${other.name}" of ${formatCount(other.totals.bags)} bags, ${timeVerdictWords(verdict, system)}${butMustFix(mustFixOn(other))}`,
  );
  const ways = toBeInTimeWords(line, time, others);
  return (
    <div class="build-notes">
      <p>
        {readingWords(said).join(" ")} {time.crew && workWords(said)}
      </p>
      <p>{SETTLING_NOTE}</p>
      {isLate && (
        <p>
          <strong>{LATE_STEPS}</strong>
        </p>
      )}
      {sequenceDoubtWords(line, time, system).map((words) => (
        <p key={words} class="sheet-warning">
          {words}
        </p>
      ))}
      {ways !== null && (
        <p class="sheet-warning">
          {ways} {NEVER_CUT_FREEBOARD}
        </p>
      )}
    </div>
  );
}

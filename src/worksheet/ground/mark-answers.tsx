import type { MarkAnswer } from "../../../shared/ground-marks.ts";
import type { GroundSummary } from "../../../shared/messages.ts";
import { saidWords } from "../../../shared/words/marks.ts";
import { plan } from "../../document/store.ts";
import { answerMark } from "../../live/marks.ts";
import { MarkChoices } from "./mark-question.tsx";

/** What is asked of the heights of the ground, and what was answered, with a way to answer again. */
export function MarkAnswers({ summary }: { summary: GroundSummary }) {
  const answers = (plan.value.ground.marks ?? []).filter(({ file }) => isOpen(summary, file));
  return (
    <>
      {summary.marksAsked.map((mark) => (
        <MarkChoices key={mark.value} mark={mark} />
      ))}
      {answers.map((answer) => (
        <p key={answer.value} class="hint">
          {saidWords(answer, summary.verticalUnit)}{" "}
          <button type="button" class="text-button" onClick={() => answerMark(answer, null)}>
            Ask again
          </button>
        </p>
      ))}
    </>
  );
}

function isOpen({ files }: GroundSummary, { name, bytes }: MarkAnswer["file"]): boolean {
  return files.some((file) => file.name === name && file.bytes === bytes);
}

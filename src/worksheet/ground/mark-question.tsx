import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { failureOf } from "../../../shared/failure.ts";
import type { LoneValue, MarkMeaning } from "../../../shared/ground-marks.ts";
import { failureWords } from "../../../shared/words/failure.ts";
import { markChoiceWords } from "../../../shared/words/marks.ts";
import { unitQuestion } from "../../live/ground.ts";
import { answerMark } from "../../live/marks.ts";
import { unitSystem } from "../../live/screen.ts";
import { markAsked } from "../../live/uncounted.ts";

/** The question that the person put off: it stays in Elevation data. */
const putOff = signal<LoneValue | null>(null);

/** Asks whether a height that no other comes near is missing data or ground; never guesses. */
export function MarkQuestion() {
  const mark = markAsked.value;
  if (!mark || unitQuestion.value || putOff.value === mark) return null;
  return (
    <section class="notice question" role="alert" aria-label="Missing data or ground">
      <MarkChoices mark={mark}>
        <button
          type="button"
          class="text-button"
          onClick={() => {
            putOff.value = mark;
          }}
        >
          Look at the map first
        </button>
      </MarkChoices>
    </section>
  );
}

interface MarkChoicesProps {
  readonly mark: LoneValue;
  readonly children?: ComponentChildren;
}

/** The figures of the height that is asked about, and the two answers. */
export function MarkChoices({ mark, children }: MarkChoicesProps) {
  const asked = failureOf("ground/mark-unknown", { mark });
  const { message, remedy } = failureWords(asked, unitSystem.value);
  return (
    <>
      <p>
        <strong>{message}</strong> {remedy} The map hatches these cells.
      </p>
      <ul class="unit-choices">
        <Choice mark={mark} is="hole" label="Missing data" />
        <Choice mark={mark} is="ground" label="Ground" />
      </ul>
      {children}
    </>
  );
}

interface ChoiceProps {
  readonly mark: LoneValue;
  readonly is: MarkMeaning;
  readonly label: string;
}

function Choice({ mark, is, label }: ChoiceProps) {
  return (
    <li>
      <button type="button" class="tool-button" onClick={() => answerMark(mark, is)}>
        {label}
      </button>
      <span>{markChoiceWords(mark, is)}</span>
    </li>
  );
}

import { signal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import type { LoneValue } from "../../../shared/ground-marks.ts";
import { loneValueWords } from "../../../shared/words/marks.ts";
import { answerMark } from "../../live/marks.ts";
import { unitSystem } from "../../live/screen.ts";
import { markAsked } from "../../live/uncounted.ts";

/** The question that the person put off: it stays in Ground. */
const putOff = signal<LoneValue | null>(null);

/** Asks whether a height that no other comes near is missing data or ground; never guesses. */
export function MarkQuestion() {
  const mark = markAsked.value;
  if (!mark || putOff.value === mark) return null;
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
  const { message, remedy } = loneValueWords(mark, unitSystem.value);
  return (
    <>
      <p>
        <strong>{message}</strong> {remedy} The map hatches these cells.
      </p>
      <div class="tool-row">
        <button type="button" class="tool-button" onClick={() => answerMark(mark, "hole")}>
          Missing data
        </button>
        <button type="button" class="tool-button" onClick={() => answerMark(mark, "ground")}>
          Ground
        </button>
        {children}
      </div>
    </>
  );
}

import { useEffect, useId, useRef, useState } from "preact/hooks";
import type { Exercise } from "../../shared/lesson/exercises.ts";
import type { TeachingGround } from "../../shared/lesson/teaching-ground.ts";
import { amountOf, plainText } from "../../shared/parse-length.ts";
import { formatCount } from "../../shared/units.ts";
import {
  answerWords,
  exerciseName,
  noFigureWords,
  PREDICT,
  questionWords,
  rememberWords,
  shownWords,
} from "../../shared/words/lesson-exercises.ts";

interface PredictStripProps {
  readonly teaching: TeachingGround;
  readonly exercises: readonly Exercise[];
  readonly index: number;
  /** What was said to each exercise; null before it is. */
  readonly said: readonly (number | null)[];
  readonly onSaid: (said: number) => void;
  readonly onGo: (index: number) => void;
  readonly onDone: () => void;
}

/** A question, one figure to type, Show; then both figures and one sentence to remember. */
export function PredictStrip(props: PredictStripProps) {
  const { teaching, exercises, index, said, onGo, onDone } = props;
  const exercise = exercises[index]!;
  const answer = said[index] ?? null;
  const isLast = index === exercises.length - 1;
  return (
    <div class="lesson-predict">
      <ol class="lesson-steps" aria-label={PREDICT.exercises}>
        {exercises.map(({ kind }, i) => (
          <li key={kind}>
            <button
              type="button"
              aria-label={exerciseName(i)}
              aria-current={i === index ? "step" : undefined}
              data-said={said[i] !== null}
              onClick={() => onGo(i)}
            >
              {i + 1}
            </button>
          </li>
        ))}
      </ol>
      <p class="lesson-question" id="lesson-question">
        {questionWords(teaching, exercise)}
      </p>
      {answer === null ? (
        <Guess key={index} {...props} exercise={exercise} />
      ) : (
        <Answer
          {...{ teaching, exercise, answer }}
          next={isLast ? PREDICT.done : PREDICT.next}
          onNext={() => (isLast ? onDone() : onGo(index + 1))}
        />
      )}
      <p class="unseen" role="status">
        {answer !== null && shownWords(teaching, exercise)}
      </p>
    </div>
  );
}

/** Focuses what takes the place of what had the focus, so that the keyboard goes on. */
function useFocusIfLost<T extends HTMLElement>() {
  const ref = useRef<T>(null);
  useEffect(() => {
    const isLost = document.activeElement === document.body;
    if (isLost) ref.current?.focus();
  }, []);
  return ref;
}

interface AnswerProps {
  readonly teaching: TeachingGround;
  readonly exercise: Exercise;
  readonly answer: number;
  readonly next: string;
  readonly onNext: () => void;
}

function Answer({ teaching, exercise, answer, next, onNext }: AnswerProps) {
  const button = useFocusIfLost<HTMLButtonElement>();
  return (
    <>
      <dl class="lesson-figures">
        <div>
          <dt>{PREDICT.youSaid}</dt>
          <dd class="lesson-said">{formatCount(answer)}</dd>
        </div>
        <div>
          <dt>{PREDICT.takes}</dt>
          <dd class="lesson-takes">{answerWords(teaching, exercise)}</dd>
          {exercise.after.isOver && <dd class="lesson-too-high">{PREDICT.overLimit}</dd>}
        </div>
      </dl>
      <p class="lesson-remember">{rememberWords(teaching, exercise)}</p>
      <button type="button" class="lesson-go" ref={button} onClick={onNext}>
        {next}
      </button>
    </>
  );
}

interface GuessProps extends PredictStripProps {
  readonly exercise: Exercise;
}

function Guess({ teaching, exercise, onSaid }: GuessProps) {
  const id = useId();
  const input = useFocusIfLost<HTMLInputElement>();
  const [typed, setTyped] = useState("");
  const [isMissing, setMissing] = useState(false);
  const show = (event: Event) => {
    event.preventDefault();
    const figure = amountOf(plainText(typed));
    if (Number.isFinite(figure)) onSaid(figure);
    else setMissing(true);
  };
  return (
    <form class="lesson-guess" onSubmit={show}>
      <div class="lesson-figures">
        <div>
          <label for={id}>{PREDICT.youSay}</label>
          <input
            id={id}
            ref={input}
            class="lesson-said"
            type="text"
            inputMode="decimal"
            autocomplete="off"
            size={6}
            value={typed}
            aria-invalid={isMissing}
            aria-describedby={isMissing ? `lesson-question ${id}-why` : "lesson-question"}
            onInput={(event) => {
              setTyped(event.currentTarget.value);
              setMissing(false);
            }}
          />
          {isMissing && (
            <p id={`${id}-why`} class="lesson-why" role="alert">
              {noFigureWords(teaching, exercise)}
            </p>
          )}
        </div>
      </div>
      <button type="submit" class="lesson-go">
        {PREDICT.show}
      </button>
    </form>
  );
}

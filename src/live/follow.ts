import { computed, effect, type ReadonlySignal, signal, untracked } from "@preact/signals";
import { type Latest, latest } from "./latest.ts";
import { sizeAgain } from "./sizing-clock.ts";

interface Following<Question, Answer> {
  readonly ask: (question: Question, signal: AbortSignal) => Promise<Answer>;
  /**
   * What becomes of answers once another question is asked. `shown`: one under way comes and is shown, so that a
   * picture follows a drag. `cancelled`: one under way is cancelled, the last stays. `gone`: both go.
   */
  readonly overtaken: "shown" | "cancelled" | "gone";
  /** The question must rest for so long before it is asked, milliseconds; 0 when left out. */
  readonly restMs?: number;
  /** Nothing is asked while this is true; the newest question is, once it is not. */
  readonly waits?: ReadonlySignal<boolean>;
}

export interface Followed<Question, Answer>
  extends Pick<Latest<Question, Answer>, "answered" | "failed"> {
  /** Whether the newest answer is to the question that is asked now. */
  readonly isCurrent: ReadonlySignal<boolean>;
  /** Starts to keep the answer in step with the question. @returns stops it, and takes the answer away */
  keep(): () => void;
}

/**
 * Keeps the answer of the engine in step with a question: one request under way, the newest question next, asked
 * again when the engine started anew. Without a question there is no answer.
 */
export function follow<Question extends object, Answer>(
  question: ReadonlySignal<Question | null>,
  { ask, overtaken, restMs = 0, waits }: Following<Question, Answer>,
): Followed<Question, Answer> {
  const { answered, failed, want, cancel, drop } = latest(ask);
  const due = signal<{ readonly question: Question } | null>(null);

  function keep(): () => void {
    let rest: ReturnType<typeof setTimeout> | undefined;
    const stops = [
      effect(() => {
        const now = question.value;
        sizeAgain.value;
        clearTimeout(rest);
        due.value = null;
        if (now === null || overtaken === "gone") drop();
        else if (overtaken === "cancelled") cancel();
        if (now === null) return;
        const isDue = () => {
          due.value = { question: now };
        };
        if (restMs === 0) isDue();
        else rest = setTimeout(isDue, restMs);
      }),
      effect(() => {
        const next = due.value;
        if (!next || waits?.value) return;
        untracked(() => {
          due.value = null;
          want(next.question);
        });
      }),
    ];
    return () => {
      clearTimeout(rest);
      for (const stop of stops) stop();
      drop();
    };
  }

  return {
    answered,
    failed,
    isCurrent: computed(() => answered.value !== null && answered.value.of === question.value),
    keep,
  };
}

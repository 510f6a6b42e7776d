import { type ReadonlySignal, signal, untracked } from "@preact/signals";
import { asFailure, type Failure } from "../../shared/failure.ts";

/** An answer, and the question that it is of: whoever shows it can tell whether it is still the one that is asked. */
interface Answered<Question, Answer> {
  readonly of: Question;
  readonly answer: Answer;
}

export interface Latest<Question, Answer> {
  /** The newest answer; null before the first, after a failure and after `drop`. */
  readonly answered: ReadonlySignal<Answered<Question, Answer> | null>;
  /** Why the newest question has no answer. A cancelled one is no failure. */
  readonly failed: ReadonlySignal<Answered<Question, Failure> | null>;
  /** Asks; a question that waits for its turn gives way to this one. */
  want(question: Question): void;
  /** Asks nothing any more: what is under way is cancelled and a late answer dropped; the last one stays. */
  cancel(): void;
  /** Asks nothing any more: what is under way is cancelled, a late answer dropped, and the last one taken away. */
  drop(): void;
}

/**
 * Answers a question that keeps changing: one request under way, the newest question next. Every answer but a
 * dropped one is shown, so that a picture follows a drag however slow the answers are.
 */
export function latest<Question, Answer>(
  ask: (question: Question, signal: AbortSignal) => Promise<Answer>,
): Latest<Question, Answer> {
  const answered = signal<Answered<Question, Answer> | null>(null);
  const failed = signal<Answered<Question, Failure> | null>(null);
  let next: { readonly question: Question } | null = null;
  let underWay: AbortController | null = null;

  async function drain(): Promise<void> {
    while (next) {
      const { question } = next;
      next = null;
      const abort = new AbortController();
      underWay = abort;
      try {
        const answer = await ask(question, abort.signal);
        if (abort.signal.aborted) return;
        answered.value = { of: question, answer };
        failed.value = null;
      } catch (thrown) {
        if (abort.signal.aborted) return;
        const failure = asFailure(thrown);
        answered.value = null;
        failed.value = failure.code === "cancelled" ? null : { of: question, answer: failure };
      }
    }
    underWay = null;
  }

  function cancel(): void {
    next = null;
    underWay?.abort();
    underWay = null;
  }

  return {
    answered,
    failed,
    want(question) {
      next = { question };
      if (!underWay) void untracked(drain);
    },
    cancel,
    drop() {
      cancel();
      answered.value = null;
      failed.value = null;
    },
  };
}

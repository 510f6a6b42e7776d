import { bounded } from "./words/bounded.ts";
import type { Refusals } from "./words/refusals.ts";

/** Every reason to refuse or to tell, e.g. `raster/truncated`, `plan/newer-version`: stable, with a text of its own. */
export type FailureCode = keyof Refusals;

/** The figures (SI) and names that a reason is told with; nothing where its text has none. */
export type Given<C extends FailureCode> =
  Parameters<Refusals[C]> extends [infer G, ...unknown[]] ? G : Readonly<Record<never, never>>;

/** What stands after a code: its figures, or nothing at all. */
type AndGiven<C extends FailureCode> = Parameters<Refusals[C]> extends [] ? [] : [given: Given<C>];

/**
 * The one way a user's mistake or a file's defect travels, as data; `words/failure` says what was expected, what came
 * and what to do. Programmer errors stay ordinary `Error`s.
 */
export interface Failure {
  /** A {@link FailureCode}; a plain string, because texts may tell of another failure. */
  readonly code: string;
  /** As {@link Given} says for the code; {@link givenOf} reads it. */
  readonly given: object;
  /** Set when the program itself is at fault. */
  readonly bug?: Bug;
}

/** A failure of a kind that has a text in `words/refusals`. */
export function failureOf<C extends FailureCode>(code: C, ...[given]: AndGiven<C>): Failure {
  return { code, given: given ?? {} };
}

/** What a failure of one kind is told with, or the failure inside it; null for another. */
export function givenOf<C extends FailureCode>(code: C, { code: its, given }: Failure) {
  return its === code ? (given as Given<C>) : null;
}

/** The same, to be thrown. */
export function refusal<C extends FailureCode>(code: C, ...given: AndGiven<C>): Refusal {
  return new Refusal(failureOf(code, ...given));
}

/** An error in the program, as far as it survives a copy between threads. */
export interface Bug {
  readonly name: string;
  readonly message: string;
  /** Where it was thrown, one call a line; empty when not known. */
  readonly stack: string;
  /** What it was thrown because of. */
  readonly cause: Bug | null;
}

/** A {@link Failure} that can be thrown through an async stack. */
export class Refusal extends Error {
  readonly failure: Failure;
  constructor(failure: Failure) {
    super(bounded(`${failure.code} ${JSON.stringify(failure.given)}`));
    this.name = "Refusal";
    this.failure = failure;
  }

  get code(): string {
    return this.failure.code;
  }
}

/** Any thrown value as a {@link Failure}; strings and foreign errors get the code `unexpected` and keep their stack. */
export function asFailure(thrown: unknown): Failure {
  if (thrown instanceof Refusal) return thrown.failure;
  const bug = bugOf(thrown);
  return { ...failureOf("unexpected", { message: bug.message }), bug };
}

const MOST_CAUSES = 4;
const MOST_STACK = 6000;

function bugOf(thrown: unknown, causes = MOST_CAUSES): Bug {
  if (!(thrown instanceof Error)) {
    return { name: typeof thrown, message: bounded(String(thrown)), stack: "", cause: null };
  }
  const { name, message, stack = "", cause } = thrown;
  return {
    name,
    message: bounded(message),
    stack: stack.slice(0, MOST_STACK),
    cause: cause === undefined || causes === 0 ? null : bugOf(cause, causes - 1),
  };
}

export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly failure: Failure };

/** A refusal that was thrown, as an outcome; any other error is thrown on. */
export function refused(thrown: unknown): Outcome<never> {
  if (thrown instanceof Refusal) return { ok: false, failure: asFailure(thrown) };
  throw thrown;
}

/** What some work gives, or why it was refused. */
export function outcomeOf<T>(work: () => T): Outcome<T> {
  try {
    return { ok: true, value: work() };
  } catch (thrown) {
    return refused(thrown);
  }
}

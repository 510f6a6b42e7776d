import type { LoneValue } from "./ground-marks.ts";
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
  readonly code: string;
  readonly given?: object;
  readonly message?: string;
  readonly remedy?: string;
  readonly mark?: LoneValue;
  readonly choices?: readonly string[];
  readonly figures?: readonly Figure[];
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
  return refusalOf(failureOf(code, ...given));
}

/** A length in metres and how it is written: as a height, along a line, over a datum, or between places. */
export interface Figure {
  readonly as: "length" | "distance" | "elevation" | "far";
  readonly m: number;
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
export class Refusal extends Error implements Failure {
  readonly code: string;
  readonly given?: object;
  readonly remedy?: string;
  readonly mark?: LoneValue;
  readonly choices?: readonly string[];
  readonly figures?: readonly Figure[];
  readonly bug?: Bug;
  constructor(
    code: string,
    message: string,
    remedy: string | undefined,
    { given, mark, choices, figures, bug }: Omit<Failure, "code" | "message" | "remedy"> = {},
  ) {
    super(bounded(message));
    this.name = "Refusal";
    this.code = code;
    if (given) this.given = given;
    if (remedy !== undefined) this.remedy = bounded(remedy);
    if (mark) this.mark = mark;
    if (choices) this.choices = choices;
    if (figures) this.figures = figures;
    if (bug) this.bug = bug;
  }
}

/** A failure as a {@link Refusal}. */
export function refusalOf({ code, message, remedy, ...about }: Failure): Refusal {
  const said = message ?? `${code} ${JSON.stringify(about.given)}`;
  return new Refusal(code, said, remedy, about);
}

/** Any thrown value as a {@link Failure}; strings and foreign errors get the code `unexpected` and keep their stack. */
export function asFailure(thrown: unknown): Failure {
  if (thrown instanceof Refusal) {
    const { code, given, message, remedy, mark, choices, figures, bug } = thrown;
    if (given) return { code, given, ...(bug && { bug }) };
    const offered = { ...(mark && { mark }), ...(choices && { choices }) };
    const about = { ...offered, ...(figures && { figures }), ...(bug && { bug }) };
    return { code, message, ...(remedy !== undefined && { remedy }), ...about };
  }
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

import type { LoneValue } from "./ground-marks.ts";

/**
 * The one way a user's mistake or a file's defect travels: what was expected, what came, what to do.
 * Programmer errors stay ordinary `Error`s.
 */
export interface Failure {
  /** Stable identifier, e.g. `raster/truncated`, `plan/newer-version`. */
  readonly code: string;
  /** One or two plain sentences: what was expected and what came. */
  readonly message: string;
  /** What the person can do about it. */
  readonly remedy: string;
  /** The value that the person is asked about, where `code` is `ground/mark-unknown`. */
  readonly mark?: LoneValue;
  /** What the person may choose among, where `code` is `forecast/which`. */
  readonly choices?: readonly string[];
  /** Figures for the places `{0}`, `{1}`, ... in the texts, in SI: `words/failure` writes them. */
  readonly figures?: readonly Figure[];
  /** Set when the program itself is at fault. */
  readonly bug?: Bug;
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
  readonly remedy: string;
  readonly mark?: LoneValue;
  readonly choices?: readonly string[];
  readonly figures?: readonly Figure[];
  readonly bug?: Bug;
  constructor(
    code: string,
    message: string,
    remedy: string,
    { mark, choices, figures, bug }: Pick<Failure, "mark" | "choices" | "figures" | "bug"> = {},
  ) {
    super(bounded(message));
    this.name = "Refusal";
    this.code = code;
    this.remedy = bounded(remedy);
    if (mark) this.mark = mark;
    if (choices) this.choices = choices;
    if (figures) this.figures = figures;
    if (bug) this.bug = bug;
  }
}

/** A failure as a {@link Refusal}. */
export function refusalOf({ code, message, remedy, ...about }: Failure): Refusal {
  return new Refusal(code, message, remedy, about);
}

const MOST_QUOTED = 200;
const MOST_SAID = 1200;

/** A text that quotes a file, short enough to be read: long quotes lose their end, a long text its middle. */
function bounded(text: string): string {
  if (text.length <= MOST_QUOTED) return text;
  const quoted = text.replace(/"([^"]*)"/g, (whole, inner: string) =>
    inner.length > MOST_QUOTED ? `"${inner.slice(0, MOST_QUOTED)}..."` : whole,
  );
  if (quoted.length <= MOST_SAID) return quoted;
  return `${quoted.slice(0, MOST_SAID - MOST_QUOTED)} ... ${quoted.slice(-MOST_QUOTED)}`;
}

/** Any thrown value as a {@link Failure}; strings and foreign errors get the code `unexpected` and keep their stack. */
export function asFailure(thrown: unknown): Failure {
  if (thrown instanceof Refusal) {
    const { code, message, remedy, mark, choices, figures, bug } = thrown;
    const offered = { ...(mark && { mark }), ...(choices && { choices }) };
    const about = { ...offered, ...(figures && { figures }), ...(bug && { bug }) };
    return { code, message, remedy, ...about };
  }
  const bug = bugOf(thrown);
  return {
    code: "unexpected",
    message: bounded(`Something went wrong that should not have: ${bug.message}`),
    remedy: "Your plan is saved. Try again; if it happens again, save the plan file and report it.",
    bug,
  };
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

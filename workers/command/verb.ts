import type { Engine } from "../../shared/messages.ts";

/** What a verb is given: the words after its name, and ways to speak. */
export interface Terminal {
  readonly words: readonly string[];
  /** Started when first asked for, so that a wrong command line is answered at once. */
  readonly startEngine: () => Promise<Engine>;
  /** A file name as the person typed it, from the folder the person stands in. */
  readonly resolve: (path: string) => string;
  /** Writes a part of the result to standard output at once. Fails where it cannot be written. */
  readonly write: (text: string) => Promise<void>;
  /** Says something on standard error. */
  readonly say: (message: string) => void;
}

/** One verb of the terminal program. */
export interface Verb {
  readonly name: string;
  /** One line for the list of verbs. */
  readonly summary: string;
  /** Shown for `--help`. */
  readonly help: string;
  /**
   * Does the work and returns what goes to standard output.
   * @throws Misuse for a wrong command line, Refusal for input that cannot be used
   */
  readonly run: (terminal: Terminal) => Promise<string>;
}

/** A part of the result could not be written; the program ends with that exit code, the reason said already. */
export class NotWritten extends Error {
  readonly code: number;
  constructor(code: number) {
    super(`Not written: ${code}.`);
    this.code = code;
  }
}

/** All that could be done is written, and some could not; the program ends with 3, what could not is said already. */
export class NotAllDone extends Error {}

/** A command line that cannot be followed; the program ends with 2. */
export class Misuse extends Error {}

import type { Failure } from "./failure.ts";
import type { RequestOf, ResponseOf, Verb } from "./messages.ts";
import type { RangeAnswer } from "./ranges.ts";

/*
 * What page and worker send each other: the verbs of `messages.ts`, and what goes with them.
 */

/** A request on the wire: of one verb, or of any. */
export type Call<V extends Verb = Verb> = {
  [W in V]: {
    readonly kind: "call";
    readonly id: number;
    readonly verb: W;
    readonly request: RequestOf<W>;
  };
}[V];

/** The answer to a {@link Call} of the same id. */
export type Done<V extends Verb = Verb> = {
  [W in V]: {
    readonly kind: "done";
    readonly id: number;
    readonly verb: W;
    readonly response: ResponseOf<W>;
  };
}[V];

export type ToWorker<V extends Verb = Verb> =
  | Call<V>
  | { readonly kind: "cancel"; readonly id: number }
  | { readonly kind: "ping" }
  | RangeGiven;

export type FromWorker<V extends Verb = Verb> =
  | { readonly kind: "pong" }
  | {
      readonly kind: "progress";
      readonly id: number;
      readonly share: number;
      readonly doing: string;
    }
  | Done<V>
  | RangeWanted
  | { readonly kind: "failed"; readonly id: number; readonly failure: Failure };

/** A worker wants bytes `from` to before `to` of a file at a web address; `to` null = its length. */
export interface RangeWanted {
  readonly kind: "range";
  readonly ask: number;
  readonly href: string;
  readonly from: number;
  readonly to: number | null;
}

/** What came of it: a part, a length, or the name of the error. */
export interface RangeGiven {
  readonly kind: "range";
  readonly ask: number;
  readonly answer: RangeAnswer | number | null;
  readonly error: string | null;
}

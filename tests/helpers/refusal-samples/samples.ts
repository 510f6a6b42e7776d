import type { FailureCode, Given } from "../../../shared/failure.ts";
import type { RefusalTexts } from "../../../shared/words/refusals/text.ts";
import type { Refusals } from "../../../shared/words/refusals.ts";

/** One or more figures for each reason, so that every branch of its text is written; a reason without does not compile. */
export type SamplesOf<T extends RefusalTexts> = {
  readonly [C in keyof T & FailureCode]: Parameters<Refusals[C]> extends []
    ? "no figures"
    : readonly [Given<C>, ...Given<C>[]];
};

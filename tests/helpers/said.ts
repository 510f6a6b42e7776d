import type { Failure } from "../../shared/failure.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { failureWords } from "../../shared/words/failure.ts";

/** A failure with the words a person reads. */
export function said(failure: Failure, system: UnitSystem = "us") {
  return { ...failure, ...failureWords(failure, system) };
}

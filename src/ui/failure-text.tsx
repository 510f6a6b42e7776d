import type { Failure } from "../../shared/failure.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { failureText } from "../../shared/words/failure.ts";

export interface FailureTextProps {
  readonly failure: Failure;
  readonly system: UnitSystem;
}

/** What was expected and what came, and what to do. */
export function FailureText({ failure, system }: FailureTextProps) {
  return <>{failureText(failure, system)}</>;
}

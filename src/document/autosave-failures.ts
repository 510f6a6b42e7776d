import { asFailure, type Failure, failureOf, Refusal } from "../../shared/failure.ts";

/** What the browser's refusal to save something means for the person. */
export function autosaveFailure(thrown: unknown): Failure {
  if (thrown instanceof Refusal) return asFailure(thrown);
  const { name, message } = thrown instanceof Error ? thrown : new Error(String(thrown));
  return name === "QuotaExceededError"
    ? failureOf("autosave/full", { what: "plan" })
    : failureOf("autosave/refused", { cause: message });
}

/** What the browser's refusal to save the elevation data means for the person; the plan alone is still saved. */
export function terrainFailure(thrown: unknown): Failure {
  const failure = autosaveFailure(thrown);
  return failure.code === "autosave/full"
    ? failureOf("autosave/full", { what: "terrain" })
    : failure;
}

import type { Severity } from "../sizing-types.ts";
import { mustFixWords } from "./must-fix.ts";

/** How grave a finding is, as it is written. */
export const SEVERITY_NAMES: Readonly<Record<Severity, string>> = {
  stop: "Must fix",
  caution: "Caution",
  note: "Note",
};

/** How many findings of a severity, as it stands inside a line: "1 Must fix", "4 cautions". */
export function severityCount(severity: Severity, n: number): string {
  return severity === "stop" ? mustFixWords(n) : `${n} ${severity}${n > 1 ? "s" : ""}`;
}

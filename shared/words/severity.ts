import type { Severity } from "../sizing-types.ts";

/** How grave a finding is, as it is written. */
export const SEVERITY_NAMES: Readonly<Record<Severity, string>> = {
  stop: "Must fix",
  caution: "Caution",
  note: "Note",
};

/** How many findings of a severity, as it stands inside a line: "1 must fix", "4 cautions", "note". */
export function severityCount(severity: Severity, n: number): string {
  const one = { stop: "must fix", caution: "caution", note: "note" }[severity];
  if (severity === "note" && n === 1) return one;
  return `${n} ${one}${n > 1 && severity !== "stop" ? "s" : ""}`;
}

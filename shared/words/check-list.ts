import { listedOnce } from "../completeness.ts";
import { severityRank } from "../severity.ts";
import type { Check } from "../sizing-types.ts";
import { SEVERITY_NAMES } from "./severity.ts";

/**
 * Checks to list: the gravest first, along the line within the same gravity; the two halves of a stretch that
 * runs over a ring's closing point are one.
 */
export function sortedChecks(checks: readonly Check[]): readonly Check[] {
  return listedOnce(checks).sort((a, b) => severityRank(a) - severityRank(b) || a.fromM - b.fromM);
}

/** `2 Must fix, 3 Cautions, 1 Note`. */
export function checksSummary(checks: readonly Check[]): string {
  const listed = sortedChecks(checks);
  const parts = (["stop", "caution", "note"] as const)
    .map((severity) => ({
      severity,
      n: listed.filter((check) => check.severity === severity).length,
    }))
    .filter(({ n }) => n > 0)
    .map(
      ({ severity, n }) =>
        `${n} ${SEVERITY_NAMES[severity]}${n > 1 && severity !== "stop" ? "s" : ""}`,
    );
  return parts.length > 0 ? parts.join(", ") : "nothing found";
}

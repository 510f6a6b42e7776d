import { listedOnce } from "../completeness.ts";
import { severityRank } from "../severity.ts";
import type { Check } from "../sizing-types.ts";
import { WATER_NOT_KNOWN } from "./dry.ts";
import { mustFixWords } from "./must-fix.ts";
import { severityCount } from "./severity.ts";

/**
 * Checks to list: the gravest first, along the line within the same gravity; the two halves of a stretch that
 * runs over a ring's closing point are one.
 */
export function sortedChecks(checks: readonly Check[]): readonly Check[] {
  return listedOnce(checks).sort((a, b) => severityRank(a) - severityRank(b) || a.fromM - b.fromM);
}

/**
 * `1 Must fix`; without one, `6 cautions, 6 notes`.
 * @param isTraced whether the checks of the water are among them
 */
export function checksShort(checks: readonly Check[], isTraced: boolean): string {
  const listed = sortedChecks(checks);
  const mustFix = countOf(listed, "stop");
  if (mustFix > 0) return mustFixWords(mustFix);
  return lesserWords(listed) || (isTraced ? "nothing found" : WATER_NOT_KNOWN);
}

/** What there is beside the Must fix: `6 cautions, 1 note`; empty where there is nothing. */
export function lesserWords(checks: readonly Check[]): string {
  const listed = sortedChecks(checks);
  return (["caution", "note"] as const)
    .map((severity) => ({ severity, n: countOf(listed, severity) }))
    .filter(({ n }) => n > 0)
    .map(({ severity, n }) => severityCount(severity, n))
    .join(", ");
}

function countOf(checks: readonly Check[], severity: Check["severity"]): number {
  return checks.filter((check) => check.severity === severity).length;
}

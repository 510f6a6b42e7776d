import type { Severity } from "./sizing-types.ts";

const GRAVEST_FIRST: readonly Severity[] = ["stop", "caution", "note"];

/** Place of a severity among all, the gravest 0. */
export function severityRank({ severity }: { readonly severity: Severity }): number {
  return GRAVEST_FIRST.indexOf(severity);
}

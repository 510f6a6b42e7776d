import type { Severity } from "../sizing-types.ts";

/** How grave a finding is, as it is written. */
export const SEVERITY_NAMES: Readonly<Record<Severity, string>> = {
  stop: "Must fix",
  caution: "Caution",
  note: "Note",
};

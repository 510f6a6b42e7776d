import type { CheckFinding } from "../checks/findings.ts";
import type { Exported } from "../exports/exported.ts";
import type { Check } from "../sizing-types.ts";
import type { UnitSystem } from "../units.ts";
import { capital } from "./capital.ts";
import { CAUTIONS } from "./cautions.ts";
import { sortedChecks } from "./check-list.ts";
import { checkWords } from "./checks.ts";
import { mustFixWords } from "./must-fix.ts";

/** What must be fixed on a line: its words, and the kind and figures they are made of, SI. */
export interface MustFix {
  readonly what: string;
  readonly remedy: string;
  readonly finding: CheckFinding;
}

/** What must be fixed on a line before it is built, in the order of the list of checks. */
export function mustFixOf(checks: readonly Check[], system: UnitSystem): MustFix[] {
  return sortedChecks(checks)
    .filter(({ severity }) => severity === "stop")
    .map((check) => {
      const { message, remedy } = checkWords(check, system);
      return { what: capital(message), remedy, finding: check.finding };
    });
}

/** `2 Must fix: fix them before this line is built.` */
export function mustFixLead(count: number): string {
  return `${mustFixWords(count)}: fix ${count === 1 ? "it" : "them"} before this line is built.`;
}

/** The cautions for a line in short, what may kill first: how deep water comes if it fails, then those for all lines. */
export function shortCautions({ checks, isTraced, system }: Exported): string[] {
  const ifItFails = sortedChecks(checks)
    .filter(({ finding }) => finding.kind === "if-it-fails")
    .map((check) => checkWords(check, system).what);
  return [...(isTraced ? ifItFails : [NOT_TRACED]), ...CAUTIONS.map(({ short }) => short)];
}

/** In the place of what the water shows of a line. */
export const NOT_TRACED =
  "Water has not been traced: whether it comes around this line is not known.";

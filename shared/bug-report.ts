import type { Bug, Failure } from "./failure.ts";
import type { Plan } from "./plan.ts";
import { writePlanFile } from "./plan-file.ts";
import { withoutNames, withoutPlaces } from "./without-places.ts";
import { failureWords } from "./words/failure.ts";

/** Where the program ran. */
export interface Running {
  readonly version: string;
  /** Commit it was built from; null when it was not built from git. */
  readonly commit: string | null;
  readonly browser: string;
}

export interface ReportOptions {
  /** True: the plan as it is saved, and every text as it is. False: no coordinates, names or addresses. */
  readonly withPlaces: boolean;
}

/** A bug with its stack and its causes. */
export function bugText({ name, message, stack, cause }: Bug): string {
  const head = `${name}: ${message}`;
  const own = stack.startsWith(head) ? stack : `${head}\n${stack}`.trimEnd();
  return cause ? `${own}\nCaused by ${bugText(cause)}` : own;
}

/** What a person sends to whoever mends the program, as plain text. */
export function bugReport(
  failure: Failure,
  plan: Plan,
  { version, commit, browser }: Running,
  { withPlaces }: ReportOptions,
): string {
  const { code, bug } = failure;
  const { message } = failureWords(failure, "us");
  const what = [`${message} (${code})`, bug ? bugText(bug) : "Stack: not known"].join("\n\n");
  return [
    `Drystead ${version}, commit ${commit ?? "not known"}`,
    `Browser: ${browser}`,
    withPlaces ? what : withoutNames(what, plan),
    withPlaces ? "Plan:" : "Plan, without coordinates, names, notes and files:",
    withPlaces ? writePlanFile(plan) : JSON.stringify(withoutPlaces(plan), null, 1),
  ].join("\n\n");
}

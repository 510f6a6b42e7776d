import { bugReport, type ReportOptions } from "../../shared/bug-report.ts";
import type { Failure } from "../../shared/failure.ts";
import { plan } from "../document/store.ts";

/** The report of a bug of this page, with the plan that is open. */
export function reportOf(failure: Failure, options: ReportOptions): string {
  return bugReport(failure, plan.value, { ...BUILT_FROM, browser: navigator.userAgent }, options);
}

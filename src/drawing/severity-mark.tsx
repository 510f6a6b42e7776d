import "./severity-mark.css";
import type { Severity } from "../../shared/sizing-types.ts";
import { SEVERITY_NAMES } from "../../shared/words/severity.ts";

/** What a severity is called on screen and on paper. */
export function severityWord(severity: Severity): string {
  return SEVERITY_NAMES[severity];
}

/** Shape, colour and word of a severity: hatched square, triangle, ring. */
export function SeverityMark({ severity }: { readonly severity: Severity }) {
  return (
    <svg
      class={`severity severity-${severity}`}
      viewBox="0 0 14 14"
      width="14"
      height="14"
      role="img"
      aria-label={SEVERITY_NAMES[severity]}
    >
      {severity === "stop" && (
        <>
          <path class="severity-fill" d="M1 1h12v12H1z" />
          <path class="severity-hatch" d="M1 7 7 1M1 13 13 1M7 13l6-6" />
        </>
      )}
      {severity === "caution" && <path class="severity-line" d="M7 1.7 13 12.5H1z" />}
      {severity === "note" && <circle class="severity-line" cx="7" cy="7" r="5.2" />}
    </svg>
  );
}

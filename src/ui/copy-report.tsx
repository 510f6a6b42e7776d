import { useState } from "preact/hooks";
import type { ReportOptions } from "../../shared/bug-report.ts";
import type { Failure } from "../../shared/failure.ts";

export interface CopyReportProps {
  readonly failure: Failure;
  /** The text to copy. */
  readonly reportOf: (failure: Failure, options: ReportOptions) => string;
}

/** Copies what a bug's report needs; where the browser lets no page copy, shows the text to be copied by hand. */
export function CopyReport({ failure, reportOf }: CopyReportProps) {
  const [withPlaces, setWithPlaces] = useState(false);
  const [copied, setCopied] = useState(false);
  const [byHand, setByHand] = useState<string | null>(null);
  const copy = async () => {
    const report = reportOf(failure, { withPlaces });
    try {
      await navigator.clipboard.writeText(report);
      setCopied(true);
      setByHand(null);
    } catch {
      setByHand(report);
    }
  };
  return (
    <div class="report">
      <button type="button" class="tool-button" onClick={copy}>
        {copied ? "Report copied" : "Copy report"}
      </button>
      <label class="check-line">
        <input
          type="checkbox"
          checked={withPlaces}
          onChange={() => {
            setWithPlaces(!withPlaces);
            setCopied(false);
            setByHand(null);
          }}
        />
        Include the plan with its places
      </label>
      {byHand !== null && (
        <label class="report-text">
          This page may not copy. Select the text and copy it:
          <textarea
            readonly
            rows={6}
            value={byHand}
            onFocus={(event) => event.currentTarget.select()}
          />
        </label>
      )}
    </div>
  );
}

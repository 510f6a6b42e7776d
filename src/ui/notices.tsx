import type { ReadonlySignal } from "@preact/signals";
import type { Failure } from "../../shared/failure.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { failureWords } from "../../shared/words/failure.ts";
import { CopyReport, type CopyReportProps } from "./copy-report.tsx";
import type { FailureTextProps } from "./failure-text.tsx";
import { Icon } from "./icons.tsx";

interface NoticesProps {
  readonly notices: ReadonlySignal<
    readonly {
      readonly id: number;
      readonly tone: "error" | "info";
      readonly failure: Failure;
      readonly act?: { readonly label: string; readonly run: () => void } | undefined;
    }[]
  >;
  readonly onDismiss: (id: number) => void;
  readonly reportOf: CopyReportProps["reportOf"];
  readonly system: UnitSystem;
}

/** What the tool has to say: what was expected, what came, what to do. Stays until it is dismissed. */
export function Notices({ notices, onDismiss, reportOf, system }: NoticesProps) {
  return (
    <div class="notices">
      {notices.value.map((notice) => (
        <div
          key={notice.id}
          class={`notice notice-${notice.tone}`}
          role={notice.tone === "error" ? "alert" : "status"}
          data-code={notice.failure.code}
        >
          <div class="notice-text">
            <NoticeWords failure={notice.failure} system={system} />
            {notice.failure.bug && <CopyReport failure={notice.failure} reportOf={reportOf} />}
            {notice.act && (
              <button type="button" class="tool-button" onClick={notice.act.run}>
                {notice.act.label}
              </button>
            )}
          </div>
          <button
            type="button"
            class="icon-button"
            aria-label="Dismiss this message"
            onClick={() => onDismiss(notice.id)}
          >
            <Icon name="close" />
          </button>
        </div>
      ))}
    </div>
  );
}

function NoticeWords({ failure, system }: FailureTextProps) {
  const { message, remedy } = failureWords(failure, system);
  return (
    <>
      <strong>{message}</strong> {remedy && <span>{remedy}</span>}
    </>
  );
}

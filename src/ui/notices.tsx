import { dismiss, notices } from "../live/state.ts";
import { Icon } from "./icons.tsx";

/** What the tool has to say: what was expected, what came, what to do. Stays until it is dismissed. */
export function Notices() {
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
            <strong>{notice.failure.message}</strong>{" "}
            {notice.failure.remedy && <span>{notice.failure.remedy}</span>}
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
            onClick={() => dismiss(notice.id)}
          >
            <Icon name="close" />
          </button>
        </div>
      ))}
    </div>
  );
}

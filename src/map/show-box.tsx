import "./show-box.css";
import { useState } from "preact/hooks";
import { MARK_KINDS, type MarkKind, showMarks, shownMarks } from "../live/shown-marks.ts";

const MARK_NAMES: Readonly<Record<MarkKind, string>> = {
  checks: "Checks",
  weakest: "Weakest places",
  water: "Water paths",
};

/** What else the map shows, switched on one by one; behind one button where the screen is narrow. */
export function ShowBox() {
  const [isOpen, setOpen] = useState(false);
  const shown = shownMarks.value;
  return (
    <div class="show-box" data-open={isOpen}>
      <button
        type="button"
        class="show-box-switch"
        aria-expanded={isOpen}
        onClick={() => setOpen(!isOpen)}
      >
        Show{shown.size > 0 && ` (${shown.size})`}
        <svg viewBox="0 0 10 6" width="10" height="6" aria-hidden="true">
          <path d="M1 1l4 4 4-4" />
        </svg>
      </button>
      <fieldset
        onKeyDown={(event) => {
          if (event.key === "Escape") setOpen(false);
        }}
      >
        <legend>Show</legend>
        {MARK_KINDS.map((kind) => (
          <label key={kind}>
            <input
              type="checkbox"
              checked={shown.has(kind)}
              onChange={(event) => showMarks(kind, event.currentTarget.checked)}
            />
            {MARK_NAMES[kind]}
          </label>
        ))}
      </fieldset>
    </div>
  );
}

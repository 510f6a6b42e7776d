import { UNLOCK, UNLOCK_TITLE, UNLOCK_WORDS } from "../../shared/words/field-views.ts";
import { leaveField } from "../live/field.ts";
import { closePanel } from "./panel.ts";
import { PanelHead } from "./panel-head.tsx";
import { Read } from "./read.tsx";

/** The way out of what is only read, to where the plan can be changed: said before it is done. */
export function UnlockPanel() {
  return (
    <Read label="Planning screen" class="crew-page">
      <PanelHead title={UNLOCK_TITLE} onBack={closePanel} />
      <p>{UNLOCK_WORDS}</p>
      <button
        type="button"
        class="crew-key"
        onClick={() => {
          closePanel();
          leaveField();
        }}
      >
        {UNLOCK}
      </button>
    </Read>
  );
}

import { useState } from "preact/hooks";
import { VIEW_ONLY_WORDS } from "../../shared/words/view-only.ts";
import { openOtherStored, takeCopy, takeOver } from "../document/plan-place.ts";
import { viewing } from "../document/viewing.ts";

/** Says that another page edits the plan, with the ways to edit here; there while it can only be looked at. */
export function ViewOnly() {
  const [isNoOther, setNoOther] = useState(false);
  if (!viewing.value) return null;
  const { lead, rest } = VIEW_ONLY_WORDS;
  return (
    <section class="notice question" role="status" aria-label="View only">
      <p>
        <strong>{lead}</strong> {rest}
      </p>
      <div class="tool-row">
        <button type="button" class="start-button" onClick={() => void takeOver()}>
          Edit here
        </button>
        <button type="button" class="tool-button" onClick={() => void takeCopy()}>
          Work on a copy here
        </button>
        <button
          type="button"
          class="text-button"
          disabled={isNoOther}
          onClick={() => void openOtherStored().then((isFound) => setNoOther(!isFound))}
        >
          {isNoOther ? "No other plan is saved" : "Open another saved plan"}
        </button>
      </div>
    </section>
  );
}

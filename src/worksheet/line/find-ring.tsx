import "./find-ring.css";
import { letterOf } from "../../../shared/line-letter.ts";
import { chosenAlternative } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { canFind, findRing } from "../../live/search/find-ring.ts";
import { foundNow } from "../../live/search/found.ts";
import { improveAlternative, improvedNow } from "../../live/search/improve.ts";
import { whyHere } from "../../live/search/why-here.ts";
import { Icon } from "../../ui/icons.tsx";
import { ImprovedNote } from "./find-ring-improved.tsx";
import { FoundResult } from "./find-ring-result.tsx";
import { FindSettings } from "./find-ring-settings.tsx";
import { WhyHereNote } from "./find-ring-why.tsx";

/** The ring that needs the fewest bags: asked for, found, compared; and a drawn line improved. */
export function FindRing() {
  const chosen = chosenAlternative.value;
  const result = foundNow.value;
  if (!canFind.value && !chosen) return null;
  const letter = chosen && letterOf(plan.value.alignments.indexOf(chosen));
  const note = chosen && improvedNow(chosen, plan.value);
  return (
    <fieldset class="find-ring">
      <legend>Ring of fewest bags within the search window</legend>
      {canFind.value && <FindSettings />}
      <div class="tool-row">
        <button
          type="button"
          class="tool-button find-ring-button"
          disabled={!canFind.value}
          onClick={() => void findRing()}
        >
          <Icon name="find" /> Find the ring
        </button>
        {chosen && (
          <button
            type="button"
            class="tool-button"
            title="Moves its corners to the nearest cheaper places; pinned corners stay"
            onClick={() => void improveAlternative(chosen)}
          >
            <Icon name="improve" /> Improve {letter}
          </button>
        )}
      </div>
      {note && <ImprovedNote result={note} />}
      {result && <FoundResult result={result} />}
      {chosen && (
        <label class="check-line">
          <input
            type="checkbox"
            checked={whyHere.value}
            onChange={(event) => {
              whyHere.value = event.currentTarget.checked;
            }}
          />
          Why here? Cost of moving {letter} sideways
        </label>
      )}
      {chosen && whyHere.value && <WhyHereNote />}
    </fieldset>
  );
}

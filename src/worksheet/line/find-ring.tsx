import "./find-ring.css";
import { letterOf } from "../../../shared/line-letter.ts";
import { chosenAlternative } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { canFind, findRing } from "../../live/siting/find-ring.ts";
import { foundNow } from "../../live/siting/found.ts";
import { improveAlternative, improvedNow } from "../../live/siting/improve.ts";
import { whyHere } from "../../live/siting/why-here.ts";
import { Icon } from "../../ui/icons.tsx";
import { ImprovedNote } from "./find-ring-improved.tsx";
import { FoundResult } from "./find-ring-result.tsx";
import { WhyHereNote } from "./find-ring-why.tsx";
import { FindWishFields } from "./find-ring-wish.tsx";

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
      {canFind.value && <FindWishFields />}
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

import { isToHeight } from "../../shared/field/progress.ts";
import { buildStateWords, DONE } from "../../shared/words/field-progress.ts";
import { type AtStake, checksHere } from "./at.ts";
import { builtHere, markHere } from "./marking.ts";
import { openPanel } from "./panel.ts";

/**
 * Marks the stretch from here as up to height with one press; where something must be fixed it asks who cleared it.
 * Once marked, it says so and opens the mark.
 */
export function DoneKey({ at }: { readonly at: AtStake }) {
  const built = builtHere.value;
  const checks = checksHere.value;
  if (!at.stretch || !built || !checks) return null;
  const isMarked = isToHeight(built.state);
  const mustClear = checks.mustFix.length > 0 || checks.isOverLimit;
  const press = () => {
    if (isMarked || mustClear) openPanel("mark");
    else markHere("to-height");
  };
  const look = isMarked ? "crew-key-said" : mustClear ? "" : "crew-key-full";
  return (
    <button type="button" class={`crew-key ${look}`} onClick={press}>
      {isMarked ? buildStateWords(built.state) : DONE}
    </button>
  );
}

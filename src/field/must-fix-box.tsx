import { MUST_FIX_TITLE, mustFixAtStakeWords } from "../../shared/words/field.ts";
import { unitSystem } from "../live/screen.ts";
import { checksHere } from "./at.ts";
import { MustFixSign } from "./must-fix-sign.tsx";

/** What must be fixed before anything is built from this stake to the next; nothing where nothing must. */
export function MustFixBox() {
  const checks = checksHere.value;
  const words = checks
    ? mustFixAtStakeWords(checks.mustFix, checks.isOverLimit, unitSystem.value)
    : [];
  if (words.length === 0) return null;
  return (
    <section class="crew-must-fix" aria-label={MUST_FIX_TITLE}>
      <h3>
        <MustFixSign /> {MUST_FIX_TITLE}
      </h3>
      {words.map((each) => (
        <p key={each}>{each}</p>
      ))}
    </section>
  );
}

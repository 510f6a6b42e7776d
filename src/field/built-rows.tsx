import { builtSoFar } from "../../shared/field/built-so-far.ts";
import { stationsWords } from "../../shared/words/crew-parts.ts";
import { builtShortWords } from "../../shared/words/field-built.ts";
import { buildStateWords, OLD_MARK } from "../../shared/words/field-progress.ts";
import { UNLOCK_TITLE, VIEW_ONLY } from "../../shared/words/field-views.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import type { AtStake } from "./at.ts";
import { builtHere, numberNow } from "./marking.ts";
import { openPanel, type Panel } from "./panel.ts";

/** The way to the planning screen. */
export function PlanningRow() {
  return <Row to="unlock" name={VIEW_ONLY} value={UNLOCK_TITLE} />;
}

/** How far the stretch from here is built, and the whole line; each opens to more. */
export function BuiltRows({ at }: { readonly at: AtStake }) {
  const system = unitSystem.value;
  const built = builtHere.value;
  const number = numberNow.value;
  const isAnswer = !at.line.levelDoubt?.countsUnknown;
  const sum =
    isAnswer && number && builtSoFar(at.line, at.staked, plan.value.progress ?? [], number);
  return (
    <div class="crew-rows">
      {at.stretch && built && (
        <Row
          to="mark"
          name={stationsWords(at.stretch, system)}
          value={built.isOfOtherPlan ? OLD_MARK : buildStateWords(built.state)}
        />
      )}
      {sum && <Row to="built" name="Built so far" value={builtShortWords(sum, system)} />}
    </div>
  );
}

interface RowProps {
  readonly to: Panel;
  readonly name: string;
  readonly value: string;
}

function Row({ to, name, value }: RowProps) {
  return (
    <button type="button" class="crew-row" onClick={() => openPanel(to)}>
      <span>{name}</span>
      <strong>{value}</strong>
      <svg class="crew-arrow" width="10" height="16" viewBox="0 0 10 16" aria-hidden="true">
        <path d="M2 2l6 6-6 6" />
      </svg>
    </button>
  );
}

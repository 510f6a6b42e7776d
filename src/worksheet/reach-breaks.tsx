import { useState } from "preact/hooks";
import type { Failure } from "../../shared/failure.ts";
import type { Alignment } from "../../shared/plan.ts";
import { formatStation, parseStation } from "../../shared/units.ts";
import { chosenLine, markedM, unitSystem } from "../state.ts";
import { Disclosure } from "../ui/disclosure.tsx";
import { Icon } from "../ui/icons.tsx";
import { addBreak, removeBreak } from "./reach-edits.ts";

/** Stations that divide the line into reaches with subtotals of their own. */
export function ReachBreaks({ alternative }: { alternative: Alignment }) {
  const system = unitSystem.value;
  const breaks = alternative.reachBreaksM;
  return (
    <Disclosure
      id="reaches"
      title="Reaches"
      level="part"
      summary={breaks.length === 0 ? "one" : `${breaks.length + 1}`}
    >
      <ul class="plain-list chips">
        {breaks.map((atM) => (
          <li key={atM} class="chip">
            {formatStation(atM, system)}
            <button
              type="button"
              class="icon-button"
              aria-label={`Remove the break at ${formatStation(atM, system)}`}
              onClick={() => removeBreak(alternative, atM)}
            >
              <Icon name="close" />
            </button>
          </li>
        ))}
      </ul>
      <NewBreak alternative={alternative} />
    </Disclosure>
  );
}

function NewBreak({ alternative }: { alternative: Alignment }) {
  const system = unitSystem.value;
  const line = chosenLine.value;
  const [typed, setTyped] = useState("");
  const [failure, setFailure] = useState<Failure | null>(null);
  if (!line) return null;
  const add = (atM: number) => {
    const outcome = addBreak(alternative, atM, line.totals.lengthM);
    setFailure(outcome.ok ? null : outcome.failure);
    if (outcome.ok) setTyped("");
  };
  const addTyped = () => {
    const parsed = parseStation(typed, system);
    if (parsed.ok) add(parsed.value);
    else setFailure(parsed.failure);
  };
  return (
    <form
      class="inline-form"
      onSubmit={(event) => {
        event.preventDefault();
        addTyped();
      }}
    >
      <label>
        Divide at
        <input
          type="text"
          class="field-input"
          size={8}
          value={typed}
          placeholder={system === "us" ? "4+50" : "0+140.0"}
          aria-invalid={failure !== null}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <button type="submit" class="tool-button">
        Add
      </button>
      {markedM.value !== null && (
        <button type="button" class="text-button" onClick={() => add(markedM.value ?? 0)}>
          At the mark, {formatStation(markedM.value, system)}
        </button>
      )}
      {failure && (
        <p class="field-why" role="alert">
          {failure.message} {failure.remedy}
        </p>
      )}
    </form>
  );
}

import { useState } from "preact/hooks";
import type { Failure } from "../../../shared/failure.ts";
import type { Alignment } from "../../../shared/plan.ts";
import { formatStation, parseStation } from "../../../shared/units.ts";
import { addBreak } from "../../document/edits/reaches.ts";
import { markedM, unitSystem } from "../../live/screen.ts";
import { FailureText } from "../../ui/failure-text.tsx";

interface DivideFormProps {
  readonly alternative: Alignment;
  readonly lengthM: number;
}

/** Divides the line at a station typed, or at the marked one. */
export function DivideForm({ alternative, lengthM }: DivideFormProps) {
  const system = unitSystem.value;
  const [typed, setTyped] = useState("");
  const [failure, setFailure] = useState<Failure | null>(null);
  const add = (atM: number) => {
    const outcome = addBreak(alternative, atM, lengthM);
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
        Divide at{" "}
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
        Divide
      </button>
      {markedM.value !== null && (
        <button type="button" class="text-button" onClick={() => add(markedM.value ?? 0)}>
          At the mark, {formatStation(markedM.value, system)}
        </button>
      )}
      {failure && (
        <p class="field-why" role="alert">
          <FailureText failure={failure} system={system} />
        </p>
      )}
    </form>
  );
}

import type { VerticalUnit } from "../../shared/plan.ts";
import { answerVerticalUnit } from "../actions.ts";
import { unitQuestion } from "../state.ts";

const CHOICES: readonly { readonly unit: VerticalUnit; readonly label: string }[] = [
  { unit: "metre", label: "Metres" },
  { unit: "foot", label: "Feet (0.3048 m)" },
  { unit: "us-survey-foot", label: "US survey feet" },
];

/** Asks in which unit a raster's heights are when the file does not say; never guesses. */
export function UnitQuestion() {
  const asked = unitQuestion.value;
  if (!asked) return null;
  return (
    <section class="notice question" role="alert" aria-label="Unit of the heights">
      <p>
        <strong>{asked.failure.message}</strong> The survey's metadata say it; a wrong unit makes
        every height wrong by a factor of three.
      </p>
      <div class="tool-row">
        {CHOICES.map(({ unit, label }) => (
          <button
            key={unit}
            type="button"
            class="tool-button"
            onClick={() => void answerVerticalUnit(unit)}
          >
            {label}
          </button>
        ))}
        <button
          type="button"
          class="text-button"
          onClick={() => {
            unitQuestion.value = null;
          }}
        >
          Leave it
        </button>
      </div>
    </section>
  );
}

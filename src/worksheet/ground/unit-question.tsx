import { gapTo } from "../../../shared/apart.ts";
import type { HeightRange } from "../../../shared/messages.ts";
import type { VerticalUnit } from "../../../shared/plan.ts";
import { isWaterGiven, waterElevationAtGauge } from "../../../shared/stage.ts";
import { unitAskedWords, unitChoice } from "../../../shared/words/unit-choice.ts";
import { plan } from "../../document/store.ts";
import { example } from "../../live/demo-sites.ts";
import { unitQuestion } from "../../live/ground.ts";
import { answerVerticalUnit } from "../../live/open-ground.ts";
import { unitSystem } from "../../live/screen.ts";

const CHOICES: readonly { readonly unit: VerticalUnit; readonly label: string }[] = [
  { unit: "foot", label: "Feet (0.3048 m)" },
  { unit: "us-survey-foot", label: "US survey feet" },
  { unit: "metre", label: "Meters" },
];

/**
 * Asks in which unit a raster's heights are when the file does not say; never guesses. Under each choice stands
 * what it makes of the heights, beside the water where the plan lies on this ground.
 */
export function UnitQuestion() {
  const asked = unitQuestion.value;
  if (!asked) return null;
  const waterM = waterOn(asked.range);
  return (
    <section class="notice question" role="alert" aria-label="Unit of the heights">
      <p>
        <strong>{unitAskedWords(asked.failure, unitSystem.value)}</strong> The survey's metadata say
        it; a wrong unit makes every height wrong by a factor of three.
      </p>
      <ul class="unit-choices">
        {CHOICES.map(({ unit, label }) => (
          <li key={unit} data-unit={unit}>
            <button type="button" class="tool-button" onClick={() => void answerVerticalUnit(unit)}>
              {label}
            </button>
            {asked.range && <Range range={asked.range} unit={unit} waterM={waterM} />}
          </li>
        ))}
      </ul>
      <button
        type="button"
        class="text-button"
        onClick={() => {
          unitQuestion.value = null;
        }}
      >
        Leave it
      </button>
    </section>
  );
}

interface RangeProps {
  readonly range: HeightRange;
  readonly unit: VerticalUnit;
  readonly waterM: number | null;
}

function Range({ range, unit, waterM }: RangeProps) {
  const { words, isUnlikely } = unitChoice(range, unit, waterM);
  return <span data-unlikely={isUnlikely}>{words}</span>;
}

/** Sized-for water of the plan, metres; null where the plan is of another place or has none yet. */
function waterOn(range: HeightRange | null): number | null {
  const now = plan.value;
  const isHere = range !== null && !example.value && !gapTo(now, range.bounds);
  return isHere && isWaterGiven(now.water) ? waterElevationAtGauge(now.water) : null;
}

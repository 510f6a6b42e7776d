import "./water-over.css";
import type { Overtopping } from "../../../shared/water-types.ts";
import { firstPlaces, type OverStep, overtoppingSteps } from "../../../shared/words/water-order.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { tracedLine } from "../../live/water-now.ts";
import { StationButton } from "../station-button.tsx";

/** How many levels are listed; what lies above is told in one line. */
const MOST_STEPS = 4;
const MOST_PLACES = 4;

/** Where a river that rises on goes over the line, in order; a press marks the place. */
export function WaterOver() {
  const line = tracedLine.value;
  if (!line || line.overtopping.length === 0) return null;
  const steps = overtoppingSteps(line.overtopping, plan.value, unitSystem.value);
  const listed = steps.slice(0, MOST_STEPS);
  const left = steps.slice(MOST_STEPS);
  const ordered = firstPlaces(line.overtopping, plan.value);
  return (
    <section class="water-over" aria-label="If the river rises on">
      <h3>If the river rises on</h3>
      <ol>
        {listed.map((step, index) => (
          <li key={`${step.over} ${step.level}`}>
            {index > 0 && "then "}
            <Step step={step} ordered={ordered} />
          </li>
        ))}
      </ol>
      {left.length > 0 && (
        <p class="hint">
          and {count(left)} more places on higher ground, up to {left.at(-1)!.level}.
        </p>
      )}
    </section>
  );
}

interface StepProps {
  readonly step: OverStep;
  /** The places that the profile numbers. */
  readonly ordered: readonly Overtopping[];
}

function Step({ step, ordered }: StepProps) {
  const { over, level, places } = step;
  const numbered = ordered.filter((place) => places.includes(place));
  const shown = numbered.length > 0 ? numbered : places.slice(0, MOST_PLACES);
  const more = places.length - shown.length;
  return (
    <>
      above <strong>{level}</strong>{" "}
      {over === "crest" ? "over the top of levee, worst at" : "over the ground at"}{" "}
      {shown.map((place, index) => {
        const number = ordered.indexOf(place) + 1;
        return (
          <span key={place.chainageM} class="water-over-place">
            {number > 0 && <span class="water-over-number">{number}</span>}
            <StationButton chainageM={place.chainageM} />
            {index < shown.length - 1 && ","}{" "}
          </span>
        );
      })}
      {more > 0 && `and ${more} more stations`}
    </>
  );
}

function count(steps: readonly OverStep[]): number {
  return steps.reduce((sum, { places }) => sum + places.length, 0);
}

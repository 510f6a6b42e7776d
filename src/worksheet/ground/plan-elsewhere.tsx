import { signal } from "@preact/signals";
import type { GroundSummary } from "../../../shared/messages.ts";
import { failureWords } from "../../../shared/words/failure.ts";
import { plan } from "../../document/store.ts";
import { ground, unitQuestion } from "../../live/ground.ts";
import { startNewPlan } from "../../live/new-plan.ts";
import { planCameLast, planElsewhere } from "../../live/plan-apart.ts";
import { unitSystem } from "../../live/screen.ts";
import { markAsked } from "../../live/uncounted.ts";
import { OpenGroundButton } from "./open-ground-button.tsx";

/** The elevation data for which the person chose to leave the plan as it is. */
const leftFor = signal<GroundSummary | null>(null);

/** Where the plan and the elevation data have no place in common: says how far apart they are and what to do. Waits while another question is open. */
export function PlanElsewhere() {
  const elsewhere = planElsewhere.value;
  if (!elsewhere || unitQuestion.value || markAsked.value || leftFor.value === ground.value)
    return null;
  const { message, remedy } = failureWords(elsewhere, unitSystem.value);
  return (
    <section class="notice question" role="alert" aria-label="Plan on other elevation data">
      <p>
        <strong>{message}</strong> Nothing of "{plan.value.title}" can be sized on it. {remedy} Undo
        brings a plan back.
      </p>
      <div class="tool-row">
        <OpenGroundButton label="Open the elevation data of the plan" />
        {!planCameLast.value && (
          <button type="button" class="tool-button" onClick={startNewPlan}>
            Start a new plan here
          </button>
        )}
        <button
          type="button"
          class="text-button"
          onClick={() => {
            leftFor.value = ground.value;
          }}
        >
          Leave it
        </button>
      </div>
    </section>
  );
}

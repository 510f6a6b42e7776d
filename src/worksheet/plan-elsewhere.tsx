import { signal } from "@preact/signals";
import type { GroundSummary } from "../../shared/messages.ts";
import { plan } from "../document/store.ts";
import { ground } from "../state.ts";
import { planElsewhere, startNewPlan } from "./new-plan.ts";

/** The ground for which the person chose to leave the plan as it is. */
const leftFor = signal<GroundSummary | null>(null);

/** Where the plan and the ground now open have nothing in common: says so and offers a new plan. */
export function PlanElsewhere() {
  if (!planElsewhere.value || leftFor.value === ground.value) return null;
  return (
    <section class="notice question" role="alert" aria-label="Plan on other ground">
      <p>
        <strong>"{plan.value.title}" lies outside this ground.</strong> Nothing of it can be sized
        here. Start a new plan on this ground, or open the raster that covers it. Undo brings a plan
        back.
      </p>
      <div class="tool-row">
        <button type="button" class="tool-button" onClick={startNewPlan}>
          Start a new plan here
        </button>
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
